"""What people read of a class: what is refused, what is in the way, and how a line of its list reads."""

from __future__ import annotations

from datetime import date, datetime, time
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

from django.utils.formats import date_format, time_format
from django.utils.functional import Promise
from django.utils.translation import gettext, ngettext
from django.utils.translation import gettext_lazy as _

from club.classes.domain.clashes import Clash, ClashKind
from club.classes.domain.errors import ClassError
from club.classes.domain.local_time import local
from club.classes.domain.places import Place

if TYPE_CHECKING:
    from club.classes.models import ClassSession, SignUp

REFUSED: dict[str, Promise] = {
    "no_such_time": _(
        "Clocks are put forward that night: after %(left_at)s comes %(goes_on_at)s. Choose a time outside."
    ),
    "no_such_year": _("The year has to lie between %(first)s and %(last)s."),
    "no_length": _("Say how many minutes the class lasts, as 150."),
    "more_than_fit": _(
        "The lathes give %(most)s places: lower them to that or fewer, or choose more lathes."
    ),
    "less_than_none": _("Write a number from 0 up."),
    "twice": _("This person is on the list already."),
    "not_on_the_list": _("This person isn't on the list any more."),
    "not_held": _("No place is kept for this person or offered to them."),
    "without_place": _("Only somebody who has a place can move or change it."),
    "no_such_place": _("Place %(place)s isn't there for this class any more. Choose one that is free."),
    "place_taken": _("Somebody else has place %(place)s. Choose one that is free."),
    "full": _("No place can be kept: all are taken, or people wait for the one that is free."),
    "nobody_waiting": _("Nobody is waiting."),
    "class_cancelled": _("This class isn't held, so its list takes nobody."),
    "past": _("This lies in the past. Choose a day and time that are still to come."),
    "bad_place": _("Write a place as 5a: the lathe's number and a letter for the sitting."),
}

STATES = {
    "held": _("kept until %(until)s"),
    "in": _("in"),
    "waiting": _("waiting"),
    "offered": _("offered until %(until)s"),
    "cancelled": _("given up"),
    "lapsed": _("lapsed"),
}


def refusal(error: ClassError) -> str:
    """The sentence for a class error, with what would be accepted."""
    values = {name: _readable(value) for name, value in error.values.items()}
    return str(REFUSED[error.code] % values)


def _readable(value: object) -> object:
    if isinstance(value, Place):
        return value.name
    if isinstance(value, datetime):
        return clock_words(value.time())
    return value


def clock_words(at: time) -> str:
    """As a clock on the wall shows it: `18:30`."""
    return time_format(at, "H:i")


def day_words(day: date) -> str:
    """With its weekday, as `Thursday 3 December`; the year stands in lists and on paper."""
    return date_format(day, "l j F")


def long_day_words(day: date) -> str:
    return date_format(day, "l j F Y")


def moment_words(moment: datetime, zone: ZoneInfo) -> str:
    """A moment by the clock of a zone: `Thursday 3 December, 18:30`."""
    there = local(moment, zone)
    return gettext("%(day)s, %(clock)s") % {
        "day": day_words(there.date()),
        "clock": clock_words(there.time()),
    }


def sign_up_words(row: SignUp) -> str:
    """One line of a list in words, as the change log keeps it: `in, 5a, kit 9`."""
    said = [state_words(row)]
    if row.place:
        said.append(row.place.name)
    if row.kit:
        said.append(gettext("kit %(number)s") % {"number": row.kit})
    return ", ".join(said)


def state_words(row: SignUp) -> str:
    until = moment_words(row.until, ZoneInfo(row.class_session.workshop.zone)) if row.until else ""
    return str(STATES[row.state] % {"until": until})


def clash_words(clash: Clash, other: ClassSession, person: str = "") -> str:
    """One sentence on what a class would take away from another one, or lacks before it."""
    values = {
        "other": gettext("%(title)s on %(day)s at %(clock)s")
        % {"title": other.edition.title, "day": day_words(other.day), "clock": clock_words(other.at)},
        "person": person,
        "workshop": other.workshop,
        "minutes": ngettext("%(count)s minute", "%(count)s minutes", clash.minutes)
        % {"count": clash.minutes},
    }
    if clash.kind is ClashKind.ROOM:
        return gettext("%(workshop)s is taken by %(other)s: both want it for %(minutes)s.") % values
    if clash.kind is ClashKind.TURNAROUND:
        return gettext("%(workshop)s lacks %(minutes)s to be made ready between this and %(other)s.") % values
    return gettext("%(person)s is wanted at %(other)s as well, for %(minutes)s at once.") % values
