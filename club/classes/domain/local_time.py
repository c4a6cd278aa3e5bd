"""Local date, time and zone are the truth of a class; UTC follows from them, for order and comparison.

A zone's rules may change between planning and the evening: the class then still begins at 18:30 on the wall.
Zones are handed in, so that nothing here reads the tables of zones. Instants are always in UTC: two aware
times of one zone are subtracted by Python as the clock shows them, an hour out across a change.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from club.classes.domain.errors import ClassError

# Before standard time zones mean little, and nobody can tell the rules of times so far ahead.
FIRST_YEAR, LAST_YEAR = 1900, 2199


def instant(day: date, at: time, zone: ZoneInfo) -> datetime:
    """The moment, in UTC, at which clocks of the zone show this.

    A time shown twice (clocks go back) means the first reading. Raises ClassError no_such_time for one that
    is skipped (clocks go forward), no_such_year, has_own_zone.

    >>> instant(date(2027, 7, 1), time(18, 30), ZoneInfo("Europe/Berlin")).isoformat()
    '2027-07-01T16:30:00+00:00'
    """
    _check_plain(day, at)
    shown = datetime.combine(day, at.replace(fold=0))
    found = shown.replace(tzinfo=zone).astimezone(UTC)
    if local(found, zone).replace(tzinfo=None) != shown:
        raise _no_such_time(shown, zone)
    return found


def _check_plain(day: date, at: time) -> None:
    if at.tzinfo is not None:
        raise ClassError("has_own_zone", at=at)
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise ClassError("no_such_year", year=day.year, first=FIRST_YEAR, last=LAST_YEAR)


def local(moment: datetime, zone: ZoneInfo) -> datetime:
    """What clocks of the zone show at a moment; `fold` is 1 in the second reading of a time shown twice."""
    return moment.astimezone(zone)


def shown_twice(day: date, at: time, zone: ZoneInfo) -> bool:
    """Whether clocks of the zone show this twice, so that a page says which one is meant."""
    first = instant(day, at, zone)
    second = datetime.combine(day, at, tzinfo=zone).replace(fold=1).astimezone(UTC)
    return second > first


def _no_such_time(shown: datetime, zone: ZoneInfo) -> ClassError:
    """The clock's last reading before the gap that `shown` falls into, and its first behind it."""
    change = _change_around(shown, zone)
    behind = local(change, zone)
    skipped = _offset(shown, zone, fold=0) - _offset(shown, zone, fold=1)
    goes_on_at = behind.replace(tzinfo=None)
    return ClassError("no_such_time", at=shown, left_at=goes_on_at + skipped, goes_on_at=goes_on_at)


def _change_around(shown: datetime, zone: ZoneInfo) -> datetime:
    """The moment, to the second, at which the clock jumps over `shown`.

    Inside a gap the first reading counts with the offset before the change, and so lies behind it; the
    second counts with the one after, and so lies before it (PEP 495).
    """
    early = (shown - _offset(shown, zone, fold=1)).replace(tzinfo=UTC, microsecond=0)
    seconds = int((_offset(shown, zone, fold=1) - _offset(shown, zone, fold=0)).total_seconds())
    before = early.astimezone(zone).utcoffset()
    low, high = 0, seconds
    while high - low > 1:
        middle = (low + high) // 2
        if (early + timedelta(seconds=middle)).astimezone(zone).utcoffset() == before:
            low = middle
        else:
            high = middle
    return early + timedelta(seconds=high)


def _offset(shown: datetime, zone: ZoneInfo, *, fold: int) -> timedelta:
    return shown.replace(tzinfo=zone, fold=fold).utcoffset() or timedelta()


@dataclass(frozen=True)
class ClassHours:
    """When a class is held: it begins as the wall clock says and lasts real minutes.

    Across a change of clocks the minutes win: 150 minutes of teaching stay 150, and the end is what the wall
    clock shows then. Raises what `instant` raises, and no_length.
    """

    day: date
    at: time
    minutes: int
    zone: ZoneInfo

    def __post_init__(self) -> None:
        if self.minutes < 1:
            raise ClassError("no_length", minutes=self.minutes)
        instant(self.day, self.at, self.zone)

    @property
    def begins(self) -> datetime:
        """In UTC."""
        return instant(self.day, self.at, self.zone)

    @property
    def ends(self) -> datetime:
        """In UTC."""
        return self.begins + timedelta(minutes=self.minutes)

    def clock(self, minutes: int) -> datetime:
        """What the wall clock shows so many real minutes after the beginning."""
        return local(self.begins + timedelta(minutes=minutes), self.zone)

    @property
    def local_end(self) -> datetime:
        """What the wall clock shows at the end."""
        return self.clock(self.minutes)

    @property
    def clock_change(self) -> timedelta:
        """How far clocks are put forward during the class; negative where back, nought nearly always."""
        start = local(self.begins, self.zone).utcoffset() or timedelta()
        return (self.local_end.utcoffset() or timedelta()) - start
