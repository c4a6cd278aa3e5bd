"""Rooms and people that two classes want at once."""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.classes.domain.clashes import Clash, ClashKind, Planned, clashes
from club.classes.domain.local_time import ClassHours

CHICAGO, BERLIN = ZoneInfo("America/Chicago"), ZoneInfo("Europe/Berlin")
SATURDAY = date(2027, 5, 8)


def planned(key: int | None, at: str, minutes: int, *people: int, workshop: int = 1) -> Planned:
    hours = ClassHours(SATURDAY, time.fromisoformat(at), minutes, CHICAGO)
    return Planned(key, workshop, hours, frozenset(people))


MORNING = planned(7, "09:30", 180, 1, 2)


def test_a_class_in_a_free_room_with_free_people_has_no_clash():
    assert clashes(planned(None, "13:15", 180, 1, 2), [MORNING]) == ()


def test_the_room_is_missing_for_the_minutes_both_want_it():
    """09:30 to 12:30, and 12:00 to 13:00: from 12:00 to 12:30."""
    assert clashes(planned(None, "12:00", 60), [MORNING]) == (Clash(ClashKind.ROOM, 7, 30),)


def test_a_class_inside_another_is_in_its_way_for_its_whole_length():
    assert clashes(planned(None, "10:00", 45), [MORNING]) == (Clash(ClashKind.ROOM, 7, 45),)


def test_people_wanted_in_two_workshops_are_named_one_by_one():
    new = planned(None, "12:00", 60, 2, 3, 1, workshop=2)

    assert clashes(new, [MORNING]) == (
        Clash(ClashKind.PERSON, 7, 30, person=1),
        Clash(ClashKind.PERSON, 7, 30, person=2),
    )


def test_a_class_may_begin_the_minute_another_ends():
    assert clashes(planned(None, "12:30", 60, 1), [MORNING]) == ()


def test_a_room_that_is_free_too_short_a_time_lacks_the_rest_of_its_turnaround():
    """The morning ends 25 minutes late at 12:55, the afternoon begins at 13:15: 20 of 30 minutes."""
    morning = planned(7, "09:30", 205)

    found = clashes(planned(8, "13:15", 180), [morning], turnaround=30)

    assert found == (Clash(ClashKind.TURNAROUND, 7, 10),)


def test_a_morning_cut_short_by_twenty_minutes_leaves_the_turnaround():
    """12:35 and 30 minutes is 13:05, before 13:15."""
    assert clashes(planned(8, "13:15", 180), [planned(7, "09:30", 185)], turnaround=30) == ()


def test_turnaround_counts_before_a_class_as_well_as_behind_it():
    found = clashes(planned(None, "08:00", 80), [MORNING], turnaround=30)

    assert found == (Clash(ClashKind.TURNAROUND, 7, 20),)


def test_turnaround_is_the_room_s_and_not_the_people_s():
    assert clashes(planned(None, "12:35", 60, 1, workshop=2), [MORNING], turnaround=30) == ()


def test_a_class_that_is_changed_is_not_in_its_own_way():
    assert clashes(planned(7, "10:30", 180, 1, 2), [MORNING]) == ()


def test_two_that_were_never_saved_are_in_each_other_s_way():
    assert clashes(planned(None, "10:30", 180), [planned(None, "10:30", 180)]) == (
        Clash(ClashKind.ROOM, None, 180),
    )


def test_clashes_come_by_the_other_s_beginning():
    others = [planned(9, "12:00", 60), planned(8, "09:00", 60)]

    assert [clash.other for clash in clashes(MORNING, others)] == [8, 9]


def test_workshops_in_two_zones_are_compared_by_real_time():
    """09:30 in Chicago in May (UTC-5) is 14:30 UTC, which is 16:30 in Berlin (UTC+2)."""
    hours = ClassHours(SATURDAY, time(16, 0), 60, BERLIN)

    found = clashes(Planned(None, 2, hours, frozenset({1})), [MORNING])

    assert found == (Clash(ClashKind.PERSON, 7, 30, person=1),)


def test_in_the_night_clocks_go_back_two_classes_of_the_same_reading_may_both_have_the_room():
    """01:00 CDT and 45 minutes end at 06:45 UTC; 02:00 CST, read after the hour shown twice, is 08:00 UTC."""
    night = date(2027, 11, 7)
    first = Planned(1, 1, ClassHours(night, time(1, 0), 45, CHICAGO))
    longer = Planned(1, 1, ClassHours(night, time(1, 0), 120, CHICAGO))
    second = Planned(2, 1, ClassHours(night, time(2, 0), 45, CHICAGO))

    assert clashes(second, [first], turnaround=75) == ()
    assert clashes(second, [first], turnaround=76) == (Clash(ClashKind.TURNAROUND, 1, 1),)
    assert clashes(second, [longer]) == ()


@pytest.mark.parametrize("seconds", [1, 59])
def test_a_part_of_a_minute_in_common_is_a_clash(seconds):
    late = (datetime(2027, 5, 8, 12, 30, tzinfo=UTC) - timedelta(seconds=seconds)).time()
    new = Planned(None, 1, ClassHours(SATURDAY, late, 60, CHICAGO))

    assert clashes(new, [MORNING]) == (Clash(ClashKind.ROOM, 7, 1),)


STARTS = st.integers(0, 600)
LENGTHS = st.integers(1, 120)


@given(STARTS, LENGTHS, STARTS, LENGTHS)
def test_the_minutes_in_common_are_those_that_lie_in_both(begin, length, other_begin, other_length):
    """The oracle counts minute by minute."""
    new, other = (
        planned(key, f"{start // 60:02}:{start % 60:02}", minutes, 5)
        for key, start, minutes in ((1, begin, length), (2, other_begin, other_length))
    )
    common = len({*range(begin, begin + length)} & {*range(other_begin, other_begin + other_length)})

    found = clashes(new, [other])

    wanted = (Clash(ClashKind.ROOM, 2, common), Clash(ClashKind.PERSON, 2, common, person=5))
    assert found == (wanted if common else ())
