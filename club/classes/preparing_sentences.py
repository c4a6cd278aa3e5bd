"""What people read of the time before a class and of its evening: jobs, dates, how late, how long."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from django.utils.functional import Promise
from django.utils.translation import gettext, ngettext
from django.utils.translation import gettext_lazy as _

from club.classes.domain.preparation import Job
from club.classes.domain.queue import Book
from club.classes.domain.time_plan import Part, PartKind, TimePlan
from club.classes.models import ClassSession, SignUp
from club.classes.ordering import Ordering
from club.classes.seats import Seat
from club.classes.sentences import clock_words, state_words
from club.lathes.models import Workshop

HOUR, DAY = 60, 24 * 60

ORDER_TITLE = _("Order what is to buy")
PRINT_TITLE = _("Print the papers")
PRINT_WORDS = _("A handout for each student, the class list, a card for each lathe.")

ORDER_LINK = _("See the order")
KIT_LINK = _("See the kit")
PROJECT_LINK = _("See the project")
SEAT_LINK = _("Give places")
OFFER_LINK = _("Offer a place")
PRINT_LINK = _("See the papers")

SITTINGS = (
    _("first sitting"),
    _("second sitting"),
    _("third sitting"),
    _("fourth sitting"),
    _("fifth sitting"),
    _("sixth sitting"),
)
PARTS = {
    PartKind.BRIEFING: _("Briefing"),
    PartKind.DEMONSTRATION: _("Demonstration"),
    PartKind.HANDS_ON: _("At the lathes"),
    PartKind.CHANGE_OVER: _("Change-over"),
    PartKind.CLEAN_UP: _("Clean-up"),
}


@dataclass(frozen=True)
class Link:
    """Where a job is done, and the words to press."""

    words: Promise
    url: str


def minutes_words(minutes: int) -> str:
    """`3 h 55 min`, `40 min`, `2 h`."""
    hours, rest = divmod(minutes, HOUR)
    if not hours:
        return gettext("%(minutes)s\u00a0min") % {"minutes": rest}
    if not rest:
        return gettext("%(hours)s\u00a0h") % {"hours": hours}
    return gettext("%(hours)s\u00a0h %(minutes)s\u00a0min") % {"hours": hours, "minutes": rest}


def job_words(job: Job) -> str:
    """How long it takes, how many people, what passes behind it: `30 min, then 24 h`."""
    parts = [minutes_words(job.minutes)] if job.minutes else []
    if job.people > 1:
        parts.append(ngettext("%(count)s person", "%(count)s people", job.people) % {"count": job.people})
    if job.wait:
        parts.append(gettext("then wait %(wait)s") % {"wait": wait_words(job.wait)})
    return ", ".join(parts)


def wait_words(minutes: int) -> str:
    """In days where it is whole days and more than one: nobody counts a week in hours."""
    days, rest = divmod(minutes, DAY)
    if rest or days < 2:
        return minutes_words(minutes)
    return gettext("%(days)s days") % {"days": days}


def late_words(start_by: datetime, now: datetime) -> str:
    """`2 days late`, by the calendar of the workshop; earlier today it says since when. Both by one clock."""
    if start_by >= now:
        return ""
    days = (now.date() - start_by.date()).days
    if not days:
        return gettext("late since %(clock)s") % {"clock": clock_words(start_by.time())}
    return ngettext("%(days)s day late", "%(days)s days late", days) % {"days": days}


def ordering_words(ordering: Ordering) -> str:
    """How much from how many, who takes longest, and what nobody sells."""
    sentences = []
    if ordering.packs:
        packs = ngettext("%(count)s pack", "%(count)s packs", ordering.packs) % {"count": ordering.packs}
        values = {"packs": packs, "suppliers": ", ".join(ordering.suppliers)}
        sentences.append(gettext("%(packs)s from %(suppliers)s.") % values)
    if ordering.days:
        sentences.append(
            ngettext(
                "%(supplier)s takes %(days)s day to deliver.",
                "%(supplier)s takes %(days)s days to deliver.",
                ordering.days,
            )
            % {"supplier": ordering.slowest, "days": ordering.days}
        )
    if ordering.missing:
        sentences.append(
            ngettext(
                "Nobody is known who sells enough for %(count)s line of the kit.",
                "Nobody is known who sells enough for %(count)s lines of the kit.",
                ordering.missing,
            )
            % {"count": ordering.missing}
        )
    return " ".join(sentences)


def seat_title(people: int) -> str:
    return ngettext("Give %(count)s person a place", "Give %(count)s people a place", people) % {
        "count": people
    }


def offer_title(places: int) -> str:
    return ngettext("Offer %(count)s free place", "Offer %(count)s free places", places) % {"count": places}


def offer_words(waiting: int) -> str:
    return ngettext("%(count)s person is waiting.", "%(count)s people are waiting.", waiting) % {
        "count": waiting
    }


def undated(workshop: Workshop) -> str:
    """Why opening hours were left out of the dates."""
    return gettext(
        "%(workshop)s isn't open long enough for this work, so its opening hours are left out of the dates."
    ) % {"workshop": workshop}


def part_words(part: Part, sittings: int) -> str:
    """A part of the evening by its name, with its sitting where there are several."""
    name = str(PARTS[part.kind])
    if part.sitting is None or sittings == 1:
        return name
    return gettext("%(part)s, %(sitting)s") % {"part": name, "sitting": SITTINGS[part.sitting - 1]}


def limit_words(session: ClassSession, book: Book, plan: TimePlan) -> str:
    """How many places and what limits them: `12 places: 6 lathes, 2 sittings; 145 of 150 min`."""
    lathes = len({place.lathe for place in book.layout})
    values = {
        "places": ngettext("%(count)s place", "%(count)s places", book.places) % {"count": book.places},
        "lathes": ngettext("%(count)s lathe", "%(count)s lathes", lathes) % {"count": lathes},
        "sittings": ngettext("%(count)s sitting", "%(count)s sittings", session.sittings)
        % {"count": session.sittings},
        "most": len(book.layout),
        "needed": plan.needed,
        "available": plan.available,
    }
    return str(_limit_sentence(session, book) % values)


def _limit_sentence(session: ClassSession, book: Book) -> Promise:
    if book.places >= len(book.layout):
        return _("%(places)s: %(lathes)s, %(sittings)s; %(needed)s of %(available)s\u00a0min")
    if session.lowered_to is not None:
        return _(
            "%(places)s, lowered by hand from %(most)s: %(lathes)s, %(sittings)s; "
            "%(needed)s of %(available)s\u00a0min"
        )
    return _(
        "%(places)s, as the class was saved; its %(lathes)s in %(sittings)s now give %(most)s; "
        "%(needed)s of %(available)s\u00a0min"
    )


def seat_words(seat: Seat) -> str:
    """What stands under the name of whoever has a place: `lathe 5, kit 9, in`."""
    if seat.row is None:
        return ""
    lathe = gettext("lathe %(number)s") % {"number": seat.lathe.number} if seat.lathe else ""
    kit = gettext("kit %(number)s") % {"number": seat.row.kit} if seat.row.kit else ""
    return ", ".join(part for part in (lathe, kit, state_words(seat.row)) if part)


def lost_words(seat: Seat) -> str:
    """Why somebody who takes a place has none: `kit 9, in, no place chosen yet`."""
    if seat.row is None:
        return ""
    kit = gettext("kit %(number)s") % {"number": seat.row.kit} if seat.row.kit else ""
    return ", ".join(part for part in (kit, state_words(seat.row), why_lost(seat.row)) if part)


def why_lost(row: SignUp) -> str:
    """Its lathe may be there all the same: in fewer sittings, or another one of that number elsewhere."""
    if not row.lathe or not row.place:
        return gettext("no place chosen yet")
    if row.lathe.workshop_id != row.class_session.workshop_id:
        return gettext("had %(place)s in another workshop") % {"place": row.place.name}
    return gettext("had %(place)s, which isn't there for this class now") % {"place": row.place.name}
