"""The first page of staff: what is left to do before the next class, and the classes after it."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from django.utils.formats import date_format
from django.utils.translation import gettext, ngettext

from club.classes.access import classes_for
from club.classes.book import book_of
from club.classes.class_page import out_of_service, places_in_words
from club.classes.evening import evening_of
from club.classes.kit_totals import totals_of
from club.classes.models import ClassSession
from club.classes.ordering import ordering_of
from club.classes.preparing import preparing
from club.classes.sentences import clock_words, day_words
from club.home.stick import stick
from club.people.models import Account

CLASSES_AFTER = 6
WEEK = 7


def page_of(account: Account, now: datetime) -> dict[str, Any]:
    """The next class in this account's workshops with its stick, and those that come after it."""
    coming = classes_for(account, "classes:class").planned().coming(now)
    session = coming.whole().first()
    if session is None:
        return {"session": None}
    after = coming.exclude(pk=session.pk).with_taken(now).select_related("edition", "workshop")
    return {**_next(session, now), "after": after[:CLASSES_AFTER]}


def _next(session: ClassSession, now: datetime) -> dict[str, Any]:
    book = book_of(session, now)
    left = preparing(session, book, ordering_of(totals_of(session)), now)
    marks = stick(left.left, left.now.date(), session.day)
    return {
        "session": session,
        "book": book,
        "heading": heading(session, left.now),
        "distance": distance(session, left.now),
        "preparing": left,
        "first": next(iter(left.left), None),
        "marks": marks,
        "has_work_that_day": bool(marks) and marks[-1].day == session.day,
        "evening": evening_of(session),
        "seats": places_in_words(session, book),
        "out_of_service": out_of_service(session),
    }


def heading(session: ClassSession, here: datetime) -> str:
    """`What is left before Thursday`; `here` is now by the workshop's clock."""
    if here >= session.begins:
        return gettext("%(title)s is on now") % {"title": session.edition.title}
    days = (session.day - here.date()).days
    if not days:
        return gettext("What is left before %(clock)s") % {"clock": clock_words(session.at)}
    if days == 1:
        return gettext("What is left before tomorrow")
    day = day_words(session.day) if days >= WEEK else date_format(session.day, "l")
    return gettext("What is left before %(day)s") % {"day": day}


def distance(session: ClassSession, here: datetime) -> str:
    """How far off the class is, by the calendar of the workshop: `8 days`."""
    if here >= session.begins:
        return gettext("it has begun")
    days = (session.day - here.date()).days
    if days:
        return ngettext("%(days)s day", "%(days)s days", days) % {"days": days}
    return gettext("it is today")
