"""The stick: a mark for each day up to a class, a short one where nothing is to be begun."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby

from club.classes.preparing import Todo

DAY = timedelta(days=1)
# More days in a row without work than this are broken off, so that the class stays in sight.
MOST_EMPTY = 6


@dataclass(frozen=True)
class Mark:
    """One mark of the stick. `last` is set where it stands for several days, from `day` to then."""

    day: date
    todos: tuple[Todo, ...] = ()
    is_today: bool = False
    in_chain: bool = False
    last: date | None = None

    @property
    def is_empty(self) -> bool:
        return not self.todos and not self.is_today

    @property
    def days(self) -> int:
        return ((self.last or self.day) - self.day).days + 1


def stick(todos: Sequence[Todo], today: date, class_day: date) -> tuple[Mark, ...]:
    """From the first thing left, or today, to the day before the class; its own day too where it has work.

    A thing left undone stands on its day, also where that has passed. The chain runs from the first of its
    things that is left to the class.
    """
    by_day = {day: tuple(group) for day, group in groupby(todos, lambda todo: todo.start_by.date())}
    first = min(today, *by_day) if by_day else today
    chain_from = min((todo.start_by.date() for todo in todos if todo.in_chain), default=None)
    marks = (
        Mark(day, by_day.get(day, ()), day == today, chain_from is not None and day >= chain_from)
        for day in _days(first, class_day)
        if day != class_day or day in by_day or day == today
    )
    return tuple(_broken_off(marks))


def _days(first: date, last: date) -> Iterator[date]:
    for number in range((last - first).days + 1):
        yield first + number * DAY


def _broken_off(marks: Iterator[Mark]) -> Iterator[Mark]:
    """Long runs of empty days as one mark each; a run is of one kind, in the chain or not."""
    for (is_empty, in_chain), run in groupby(marks, lambda mark: (mark.is_empty, mark.in_chain)):
        days = list(run)
        if is_empty and len(days) > MOST_EMPTY:
            yield Mark(days[0].day, in_chain=in_chain, last=days[-1].day)
        else:
            yield from days
