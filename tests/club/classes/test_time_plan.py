"""Whether a class fits its minutes, and when each part of it begins."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.classes.domain.local_time import ClassHours
from club.classes.domain.time_plan import checkpoints, most_sittings, time_plan
from projects.library.domain.recipe import ClassTime
from tests.projects.library.examples import KNOB, with_step

EVENING = KNOB.time
BOWLS = ClassTime(briefing=10, demonstration=25, hands_on=50 + 10 + 55 + 20, change_over=0, clean_up=10)
MINUTES = st.integers(0, 600)
TIMES = st.builds(ClassTime, MINUTES, MINUTES, MINUTES, MINUTES, MINUTES)


def test_two_sittings_of_knobs_take_145_of_150_minutes():
    """10 + 20 + 2 x (45 + 5) + 15 = 145."""
    plan = time_plan(EVENING, 2, 150)

    assert (plan.needed, plan.left, plan.over) == (145, 5, 0)


def test_a_third_sitting_is_45_minutes_too_long():
    """10 + 20 + 3 x (45 + 5) + 15 = 195."""
    plan = time_plan(EVENING, 3, 150)

    assert (plan.needed, plan.left, plan.over) == (195, 0, 45)


def test_a_morning_of_bowls_takes_its_three_hours_to_the_minute():
    """10 + 25 + (50 + 10 + 55 + 20) + 10 = 180."""
    plan = time_plan(BOWLS, 1, 180)

    assert (plan.needed, plan.left, plan.over) == (180, 0, 0)


def test_parts_follow_each_other_without_a_gap():
    """0 briefing, 10 demonstration, 30 first, 75 change, 80 second, 125 change, 130 clean-up."""
    plan = time_plan(EVENING, 2, 150)

    assert [(part.kind.value, part.begins, part.sitting) for part in plan.parts] == [
        ("briefing", 0, None),
        ("demonstration", 10, None),
        ("hands_on", 30, 1),
        ("change_over", 75, 1),
        ("hands_on", 80, 2),
        ("change_over", 125, 2),
        ("clean_up", 130, None),
    ]
    assert plan.parts[-1].ends == 145


def test_the_wall_clock_shows_when_the_second_sitting_begins():
    """18:30 and 80 minutes."""
    hours = ClassHours(date(2027, 4, 8), time(18, 30), 150, ZoneInfo("America/New_York"))

    assert hours.clock(time_plan(EVENING, 2, 150).sitting_begins(2)).time() == time(19, 50)


@pytest.mark.parametrize(("available", "most"), [(94, 0), (95, 1), (144, 1), (145, 2), (194, 2), (195, 3)])
def test_as_many_sittings_fit_as_have_their_minutes(available, most):
    """Each takes 50; 45 go to briefing, demonstration and clean-up."""
    assert most_sittings(EVENING, available) == most


@pytest.mark.parametrize(("available", "most"), [(44, 0), (45, None)])
def test_sittings_that_take_no_time_have_no_most(available, most):
    assert most_sittings(replace(EVENING, hands_on=0, change_over=0), available) == most


@given(TIMES, st.integers(1, 1_440))
def test_the_most_sittings_fit_and_one_more_does_not(times, available):
    most = most_sittings(times, available)

    if most is not None:
        assert time_plan(times, most + 1, available).over > 0
        assert most == 0 or time_plan(times, most, available).over == 0


def test_a_checkpoint_is_due_when_the_steps_up_to_it_are_done():
    """Mounting 3, tighten 4, rough 8, bead 12: 27 minutes after hands come on at 30, and again at 80."""
    knob = with_step(KNOB, "bead", checkpoint="The bead is round.")

    found = checkpoints(time_plan(knob.time, 2, 150), knob.mountings, 2)

    assert [(each.step, each.text, each.sitting, each.due) for each in found] == [
        ("bead", "The bead is round.", 1, 57),
        ("bead", "The bead is round.", 2, 107),
    ]


def test_a_project_without_checkpoints_has_none():
    assert checkpoints(time_plan(EVENING, 2, 150), KNOB.mountings, 2) == ()
