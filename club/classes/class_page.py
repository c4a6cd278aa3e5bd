"""A class as its page shows it: when, who, where everybody stands, the evening, what is left to do."""

from __future__ import annotations

from datetime import datetime
from typing import Any
from urllib.parse import urlencode

from club.base.changes import changes_of
from club.classes.book import book_of
from club.classes.evening import evening_of
from club.classes.kit_totals import totals_of
from club.classes.models import ClassSession
from club.classes.ordering import ordering_of
from club.classes.preparing import preparing
from club.classes.preparing_sentences import limit_words, lost_words, seat_words
from club.classes.seats import Seat, seats_of, waiting, without_place
from club.lathes.models import Lathe


def page_of(session: ClassSession, now: datetime) -> dict[str, Any]:
    book, evening = book_of(session, now), evening_of(session)
    ordering = ordering_of(totals_of(session))
    open_still = not session.is_cancelled and now < session.ends
    return {
        "session": session,
        "book": book,
        "is_open": open_still,
        "is_over": now >= session.ends,
        "limits": limit_words(session, book, evening.plan),
        "seats": [(seat, seat_words(seat)) for seat in seats_of(session, book)],
        "without_place": [(seat, lost_words(seat)) for seat in without_place(session, book)],
        "waiting": waiting(session, book),
        # Room that people wait for is theirs, so a free place is then offered, not given.
        "may_fill": open_still and book.room and not book.waiting,
        "out_of_service": out_of_service(session),
        "card_query": urlencode([("lathe", lathe.pk) for lathe in session.lathes.all()]),
        "evening": evening,
        "preparing": preparing(session, book, ordering, now),
        "changes": changes_of(session),
    }


def out_of_service(session: ClassSession) -> list[Lathe]:
    """Lathes chosen for the class that nobody may use."""
    return [lathe for lathe in session.lathes.all() if lathe.condition == Lathe.Condition.OUT]


def places_now(session: ClassSession, now: datetime) -> list[tuple[Seat, str]]:
    """The list by place alone, for pages that show the class small."""
    return [(seat, seat_words(seat)) for seat in seats_of(session, book_of(session, now))]
