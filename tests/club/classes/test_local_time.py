"""Wall clocks and their changes, after the rules printed in the IANA time zone database.

European Union: the last Sundays of March and October at 01:00 UTC (Directive 2000/84/EC). United States:
02:00 on the second Sunday of March and the first of November (15 U.S.C. 260a). Lord Howe Island: half an
hour, at 02:00 on the first Sundays of October and April. Morocco: back an hour at 03:00 on the Sunday before
Ramadan, forward at 02:00 on the one after it; its dates here lie behind us, since those ahead are forecasts.
Samoa left out 30 December 2011 when it went over the date line. Rules and their numbers are from memory, the
Sundays from a calendar; the database agrees with them.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.classes.domain.errors import ClassError
from club.classes.domain.local_time import ClassHours, instant, local, shown_twice

BERLIN, NEW_YORK = ZoneInfo("Europe/Berlin"), ZoneInfo("America/New_York")
LORD_HOWE, CASABLANCA = ZoneInfo("Australia/Lord_Howe"), ZoneInfo("Africa/Casablanca")
APIA, KOLKATA = ZoneInfo("Pacific/Apia"), ZoneInfo("Asia/Kolkata")
ZONES = st.sampled_from([BERLIN, NEW_YORK, LORD_HOWE, CASABLANCA, APIA, KOLKATA, ZoneInfo("UTC")])
SHOWN = st.datetimes(datetime(1970, 1, 1), datetime(2037, 12, 31))

# Zone, the last reading before the change, and the first behind it.
FORWARD = [
    (BERLIN, datetime(2027, 3, 28, 2, 0), datetime(2027, 3, 28, 3, 0)),
    (NEW_YORK, datetime(2027, 3, 14, 2, 0), datetime(2027, 3, 14, 3, 0)),
    (LORD_HOWE, datetime(2025, 10, 5, 2, 0), datetime(2025, 10, 5, 2, 30)),
    (CASABLANCA, datetime(2025, 4, 6, 2, 0), datetime(2025, 4, 6, 3, 0)),
    (APIA, datetime(2011, 12, 30, 0, 0), datetime(2011, 12, 31, 0, 0)),
]
# Zone, what the clock shows when it is put back, what it then shows, and the first moment of that in UTC.
BACK = [
    (BERLIN, datetime(2027, 10, 31, 3, 0), datetime(2027, 10, 31, 2, 0), datetime(2027, 10, 31, 0, 0)),
    (NEW_YORK, datetime(2027, 11, 7, 2, 0), datetime(2027, 11, 7, 1, 0), datetime(2027, 11, 7, 5, 0)),
    (LORD_HOWE, datetime(2025, 4, 6, 2, 0), datetime(2025, 4, 6, 1, 30), datetime(2025, 4, 5, 14, 30)),
    (CASABLANCA, datetime(2025, 2, 23, 3, 0), datetime(2025, 2, 23, 2, 0), datetime(2025, 2, 23, 1, 0)),
]


def zone_of(value: object) -> str:
    return value.key if isinstance(value, ZoneInfo) else ""


def at(shown: datetime, zone: ZoneInfo) -> datetime:
    return instant(shown.date(), shown.time(), zone)


@pytest.mark.parametrize(("zone", "left_at", "goes_on_at"), FORWARD, ids=zone_of)
class TestClocksThatGoForward:
    def test_a_time_they_skip_is_refused_with_the_readings_around_it(self, zone, left_at, goes_on_at):
        skipped = left_at + (goes_on_at - left_at) / 3

        with pytest.raises(ClassError) as caught:
            at(skipped, zone)

        assert caught.value.code == "no_such_time"
        assert caught.value.values == {"at": skipped, "left_at": left_at, "goes_on_at": goes_on_at}

    def test_the_very_reading_at_which_they_leave_is_skipped_too(self, zone, left_at, goes_on_at):
        with pytest.raises(ClassError, match="no_such_time"):
            at(left_at, zone)

    def test_a_minute_lies_between_the_readings_on_either_side(self, zone, left_at, goes_on_at):
        before, behind = at(left_at - timedelta(minutes=1), zone), at(goes_on_at, zone)

        assert behind - before == timedelta(minutes=1)


@pytest.mark.parametrize(("zone", "put_back_at", "shows_then", "in_utc"), BACK, ids=zone_of)
class TestClocksThatGoBack:
    def test_a_time_they_show_twice_means_the_first_reading(self, zone, put_back_at, shows_then, in_utc):
        assert at(shows_then, zone) == in_utc.replace(tzinfo=UTC)

    def test_such_a_time_is_known_as_shown_twice(self, zone, put_back_at, shows_then, in_utc):
        last = put_back_at - timedelta(minutes=1)

        assert shown_twice(shows_then.date(), shows_then.time(), zone) is True
        assert shown_twice(last.date(), last.time(), zone) is True
        assert shown_twice(put_back_at.date(), put_back_at.time(), zone) is False

    def test_a_fold_that_comes_with_the_time_changes_nothing(self, zone, put_back_at, shows_then, in_utc):
        second = shows_then.replace(fold=1)

        assert at(second, zone) == in_utc.replace(tzinfo=UTC)

    def test_the_second_reading_is_kept_apart_on_the_way_to_the_wall(
        self, zone, put_back_at, shows_then, in_utc
    ):
        later = in_utc.replace(tzinfo=UTC) + (put_back_at - shows_then)

        assert local(later, zone).replace(tzinfo=None) == shows_then
        assert local(later, zone).fold == 1


@given(ZONES, SHOWN)
def test_a_time_is_refused_exactly_when_no_moment_shows_it(zone, shown):
    """The two folds of PEP 495 name the only moments that could show it."""
    moments = [shown.replace(tzinfo=zone, fold=fold).astimezone(UTC) for fold in (0, 1)]
    showing = [moment for moment in moments if moment.astimezone(zone).replace(tzinfo=None) == shown]

    if showing:
        assert at(shown, zone) == min(showing)
    else:
        with pytest.raises(ClassError, match="no_such_time"):
            at(shown, zone)


@given(ZONES, SHOWN, st.integers(1, 1_440))
def test_a_class_lasts_as_many_real_minutes_as_it_says(zone, shown, minutes):
    try:
        hours = ClassHours(shown.date(), shown.time(), minutes, zone)
    except ClassError:
        return

    assert hours.local_end.astimezone(UTC) - hours.begins == timedelta(minutes=minutes)
    assert hours.ends == hours.local_end


class TestHoursOfAClass:
    def test_an_evening_of_150_minutes_from_half_past_six_ends_at_nine(self):
        hours = ClassHours(date(2027, 4, 8), time(18, 30), 150, NEW_YORK)

        assert hours.local_end.time() == time(21, 0)
        assert hours.clock_change == timedelta()

    def test_one_over_the_spring_change_ends_an_hour_later_on_the_wall(self):
        """01:00 CET is 00:00 UTC; 150 minutes later it is 02:30 UTC, which is 04:30 CEST."""
        hours = ClassHours(date(2027, 3, 28), time(1, 0), 150, BERLIN)

        assert hours.ends == datetime(2027, 3, 28, 2, 30, tzinfo=UTC)
        assert hours.local_end.time() == time(4, 30)
        assert hours.clock_change == timedelta(hours=1)

    def test_one_over_the_half_hour_on_lord_howe_ends_half_an_hour_earlier(self):
        """01:00 at +11 and 120 minutes is 03:00 at +11, where clocks then stand at +10:30: 02:30."""
        hours = ClassHours(date(2025, 4, 6), time(1, 0), 120, LORD_HOWE)

        assert hours.local_end.time() == time(2, 30)
        assert hours.clock_change == timedelta(minutes=-30)

    def test_the_wall_clock_is_read_minutes_into_the_class(self):
        hours = ClassHours(date(2027, 4, 8), time(18, 30), 150, NEW_YORK)

        assert hours.clock(30).time() == time(19, 0)

    @pytest.mark.parametrize("minutes", [0, -5])
    def test_no_class_lasts_no_time(self, minutes):
        with pytest.raises(ClassError) as caught:
            ClassHours(date(2027, 4, 8), time(18, 30), minutes, BERLIN)

        assert (caught.value.code, caught.value.values) == ("no_length", {"minutes": minutes})

    def test_none_begins_at_a_time_that_is_skipped(self):
        with pytest.raises(ClassError, match="no_such_time"):
            ClassHours(date(2027, 3, 28), time(2, 30), 60, BERLIN)


@pytest.mark.parametrize("year", [1, 1899, 2200, 9999])
def test_a_year_out_of_reach_is_refused_with_those_in_reach(year):
    with pytest.raises(ClassError) as caught:
        instant(date(year, 1, 1), time(0, 0), APIA)

    assert caught.value.code == "no_such_year"
    assert caught.value.values == {"year": year, "first": 1900, "last": 2199}


def test_a_time_that_brings_a_zone_of_its_own_is_refused():
    with pytest.raises(ClassError, match="has_own_zone"):
        instant(date(2027, 1, 1), time(18, 30, tzinfo=UTC), BERLIN)
