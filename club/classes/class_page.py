"""A class as its page shows it: when, who, where everybody stands, the evening, what is left to do."""

from __future__ import annotations

from datetime import datetime
from typing import Any
from urllib.parse import urlencode

from club.base.changes import changes_of
from club.base.quantities.length import LengthStyle
from club.classes.book import book_of
from club.classes.domain.queue import Book
from club.classes.evening import evening_of
from club.classes.kit import kit_page, summary_of
from club.classes.kit_totals import totals_of
from club.classes.models import ClassSession
from club.classes.ordering import ordering_of
from club.classes.preparing import preparing
from club.classes.preparing_sentences import limit_words, lost_words, seat_words
from club.classes.seats import Seat, seats_of, waiting, without_place
from club.lathes.models import Lathe


def page_of(session: ClassSession, lengths: LengthStyle, now: datetime) -> dict[str, Any]:
    book, evening = book_of(session, now), evening_of(session)
    is_open = not session.is_cancelled and now < session.ends
    return {
        "session": session,
        "is_open": is_open,
        "is_over": now >= session.ends,
        "is_short": is_open and session.minimum > max(1, len(book.taking)),
        **_places(session, book, is_open=is_open),
        "limits": limit_words(session, book, evening.plan),
        "card_query": urlencode([("lathe", lathe.pk) for lathe in session.lathes.all()]),
        "evening": evening,
        # What is left to do and to buy is a question only as long as there is a class to come.
        **(_to_do(session, book, lengths, now) if is_open else {}),
        "changes": changes_of(session),
    }


def _places(session: ClassSession, book: Book, *, is_open: bool) -> dict[str, Any]:
    return {
        "book": book,
        "seats": places_in_words(session, book),
        "without_place": [(seat, lost_words(seat)) for seat in without_place(session, book)],
        "waiting": waiting(session, book),
        # Room that people wait for is theirs, so a free place is then offered, not given.
        "may_fill": is_open and book.room and not book.waiting,
        "out_of_service": out_of_service(session),
    }


def _to_do(session: ClassSession, book: Book, lengths: LengthStyle, now: datetime) -> dict[str, Any]:
    found = totals_of(session)
    return {
        "kit": summary_of(kit_page(found, lengths)),
        "preparing": preparing(session, book, ordering_of(found), now),
    }


def out_of_service(session: ClassSession) -> list[Lathe]:
    """Lathes chosen for the class that nobody may use."""
    return [lathe for lathe in session.lathes.all() if lathe.condition == Lathe.Condition.OUT]


def places_in_words(session: ClassSession, book: Book) -> list[tuple[Seat, str]]:
    """Every place with what stands under the name of whoever has it."""
    return [(seat, seat_words(seat)) for seat in seats_of(session, book)]
