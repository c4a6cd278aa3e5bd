"""When a workshop is open in every week, as text, a stretch a line: `Mon-Fri 18:00-22:00`."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from itertools import pairwise

from club.base.quantities.number import plain_text
from club.lathes.domain.labelled_lines import ENDS, shown

DAY = timedelta(days=1)
WEEK = timedelta(days=7)
NAMES = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
LONG_NAMES = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
# Stretches of one week: more than three a day. Written out, so many still fit the column.
MOST = 24
SHORTEST_NAME = 3
BETWEEN = r"(?: ?- ?| to )"
DAYS = re.compile(rf"([a-z]+)\.?(?:{BETWEEN}([a-z]+)\.?)?")
CLOCK = r"(\d{1,2})(?:[:.](\d{2}))?"
LINE = re.compile(rf"([a-z][a-z., -]*?):? {CLOCK}{BETWEEN}{CLOCK}", re.ASCII)


class OpeningError(ValueError):
    """Opening hours that can't be kept. `number` counts lines from 1, and is 0 when it isn't about one.

    Codes: unreadable (text), no_such_day (text, day), no_such_time (text), no_length (text), too_many (most),
    overlap (later: the Opening that begins in another one).
    """

    def __init__(self, code: str, number: int = 0, /, **values: object) -> None:
        self.code = code
        self.number = number
        self.values = values
        super().__init__(code)


@dataclass(frozen=True)
class Opening:
    """One stretch of every week, in local time. `weekday` counts from Monday, 0.

    One that ends no later than it begins runs into the next day: 18:00 to 00:00 ends at midnight.
    """

    weekday: int
    begins: time
    ends: time

    def on(self, day: date) -> tuple[datetime, datetime]:
        """Beginning and end by the wall clock, on a day of its weekday."""
        ends = datetime.combine(day, self.ends)
        return datetime.combine(day, self.begins), ends + DAY if self.ends <= self.begins else ends


def check_openings(openings: Collection[Opening]) -> None:
    """Raises OpeningError overlap: work would count twice."""
    # Any Monday will do.
    week = [(*each.on(date(2024, 1, 1) + each.weekday * DAY), each) for each in openings]
    week.sort(key=lambda stretch: stretch[0])
    again = [(week[0][0] + WEEK, week[0][1] + WEEK, week[0][2])] if week else []
    for earlier, later in pairwise(week + again):
        if later[0] < earlier[1]:
            raise OpeningError("overlap", later=later[2])


def parse_openings(text: str) -> tuple[Opening, ...]:
    """The stretches by weekday and beginning, none for an empty text; raises OpeningError.

    Weekdays in English, long or cut to three letters or more; hours from 0:00 to 24:00.

    >>> parse_openings("Sat 9:00-12:30")
    (Opening(weekday=5, begins=datetime.time(9, 0), ends=datetime.time(12, 30)),)
    """
    found = [
        opening for number, line in enumerate(ENDS.split(text), 1) for opening in _openings(number, line)
    ]
    if len(found) > MOST:
        raise OpeningError("too_many", most=MOST)
    check_openings(found)
    return tuple(sorted(found, key=lambda each: (each.weekday, each.begins)))


def _openings(number: int, line: str) -> Iterator[Opening]:
    plain = plain_text(line).lower()
    if not plain:
        return
    found = LINE.fullmatch(plain)
    if found is None:
        raise OpeningError("unreadable", number, text=shown(line))
    weekdays = _weekdays(found[1], number, line)
    begins, ends = _clock(found[2], found[3]), _clock(found[4], found[5])
    if begins is None or ends is None or begins == DAY:
        raise OpeningError("no_such_time", number, text=shown(line))
    if begins == ends:
        raise OpeningError("no_length", number, text=shown(line))
    for weekday in weekdays:
        yield Opening(weekday, _time(begins), _time(ends))


def _weekdays(text: str, number: int, line: str) -> tuple[int, ...]:
    """`mon-wed, fri` as 0, 1, 2, 4; a range may run over the end of the week."""
    weekdays: list[int] = []
    for part in text.split(","):
        found = DAYS.fullmatch(part.strip())
        if found is None:
            raise OpeningError("unreadable", number, text=shown(line))
        first, last = (_weekday(name, number, line) for name in (found[1], found[2] or found[1]))
        weekdays += ((first + each) % 7 for each in range((last - first) % 7 + 1))
    return tuple(weekdays)


def _weekday(name: str, number: int, line: str) -> int:
    for weekday, long_name in enumerate(LONG_NAMES):
        if len(name) >= SHORTEST_NAME and long_name.startswith(name):
            return weekday
    raise OpeningError("no_such_day", number, text=shown(line), day=name)


def _clock(hours: str, minutes: str | None) -> timedelta | None:
    """Since midnight; None for what no clock shows."""
    at = timedelta(hours=int(hours), minutes=int(minutes or 0))
    return at if at <= DAY and int(minutes or 0) < 60 else None


def _time(since_midnight: timedelta) -> time:
    return (datetime.min + since_midnight % DAY).time()


def write_openings(openings: Iterable[Opening]) -> str:
    """Text that `parse_openings` reads back, a stretch a line, days in a row with the same hours together."""
    in_order = sorted(openings, key=lambda each: (each.weekday, each.begins))
    runs: list[list[Opening]] = []
    for opening in in_order:
        run = next((run for run in runs if _goes_on(run[-1], opening)), None)
        if run is None:
            runs.append([opening])
        else:
            run.append(opening)
    return "\n".join(_written(run) for run in runs)


def _goes_on(last: Opening, opening: Opening) -> bool:
    same_hours = (last.begins, last.ends) == (opening.begins, opening.ends)
    return same_hours and opening.weekday == last.weekday + 1


def _written(run: list[Opening]) -> str:
    days = "-".join(dict.fromkeys((NAMES[run[0].weekday], NAMES[run[-1].weekday])))
    begins, ends = run[0].begins, run[0].ends
    until = f"{ends:%H:%M}" if ends != time(0) else "24:00"
    return f"{days} {begins:%H:%M}-{until}"
