"""What has to be begun when, counted back from the class."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.classes.domain.errors import ClassError
from club.classes.domain.local_time import instant, local
from club.classes.domain.opening_hours import latest_work
from club.classes.domain.preparation import Job, jobs_of, preparation
from club.lathes.domain.opening_hours import Opening, OpeningError
from tests.projects.library.examples import KNOB

NEW_YORK = ZoneInfo("America/New_York")
# 8 April 2027 is a Thursday.
CLASS = instant(date(2027, 4, 8), time(18, 30), NEW_YORK)
# Tuesday and Wednesday evening, Saturday morning.
OPEN = [
    Opening(1, time(18), time(21)),
    Opening(2, time(17), time(20)),
    Opening(5, time(9), time(12)),
]


def shown(moment: datetime) -> str:
    return f"{local(moment, NEW_YORK):%a %H:%M}"


def starts(jobs, openings=()) -> dict[str, str]:
    plan = preparation(jobs, CLASS, NEW_YORK, openings)
    return {each.job.key: shown(each.start_by) for each in plan.jobs}


class TestKnobsForThursday:
    """Fifteen pieces: cut 15 x 2, drill 15 x 3, glue 15 x 3 minutes and 24 hours of cure."""

    def test_take_their_minutes_piece_by_piece(self):
        assert [(job.key, job.minutes, job.wait) for job in jobs_of(KNOB, 15)] == [
            ("cut", 30, 0),
            ("drill", 45, 0),
            ("glue-dowel", 45, 1_440),
        ]

    def test_have_to_be_glued_by_wednesday_half_past_six(self):
        """24 hours before Thursday 18:30; 45 minutes of gluing begin at 17:45."""
        glued = preparation(jobs_of(KNOB, 15), CLASS, NEW_YORK).jobs[-1]

        assert (shown(glued.done_by), shown(glued.start_by)) == ("Wed 18:30", "Wed 17:45")
        assert glued.ready_by == CLASS

    def test_are_cut_and_drilled_before_that(self):
        """17:45 less 45 is 17:00, less 30 is 16:30."""
        assert starts(jobs_of(KNOB, 15)) == {
            "cut": "Wed 16:30",
            "drill": "Wed 17:00",
            "glue-dowel": "Wed 17:45",
        }

    def test_wait_for_open_doors(self):
        """Glue Wednesday 17:45 to 18:30; drill 17:00 to 17:45; cut in the last half hour of Tuesday."""
        assert starts(jobs_of(KNOB, 15), OPEN) == {
            "cut": "Tue 20:30",
            "drill": "Wed 17:00",
            "glue-dowel": "Wed 17:45",
        }

    def test_have_one_chain_from_cutting_to_the_class(self):
        chain = preparation(jobs_of(KNOB, 15), CLASS, NEW_YORK).longest_chain

        assert [(each.job.key, each.then) for each in chain] == [
            ("cut", "drill"),
            ("drill", "glue-dowel"),
            ("glue-dowel", None),
        ]

    def test_take_no_time_where_there_are_none(self):
        assert starts(jobs_of(KNOB, 0)) == dict.fromkeys(["cut", "drill", "glue-dowel"], "Wed 18:30")

    def test_keep_their_order_where_they_take_no_time(self):
        chain = preparation(jobs_of(KNOB, 0), CLASS, NEW_YORK).longest_chain

        assert [each.job.key for each in chain] == ["cut", "drill", "glue-dowel"]

    def test_that_stay_in_clamps_longer_than_they_cure_wait_for_the_clamps(self):
        glue_up = replace(KNOB.glue_ups[0], clamp_minutes=1_500)

        assert jobs_of(replace(KNOB, glue_ups=(glue_up,)), 1)[-1].wait == 1_500

    def test_are_never_less_than_none(self):
        with pytest.raises(ClassError, match="less_than_none"):
            jobs_of(KNOB, -1)


class TestBeingLate:
    def test_is_told_in_days_of_the_calendar(self):
        """Cutting was due on Wednesday 16:30, drilling at 17:00; on Friday at noon both are two days late."""
        plan = preparation(jobs_of(KNOB, 15), CLASS, NEW_YORK)
        friday = instant(date(2027, 4, 9), time(12), NEW_YORK)

        late = plan.late(friday, done={"glue-dowel"})

        assert [(each.job.key, each.days) for each in late] == [("cut", 2), ("drill", 2)]

    def test_by_an_hour_is_no_day(self):
        plan = preparation(jobs_of(KNOB, 15), CLASS, NEW_YORK)

        late = plan.late(instant(date(2027, 4, 7), time(16, 31), NEW_YORK))

        assert [(each.job.key, each.days) for each in late] == [("cut", 0)]

    def test_begins_after_the_very_time(self):
        plan = preparation(jobs_of(KNOB, 15), CLASS, NEW_YORK)

        assert plan.late(plan.jobs[0].start_by) == ()

    def test_over_midnight_counts_the_workshop_s_days(self):
        """Wednesday 23:59 in New York is already Thursday in UTC, and still the same day there."""
        plan = preparation([Job("cut", "Cut", 0)], CLASS - timedelta(hours=20), NEW_YORK)

        late = plan.late(instant(date(2027, 4, 7), time(23, 59), NEW_YORK))

        assert [each.days for each in late] == [0]


class TestCountingBack:
    def test_the_earliest_of_those_that_need_a_job_decides(self):
        """Finish needs 60 and a day, polish 10: wood has to be there for finish, Wednesday 17:30."""
        jobs = [
            Job("wood", "Order", 5, wait=2_880),
            Job("finish", "Finish", 60, wait=1_440, after=("wood",)),
            Job("polish", "Polish", 10, after=("wood",)),
        ]

        plan = preparation(jobs, CLASS, NEW_YORK)

        wood = plan.jobs[0]
        assert (wood.job.key, wood.then, shown(wood.ready_by)) == ("wood", "finish", "Wed 17:30")
        assert shown(wood.start_by) == "Mon 17:25"
        assert [each.job.key for each in plan.longest_chain] == ["wood", "finish"]

    def test_waits_are_real_hours_when_clocks_go_forward(self):
        """Sunday 14 March 2027 has 23 hours: 24 before 18:30 is 17:30 on Saturday."""
        begins = instant(date(2027, 3, 14), time(18, 30), NEW_YORK)

        plan = preparation([Job("glue", "Glue", 0, wait=1_440)], begins, NEW_YORK)

        assert shown(plan.jobs[0].done_by) == "Sat 17:30"

    def test_openings_that_overlap_are_refused(self):
        twice = [Opening(1, time(9), time(12)), Opening(1, time(11), time(13))]

        with pytest.raises(OpeningError, match="overlap"):
            preparation([], CLASS, NEW_YORK, twice)

    def test_nothing_to_do_has_no_dates_and_no_chain(self):
        plan = preparation([], CLASS, NEW_YORK)

        assert (plan.jobs, plan.longest_chain, plan.late(CLASS)) == ((), (), ())

    def test_jobs_that_wait_for_each_other_are_refused(self):
        with pytest.raises(ClassError) as caught:
            preparation([Job("a", "A", 1, after=("b",)), Job("b", "B", 1, after=("a",))], CLASS, NEW_YORK)

        assert (caught.value.code, caught.value.values) == ("tasks_in_a_circle", {"keys": ("a", "b")})

    def test_a_job_that_waits_for_an_unknown_one_is_refused(self):
        with pytest.raises(ClassError) as caught:
            preparation([Job("a", "A", 1, after=("b",))], CLASS, NEW_YORK)

        assert (caught.value.code, caught.value.values) == ("unknown_task", {"key": "b", "wanted_by": "a"})

    def test_more_work_than_ten_years_hold_is_refused_with_its_name(self):
        """One minute a week is some 521 in ten years."""
        with pytest.raises(ClassError) as caught:
            preparation([Job("a", "A", 600)], CLASS, NEW_YORK, [Opening(0, time(9), time(9, 1))])

        assert (caught.value.code, caught.value.values) == ("too_long_beforehand", {"key": "a"})


class TestOpeningHours:
    def test_work_goes_on_over_several_openings(self):
        """Four hours by Thursday noon: three on Wednesday, the last one of Tuesday."""
        start, end = latest_work(CLASS - timedelta(hours=6), 240, OPEN, NEW_YORK)

        assert (shown(start), shown(end)) == ("Tue 20:00", "Wed 20:00")

    def test_an_opening_to_midnight_ends_there(self):
        start, end = latest_work(CLASS, 30, [Opening(0, time(22), time(0))], NEW_YORK)

        assert (shown(start), shown(end)) == ("Mon 23:30", "Tue 00:00")

    def test_one_that_runs_past_midnight_is_cut_where_the_work_has_to_be_done(self):
        by = instant(date(2027, 4, 8), time(1), NEW_YORK)

        start, end = latest_work(by, 90, [Opening(2, time(22), time(2))], NEW_YORK)

        assert (shown(start), shown(end)) == ("Wed 23:30", "Thu 01:00")

    def test_that_touch_are_one(self):
        openings = [Opening(1, time(9), time(12)), Opening(1, time(12), time(13))]

        start, _end = latest_work(CLASS, 90, openings, NEW_YORK)
        assert shown(start) == "Tue 11:30"

    @given(st.integers(1, 600), st.integers(0, 20_000))
    def test_give_exactly_the_minutes_of_the_work_between_start_and_end(self, minutes, earlier):
        """The oracle walks minute by minute and asks whether doors are open."""
        done_by = CLASS - timedelta(minutes=earlier)

        start, end = latest_work(done_by, minutes, OPEN, NEW_YORK)

        walked = int((done_by - start).total_seconds()) // 60
        open_minutes = [number for number in range(walked) if is_open(start + timedelta(minutes=number))]
        assert len(open_minutes) == minutes
        assert open_minutes[0] == 0
        assert start + timedelta(minutes=open_minutes[-1] + 1) == end


def is_open(moment: datetime) -> bool:
    there = local(moment, NEW_YORK)
    return any(each.weekday == there.weekday() and each.begins <= there.time() < each.ends for each in OPEN)


@given(st.data())
def test_every_job_is_ready_before_what_needs_it_is_begun(data):
    keys = "abcdefg"
    jobs = []
    for place, key in enumerate(keys):
        after = data.draw(st.sets(st.sampled_from(keys[:place])) if place else st.just(set()))
        minutes, wait = data.draw(st.integers(0, 400)), data.draw(st.integers(0, 3_000))
        jobs.append(Job(key, key, minutes, wait, after=tuple(sorted(after))))
    openings = data.draw(st.sampled_from([(), OPEN]))

    plan = preparation(jobs, CLASS, NEW_YORK, openings)

    by_key = {each.job.key: each for each in plan.jobs}
    for each in plan.jobs:
        assert each.start_by <= each.done_by <= each.ready_by - timedelta(minutes=each.job.wait)
        assert each.ready_by <= CLASS.astimezone(UTC)
        assert all(by_key[key].ready_by <= each.start_by for key in each.job.after)
    assert plan.longest_chain[0].start_by == min(each.start_by for each in plan.jobs)
    assert plan.longest_chain[-1].then is None
