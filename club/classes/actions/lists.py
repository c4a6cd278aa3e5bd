"""Writes to a class's list. Each takes the class's lock, works on the whole list, and writes what differs."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from datetime import datetime
from typing import TypeAlias

from django.db import transaction
from django.utils.translation import gettext

from club.base.changes import Snapshot, record_change
from club.classes.book import book_of
from club.classes.domain import queue
from club.classes.domain.errors import ClassError
from club.classes.domain.places import Place
from club.classes.models import ClassSession, SignUp
from club.classes.sentences import sign_up_words
from club.people.models import Account, Person

Change: TypeAlias = Callable[[queue.Book], queue.Book]


def sign_up(
    by: Account | None, session: ClassSession, person: Person, now: datetime, place: Place | None = None
) -> queue.SignUp:
    """In, or waiting where no place is left or others wait; raises ClassError as `queue.sign_up`."""
    book = _changed(by, session, now, lambda book: queue.sign_up(book, person.pk, place))
    return book.of(person.pk)


def hold(
    by: Account | None,
    session: ClassSession,
    person: Person,
    now: datetime,
    until: datetime,
    place: Place | None = None,
) -> queue.SignUp:
    """A place kept until then (UTC); raises ClassError as `queue.hold`, and past (until)."""
    _check_ahead(until, now)
    book = _changed(by, session, now, lambda book: queue.hold(book, person.pk, until, place))
    return book.of(person.pk)


def accept(by: Account | None, session: ClassSession, person: Person, now: datetime) -> queue.SignUp:
    """Whoever had a place kept or offered is in; raises ClassError as `queue.accept`."""
    return _changed(by, session, now, lambda book: queue.accept(book, person.pk)).of(person.pk)


def give_up(by: Account | None, session: ClassSession, person: Person, now: datetime) -> None:
    """Off the list; place and kit number are free again. Raises ClassError as `queue.cancel`."""
    _changed(by, session, now, lambda book: queue.cancel(book, person.pk), may_be_over=True)


def move(
    by: Account | None, session: ClassSession, person: Person, now: datetime, place: Place
) -> queue.SignUp:
    """To a free place, the kit goes along; raises ClassError as `queue.move`."""
    return _changed(by, session, now, lambda book: queue.move(book, person.pk, place)).of(person.pk)


def swap(by: Account | None, session: ClassSession, person: Person, other: Person, now: datetime) -> None:
    """Two people change places and keep their kits; raises ClassError as `queue.swap`."""
    _changed(by, session, now, lambda book: queue.swap(book, person.pk, other.pk))


def offer_next(
    by: Account | None, session: ClassSession, now: datetime, until: datetime, place: Place | None = None
) -> Person:
    """A place offered to whoever waits longest; raises ClassError as `queue.offer_next`, and past (until)."""
    _check_ahead(until, now)
    first: list[int] = []

    def offered(book: queue.Book) -> queue.Book:
        first.extend(waiting.person for waiting in book.waiting[:1])
        return queue.offer_next(book, until, place)

    _changed(by, session, now, offered)
    return Person.objects.get(pk=first[0])


def _check_ahead(until: datetime, now: datetime) -> None:
    if until <= now:
        raise ClassError("past", until=until)


@transaction.atomic
def _changed(
    by: Account | None, session: ClassSession, now: datetime, change: Change, *, may_be_over: bool = False
) -> queue.Book:
    """The list after the change, written. A cancelled class takes no change but people leaving it.

    The class's row is the lock: whoever comes second reads the list as the first one left it.
    """
    ClassSession.objects.select_for_update().get(pk=session.pk)
    locked = ClassSession.objects.whole().get(pk=session.pk)
    if locked.is_cancelled and not may_be_over:
        raise ClassError("class_cancelled")
    before = book_of(locked, now)
    after = change(before)
    rows = {row.number: row for row in locked.sign_ups.all()}
    said_before = said_of(rows.values())
    _write(locked, rows, after)
    record_change(by, locked, said_before, said_of(locked.sign_ups.select_related("person", "lathe")))
    return after


def _write(session: ClassSession, rows: dict[int, SignUp], after: queue.Book) -> None:
    """New lines and changed ones, those that have ended included."""
    lathes = {lathe.number: lathe for lathe in session.lathes.all() if _is_here(lathe.workshop_id, session)}
    changed = [
        line for line in after.sign_ups if line.number not in rows or _differs(rows[line.number], line)
    ]
    # Places and kits are laid down first, so that two people can change them.
    numbers = [line.number for line in changed]
    session.sign_ups.filter(number__in=numbers).update(lathe=None, sitting=None, kit=None)
    for line in changed:
        row = rows.get(line.number) or SignUp(class_session=session, number=line.number)
        row.person_id, row.state, row.kit, row.until = line.person, line.state.value, line.kit, line.until
        row.lathe = lathes[line.place.lathe] if line.place else None
        row.sitting = line.place.sitting if line.place else None
        row.save()
    if after.last_number != session.last_number:
        ClassSession.objects.filter(pk=session.pk).update(last_number=after.last_number)


def _is_here(workshop_id: int, session: ClassSession) -> bool:
    return workshop_id == session.workshop_id


def _differs(row: SignUp, line: queue.SignUp) -> bool:
    """Whether the line says another thing than its row; a place that isn't there any more stays as it was."""
    kept = (row.state, row.kit, row.until)
    if kept != (line.state.value, line.kit, line.until):
        return True
    return line.place is not None and row.place != line.place


def said_of(rows: Iterable[SignUp]) -> Snapshot:
    """Each line of the list in words, for the change log."""
    return {
        gettext("%(person)s, no. %(number)s") % {"person": row.person, "number": row.number}: sign_up_words(
            row
        )
        for row in rows
    }
