"""When a workshop is open, and the latest hours in which so much work can be done there."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

from club.classes.domain.errors import ClassError
from club.classes.domain.local_time import local

DAY = timedelta(days=1)
WEEK = timedelta(days=7)
# Ten years: whoever needs longer has mistyped something.
FURTHEST = timedelta(days=3_650)


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
    """Raises ClassError openings_overlap (weekday, begins of the later one): work would count twice."""
    # Any Monday will do.
    week = [(*each.on(date(2024, 1, 1) + each.weekday * DAY), each) for each in openings]
    week.sort(key=lambda stretch: stretch[0])
    again = [(week[0][0] + WEEK, week[0][1] + WEEK, week[0][2])] if week else []
    for earlier, later in pairwise(week + again):
        if later[0] < earlier[1]:
            raise ClassError("openings_overlap", weekday=later[2].weekday, begins=later[2].begins)


def latest_work(
    done_by: datetime, minutes: int, openings: Collection[Opening], zone: ZoneInfo
) -> tuple[datetime, datetime]:
    """The latest beginning and end, in UTC, of so many minutes of work that are done by `done_by`.

    Work goes on over several openings where one is too short; without openings the workshop is always open.
    Raises too_long_beforehand where ten years don't do. Openings may not overlap.
    """
    left = timedelta(minutes=minutes)
    if not openings:
        return done_by - left, done_by
    end: datetime | None = None
    for begins, ends in _stretches_before(done_by, openings, zone):
        end = end or ends
        if ends - begins >= left:
            return ends - left, end
        left -= ends - begins
    raise ClassError("too_long_beforehand")


def _stretches_before(
    moment: datetime, openings: Collection[Opening], zone: ZoneInfo
) -> Iterator[tuple[datetime, datetime]]:
    """Stretches in UTC, the last first, the one that `moment` lies in cut there."""
    day = local(moment, zone).date()
    first = day - FURTHEST
    by_begin = sorted(openings, key=lambda each: each.begins, reverse=True)
    while day > first:
        for opening in by_begin:
            if opening.weekday == day.weekday():
                # Read without a complaint: doors have no code that says the clock skips their time.
                begins, ends = (shown.replace(tzinfo=zone).astimezone(UTC) for shown in opening.on(day))
                if begins < min(ends, moment):
                    yield begins, min(ends, moment)
        day -= DAY
