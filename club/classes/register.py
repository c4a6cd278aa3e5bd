"""The list of a class for the wall: everybody who is in, where they stand and which kit is theirs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from django.utils.translation import gettext

from club.classes.book import book_of
from club.classes.evening import sitting_clocks
from club.classes.models import ClassSession, SignUp
from club.classes.preparing_sentences import SITTINGS
from club.classes.seats import Seat, seated
from club.classes.sentences import clock_words


@dataclass(frozen=True)
class Listed:
    """One student in words: `5a`, `lathe 5`, `first sitting, 19:00`. A place not given yet is empty."""

    seat: Seat
    row: SignUp
    place: str
    lathe: str
    sitting: str

    @property
    def name(self) -> str:
        return self.row.person.name

    @property
    def kit(self) -> str:
        return "" if self.row.kit is None else str(self.row.kit)


def listed(session: ClassSession, now: datetime) -> list[Listed]:
    """Those who are in, by name. Whoever hasn't said yes has no kit, and stands on no paper.

    Nobody where the class isn't held, since nothing is printed for it.
    """
    if session.is_cancelled:
        return []
    clocks = sitting_clocks(session)
    return [
        _listed(seat, seat.row, session, clocks)
        for seat in seated(session, book_of(session, now))
        if seat.row and not seat.is_asked
    ]


def still_asked(session: ClassSession, now: datetime) -> int:
    """How many have a place kept or offered and haven't said yes, so that no paper names them."""
    return sum(seat.is_asked for seat in seated(session, book_of(session, now)))


def _listed(seat: Seat, row: SignUp, session: ClassSession, clocks: dict[int, str]) -> Listed:
    if seat.place is None or seat.is_lost:
        return Listed(seat, row, "", "", "")
    lathe = gettext("lathe %(number)s") % {"number": seat.place.lathe}
    return Listed(seat, row, seat.name, lathe, sitting_words(session, seat.place.sitting, clocks))


def sitting_words(session: ClassSession, sitting: int, clocks: dict[int, str]) -> str:
    """`first sitting, 19:00`; of a class with one sitting the time alone."""
    clock = clocks.get(sitting, "")
    if session.sittings == 1:
        return clock
    return gettext("%(sitting)s, %(clock)s") % {"sitting": SITTINGS[sitting - 1], "clock": clock}


def register_of(session: ClassSession, now: datetime) -> dict[str, Any]:
    return {
        "session": session,
        "listed": listed(session, now),
        "asked": still_asked(session, now),
        "begins": clock_words(session.at),
        "ends": clock_words(session.hours.local_end.time()),
    }
