"""A class's rows as the pure list that `domain.queue` works on."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime

from club.classes.domain import queue
from club.classes.domain.places import ClassLathe, Place, layout
from club.classes.models import ClassSession, SignUp
from club.lathes.models import Lathe


def layout_of(session: ClassSession) -> tuple[Place, ...]:
    """The places that are there now: lathes chosen for the class, in its workshop and not out of service."""
    here = (lathe for lathe in session.lathes.all() if lathe.workshop_id == session.workshop_id)
    return places_at(here, session.demonstration_lathe_id, session.sittings)


def places_at(lathes: Iterable[Lathe], demonstration: int | None, sittings: int) -> tuple[Place, ...]:
    """The places of these lathes; the demonstration's is set aside."""
    chosen = (
        ClassLathe(
            lathe.number,
            in_service=lathe.condition != Lathe.Condition.OUT,
            set_aside=lathe.pk == demonstration,
        )
        for lathe in lathes
    )
    return layout(chosen, sittings)


def book_of(session: ClassSession, now: datetime) -> queue.Book:
    """The class's list at this moment, without what has lapsed by then.

    It takes as many as were stored, and never more than there are places now: a lathe may have gone out of
    service since.
    """
    places = layout_of(session)
    rows = tuple(_line(session, row) for row in session.sign_ups.all())
    book = queue.Book(min(session.places, len(places)), places, rows, session.last_number)
    return queue.lapse(book, now)


def _line(session: ClassSession, row: SignUp) -> queue.SignUp:
    here = row.lathe is not None and row.lathe.workshop_id == session.workshop_id
    return queue.SignUp(
        row.person_id, row.number, queue.State(row.state), row.place if here else None, row.kit, row.until
    )
