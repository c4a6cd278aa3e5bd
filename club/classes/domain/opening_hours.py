"""The latest hours in which so much work can be done in a workshop that isn't always open."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from club.classes.domain.errors import ClassError
from club.classes.domain.local_time import local
from club.lathes.domain.opening_hours import DAY, Opening

# Ten years: whoever needs longer has mistyped something.
FURTHEST = timedelta(days=3_650)


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
