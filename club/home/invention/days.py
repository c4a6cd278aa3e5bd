"""On which days the demonstration club holds its classes, seen from whatever day it is loaded on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, time, timedelta

DAY = timedelta(days=1)
WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
# Month and day on which nobody of the club holds a class.
HOLIDAYS = frozenset({(12, 24), (12, 25), (12, 26), (12, 31), (1, 1)})


@dataclass(frozen=True)
class Evening:
    """When a class of its kind is held in a week; `weekday` counts from Monday, 0."""

    weekday: int
    at: time


@dataclass(frozen=True)
class Wanted:
    """So many days from today, below nought for a class that is over, on the nearest of these evenings
    that is no nearer."""

    days: int
    evenings: tuple[Evening, ...]


def evenings_in(text: str) -> tuple[Evening, ...]:
    """`Tue 18:30, Sat 10:00` as Python has them.

    >>> evenings_in("Tue 18:30")
    (Evening(weekday=1, at=datetime.time(18, 30)),)
    """
    parts = (part.split() for part in text.split(","))
    return tuple(Evening(WEEKDAYS.index(day), time.fromisoformat(at)) for day, at in parts)


def held_on(wanted: Iterable[Wanted], today: date) -> Iterator[tuple[date, time]]:
    """A day and time for each, never two on one day.

    Those to come are listed from the next one on, and so are, going back, those that are over.
    """
    last = {True: today, False: today}
    for each in wanted:
        ahead = each.days >= 0
        step = DAY if ahead else -DAY
        first = today + each.days * DAY
        day = max(first, last[ahead] + step) if ahead else min(first, last[ahead] + step)
        last[ahead], at = _nearest(day, step, each.evenings)
        yield last[ahead], at


def _nearest(day: date, step: timedelta, evenings: Iterable[Evening]) -> tuple[date, time]:
    times = {evening.weekday: evening.at for evening in evenings}
    while day.weekday() not in times or (day.month, day.day) in HOLIDAYS:
        day += step
    return day, times[day.weekday()]
