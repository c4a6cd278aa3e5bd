"""The demonstration club: an invention, brought in the way a club brings in its own lists."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo

from django.db import transaction
from django.utils import timezone

from club.home.invention.classes import House, house_of, load_classes
from club.home.invention.lists import FOLDER, text_of
from club.home.invention.people import PASSWORD, load_people, load_workshops
from club.home.invention.stores import load_stores
from club.lathes.lists import bring_in, plan_list
from club.lathes.models import Workshop
from club.people.models import Account
from projects.library import exchange

__all__ = ["CLUB", "FOLDER", "PASSWORD", "load_demonstration"]

CLUB = "Quernby Turners"
ZONE = ZoneInfo("Europe/London")
# When people sign up on the day the club is made: before any class of that day.
MORNING = time(9)


def load_demonstration(today: date | None = None) -> bool:
    """Make the club where there is none yet; whether it was made. All of it comes in, or nothing does.

    Its classes lie around `today`, the day in Quernby if none is given.
    """
    if Workshop.objects.exists() or Account.objects.exists():
        return False
    with transaction.atomic():
        load_calendar(load_house(), today or timezone.localdate(timezone=ZONE))
    return True


def load_house() -> House:
    """Everything but the classes: it is the same on any day."""
    workshops = load_workshops()
    people = load_people(workshops)
    coordinator = next(person.account for person in people.values() if person.sign_in)
    _lathes(coordinator, workshops.values())
    _library(coordinator)
    load_stores(coordinator)
    return house_of(coordinator, workshops, people)


def load_calendar(house: House, today: date) -> None:
    """The classes around this day."""
    now = datetime.combine(today, MORNING, ZONE).astimezone(UTC)
    load_classes(house, today, now)


def _lathes(by: Account, workshops: Iterable[Workshop]) -> None:
    plan = plan_list(text_of("lathes.csv"), list(workshops))
    if not plan.is_good:
        raise ValueError(*plan.all_problems)
    bring_in(by, plan)


def _library(by: Account) -> None:
    """The projects and courses, as another club's library comes in."""
    plan = exchange.plan_library((FOLDER / "library.json").read_bytes())
    if not plan.is_good:
        raise ValueError(*plan.all_problems)
    exchange.bring_in(by, plan, plan.mark)
