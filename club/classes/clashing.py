"""What of rooms and people a class would take from another one, looked for among the classes kept."""

from __future__ import annotations

import hashlib
from collections.abc import Collection, Iterable

from club.classes.domain.clashes import Clash, Planned, clashes
from club.classes.domain.queue import TAKING
from club.classes.models import ClassSession
from club.classes.sentences import clash_words
from club.people.models import Person

NOWHERE = 0


def class_clashes(session: ClassSession, teachers: Collection[Person]) -> list[str]:
    """One sentence for each clash of room, instructor and helpers; `session` may not be saved yet."""
    people = frozenset(person.pk for person in teachers)
    return _said(Planned(session.pk, session.workshop_id, session.hours, people), teachers)


def person_clashes(session: ClassSession, person: Person) -> list[str]:
    """One sentence for each other class that this person teaches, helps at or has a place in meanwhile."""
    return _said(Planned(session.pk, NOWHERE, session.hours, frozenset({person.pk})), [person])


def mark_of(sentences: Iterable[str]) -> str:
    """Stands for exactly these clashes, so that a tick given to them isn't taken for others."""
    return hashlib.sha256("\n".join(sentences).encode()).hexdigest()[:16]


def _said(new: Planned, people: Collection[Person]) -> list[str]:
    others = {other.pk: other for other in _at_that_time(new)}
    found = clashes(new, [_planned(other) for other in others.values()])
    names = {person.pk: str(person) for person in people}
    return [_words(clash, others, names) for clash in found]


def _words(clash: Clash, others: dict[int, ClassSession], names: dict[int, str]) -> str:
    return clash_words(clash, others[clash.other or 0], names.get(clash.person or 0, ""))


def _at_that_time(new: Planned) -> Iterable[ClassSession]:
    meanwhile = ClassSession.objects.planned().filter(begins__lt=new.hours.ends, ends__gt=new.hours.begins)
    return meanwhile.select_related("edition", "workshop").prefetch_related("helpers", "sign_ups")


def _planned(session: ClassSession) -> Planned:
    teachers = {session.instructor_id, *(person.pk for person in session.helpers.all())}
    taking = {row.person_id for row in session.sign_ups.all() if row.state in TAKING}
    return Planned(session.pk, session.workshop_id, session.hours, frozenset(teachers | taking))
