"""Dates counted back by hand; 24 h of cure before turning is common practice, no source."""

from __future__ import annotations

from datetime import datetime, timedelta
from graphlib import CycleError

import pytest
from hypothesis import given
from hypothesis import strategies as st

from projects.kit.counting import Heads, kits_for
from projects.kit.preparation import Job, Opening, dated, jobs_of, longest_chain
from tests.projects.library.examples import KNOB

# Thursday.
CLASS = datetime(2026, 3, 12, 18, 30)


def at(day: int, hour: int, minute: int = 0) -> datetime:
    return datetime(2026, 3, day, hour, minute)


EVERY_DAY = [Opening(at(day, 9), at(day, 21)) for day in range(2, 13)]


def job(key: str, minutes: int, *after: str, wait_hours: int = 0) -> Job:
    return Job(key, timedelta(minutes=minutes), timedelta(hours=wait_hours), after)


def test_knobs_are_glued_by_the_evening_before_and_cut_before_that():
    """15 kits: glue 45 minutes to be done by Wednesday 18:30, drill 45 before, cut 30 before that."""
    jobs = jobs_of(KNOB, kits_for(Heads(12), KNOB.spares))

    found = dated(jobs, CLASS, EVERY_DAY)

    assert [(each.job.key, each.start_by, each.finish_by) for each in found] == [
        ("cut", at(11, 16, 30), at(11, 17)),
        ("drill", at(11, 17), at(11, 17, 45)),
        ("glue-dowel", at(11, 17, 45), at(11, 18, 30)),
    ]
    assert longest_chain(found) == ("cut", "drill", "glue-dowel")


def test_work_goes_back_over_a_closed_night_and_a_closed_day():
    """120 minutes by Thursday 9:30: half an hour on Thursday, 90 minutes up to Tuesday 21:00."""
    openings = [opening for opening in EVERY_DAY if opening.start.day != 11]

    (found,) = dated([job("sand", 120)], at(12, 9, 30), openings)

    assert (found.start_by, found.finish_by) == (at(10, 19, 30), at(12, 9, 30))


def test_a_wait_that_ends_at_night_has_to_begin_before_closing():
    """10 h before 8:00 is 22:00, and the workshop shuts at 21:00."""
    (found,) = dated([job("glue", 60, wait_hours=10)], at(12, 8), EVERY_DAY)

    assert (found.start_by, found.finish_by) == (at(11, 20), at(11, 21))


def test_the_chain_that_begins_first_is_the_longest():
    jobs = [job("order", 10, wait_hours=72), job("cut", 30, "order"), job("sharpen", 60)]

    found = dated(jobs, CLASS, EVERY_DAY)

    assert longest_chain(found) == ("order", "cut")
    assert found[-1].job.key == "cut"


def test_what_should_have_begun_says_how_long_ago():
    (found,) = dated([job("glue", 45, wait_hours=24)], CLASS, EVERY_DAY)

    assert found.late(at(13, 17, 45)) == timedelta(days=2)
    assert found.late(at(11, 17, 45)) == timedelta(0)


def test_before_the_first_opening_known_there_is_no_time_also_for_what_comes_before():
    jobs = [job("fell", 5), job("dry", 5, "fell", wait_hours=5_000), job("cut", 5)]

    found = dated(jobs, CLASS, EVERY_DAY)

    assert [(each.job.key, each.start_by) for each in found] == [
        ("dry", None),
        ("fell", None),
        ("cut", at(12, 18, 25)),
    ]
    assert longest_chain(found) == ("dry",)


def test_jobs_that_wait_for_each_other_in_a_ring_are_an_error():
    with pytest.raises(CycleError):
        dated([job("a", 5, "b"), job("b", 5, "a")], CLASS, EVERY_DAY)


def test_nothing_to_do_has_no_chain():
    assert longest_chain(dated([], CLASS, EVERY_DAY)) == ()


JOBS = st.lists(
    st.tuples(st.integers(0, 400), st.integers(0, 40), st.lists(st.integers(0, 5), max_size=3)), max_size=6
)


@given(JOBS)
def test_every_job_is_done_and_rested_before_what_waits_for_it(drawn):
    jobs = [
        job(str(number), minutes, *{str(each) for each in after if each < number}, wait_hours=wait)
        for number, (minutes, wait, after) in enumerate(drawn)
    ]

    found = {each.job.key: each for each in dated(jobs, CLASS, EVERY_DAY)}

    assert set(found) == {each.key for each in jobs}
    for each in found.values():
        if each.start_by is None:
            continue
        assert each.finish_by is not None
        assert each.start_by + each.job.hands_on <= each.finish_by
        assert each.finish_by + each.job.wait <= CLASS
        ready = [
            earlier.finish_by + earlier.job.wait
            for earlier in map(found.get, each.job.after)
            if earlier and earlier.finish_by
        ]
        assert all(moment <= each.start_by for moment in ready)
