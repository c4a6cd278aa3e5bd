from __future__ import annotations

from datetime import date, time, timedelta

import pytest

from club.home.invention.days import DAY, HOLIDAYS, Evening, Wanted, evenings_in, held_on
from club.home.invention.lists import lines_of

TUESDAY = (Evening(1, time(18, 30)),)
# Leap year 2028 among them, and Christmas on each of four weekdays.
DAYS_OF_YEARS = [date(2025, 1, 1) + each * DAY for each in range(4 * 365 + 1)]
CLASSES = [line.cells for line in lines_of("classes.csv")]
WANTED = [Wanted(int(cells["days"]), evenings_in(cells["on"])) for cells in CLASSES]


def test_evenings_are_read_in_the_order_they_are_written():
    assert evenings_in("Tue 18:30, Sat 10:00") == (Evening(1, time(18, 30)), Evening(5, time(10)))


@pytest.mark.parametrize(
    ("days", "found"),
    [
        (9, date(2026, 6, 16)),
        # Today is a Tuesday, and so is a week from today.
        (7, date(2026, 6, 9)),
        (-4, date(2026, 5, 26)),
        (-7, date(2026, 5, 26)),
    ],
)
def test_a_class_is_held_on_the_nearest_of_its_evenings_that_is_no_nearer(days, found):
    assert list(held_on([Wanted(days, TUESDAY)], date(2026, 6, 2))) == [(found, time(18, 30))]


def test_nobody_holds_a_class_at_christmas():
    tuesdays = held_on([Wanted(2, TUESDAY), Wanted(3, TUESDAY)], date(2030, 12, 22))

    # Christmas Eve and New Year's Eve of 2030 are the Tuesdays left out.
    assert [day for day, _at in tuesdays] == [date(2031, 1, 7), date(2031, 1, 14)]


@pytest.mark.parametrize("weekday", range(7))
def test_the_next_class_is_nine_to_eleven_days_off_on_any_weekday(weekday):
    today = date(2026, 6, 1) + weekday * DAY

    day, _at = next(held_on(WANTED, today))

    assert timedelta(9) <= day - today <= timedelta(11)


def test_no_two_classes_of_the_club_share_a_day_whenever_it_is_made():
    crowded = [
        today for today in DAYS_OF_YEARS if len({day for day, _at in held_on(WANTED, today)}) < len(WANTED)
    ]

    assert crowded == []


def test_classes_stand_in_their_order_and_on_no_holiday_whenever_the_club_is_made():
    for today in DAYS_OF_YEARS:
        days = [day for day, _at in held_on(WANTED, today)]
        ahead = [day for day, wanted in zip(days, WANTED, strict=True) if wanted.days > 0]
        over = [day for day, wanted in zip(days, WANTED, strict=True) if wanted.days < 0]

        assert ahead == sorted(ahead)
        assert over == sorted(over, reverse=True)
        assert over[0] < today < ahead[0]
        assert not {(day.month, day.day) for day in days} & HOLIDAYS
