"""Who stands where in a class: its list by place, those without one, those who wait."""

from __future__ import annotations

from dataclasses import dataclass

from club.classes.domain.places import Place
from club.classes.domain.queue import Book, State
from club.classes.domain.queue import SignUp as Line
from club.classes.models import ClassSession, SignUp
from club.lathes.models import Lathe
from club.people.models import Person


@dataclass(frozen=True)
class Seat:
    """A place with who has it, or one of the two alone: a free place, a person without one.

    A lost place is one whose lathe isn't there for the class any more.
    """

    place: Place | None
    lathe: Lathe | None
    row: SignUp | None = None
    is_lost: bool = False

    @property
    def name(self) -> str:
        return self.place.name if self.place else ""

    @property
    def person(self) -> Person | None:
        return self.row.person if self.row else None

    @property
    def is_asked(self) -> bool:
        """Whether it is kept for somebody who hasn't said yes."""
        return self.row is not None and self.row.state in {State.HELD, State.OFFERED}


def seats_of(session: ClassSession, book: Book) -> tuple[Seat, ...]:
    """Every place that is there now, in the order of the lathes, free ones too."""
    lathes, rows = _lathes(session), _rows(session)
    taken = {line.place: rows[line.number] for line in book.taking if line.place}
    return tuple(Seat(place, lathes[place.lathe], taken.get(place)) for place in book.layout)


def without_place(session: ClassSession, book: Book) -> tuple[Seat, ...]:
    """Those who take a place and have none, or one whose lathe isn't there; that lathe stands with them."""
    rows = _rows(session)
    lost = [line for line in book.taking if line.place is None or line in book.misplaced]
    return tuple(
        Seat(line.place, rows[line.number].lathe, rows[line.number], is_lost=True)
        for line in _by_number(lost)
    )


def waiting(session: ClassSession, book: Book) -> tuple[SignUp, ...]:
    """Those who wait, the next one first."""
    rows = _rows(session)
    return tuple(rows[line.number] for line in book.waiting)


def seated(session: ClassSession, book: Book) -> tuple[Seat, ...]:
    """Everybody who takes one of the class's places, by name, so that a student finds themselves."""
    placed = [seat for seat in seats_of(session, book) if seat.row]
    everybody = [*placed, *without_place(session, book)]
    return tuple(sorted(everybody, key=lambda seat: (seat.person.sought_name, seat.person.pk)))  # type: ignore[union-attr]


def _lathes(session: ClassSession) -> dict[int, Lathe]:
    return {lathe.number: lathe for lathe in session.lathes.all() if lathe.workshop_id == session.workshop_id}


def _rows(session: ClassSession) -> dict[int, SignUp]:
    return {row.number: row for row in session.sign_ups.all()}


def _by_number(lines: list[Line]) -> list[Line]:
    return sorted(lines, key=lambda line: line.number)
