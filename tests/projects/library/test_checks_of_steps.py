"""What is checked of every step: tool, operation, lathe running or not, tailstock."""

from __future__ import annotations

from dataclasses import replace

import pytest

from projects.library.domain.findings import Weight
from projects.library.domain.holding import BetweenCentres, Tailstock
from projects.library.domain.mountings import DrillHole
from projects.library.domain.words import Centre, Drive, Operation, Spindle, Stage, Tool
from tests.projects.library.examples import BOWL, KNOB, MOUNT, PART, inches, with_mounting, with_step
from tests.projects.library.looking import codes, findings, only


class TestTheSpindleRoughingGouge:
    def test_is_refused_on_face_work(self):
        finding = only(with_step(BOWL, "shape", tool=Tool.SPINDLE_ROUGHING_GOUGE))

        assert (finding.code, finding.weight) == ("roughing_gouge_on_face_work", Weight.REFUSED)
        assert finding.path == "mountings[0].steps[1].tool"
        assert dict(finding.values) == {"mounting": 1, "step": 2}

    def test_is_let_in_where_the_grain_runs_along_the_axis(self):
        assert KNOB.mountings[0].steps[1].tool is Tool.SPINDLE_ROUGHING_GOUGE
        assert findings(KNOB) == ()


class TestTheLatheRunningOrNot:
    @pytest.mark.parametrize("spindle", [Spindle.RUNNING, Spindle.REVERSE])
    def test_finish_is_never_put_on_while_it_runs(self, spindle):
        found = findings(with_step(KNOB, "oil", spindle=spindle, stage=Stage.POLISH))

        assert [(finding.code, finding.weight, finding.path) for finding in found] == [
            ("finishing_while_running", Weight.REFUSED, "mountings[0].steps[4].spindle")
        ]

    @pytest.mark.parametrize("operation", [Operation.MOUNTING, Operation.CHECKING, Operation.TRIMMING])
    def test_what_is_measured_or_mounted_stands_still(self, operation):
        step = with_step(KNOB, "mount", operation=operation, spindle=Spindle.RUNNING, stage=Stage.START)

        assert "should_stand_still" in codes(step)

    def test_a_pencil_line_may_be_drawn_on_running_work(self):
        running = with_step(
            KNOB, "mount", operation=Operation.MARKING, spindle=Spindle.RUNNING, stage=Stage.START
        )

        assert codes(running) == []

    def test_a_cut_on_work_that_stands_is_minded(self):
        assert codes(with_step(KNOB, "rough", spindle=Spindle.STOPPED, stage=None)) == ["should_run"]

    def test_sanding_by_hand_along_the_grain_is_let_in(self):
        assert codes(with_step(KNOB, "sand", spindle=Spindle.STOPPED, stage=None)) == []


class TestTheStage:
    def test_of_a_running_step_is_needed_for_its_speed(self):
        finding = only(with_step(KNOB, "bead", stage=None))

        assert (finding.code, finding.weight) == ("no_stage", Weight.REFUSED)

    def test_of_another_operation_is_refused(self):
        finding = only(with_step(KNOB, "rough", stage=Stage.SAND))

        assert (finding.code, finding.weight) == ("stage_unlike_operation", Weight.REFUSED)
        assert (finding.values["stage"], finding.values["operation"]) == (Stage.SAND, Operation.ROUGHING)

    def test_of_a_step_with_the_lathe_stopped_is_minded(self):
        assert codes(with_step(KNOB, "mount", stage=Stage.START)) == ["stage_while_stopped"]


class TestTheToolRest:
    def test_is_out_of_the_way_for_sanding(self):
        finding = only(with_step(KNOB, "sand", rest_gap=inches("1/8")))

        assert (finding.code, finding.weight) == ("rest_in_the_way", Weight.REFUSED)

    def test_is_in_nobodys_way_on_work_that_stands(self):
        by_hand = with_step(KNOB, "sand", spindle=Spindle.STOPPED, stage=None, rest_gap=inches("1"))

        assert codes(by_hand) == []

    def test_has_a_gap_for_every_cut(self):
        assert codes(with_step(KNOB, "bead", rest_gap=None)) == ["no_rest_gap"]


@pytest.mark.parametrize("tool", [None, Tool.PENCIL, Tool.SANDPAPER])
def test_a_cut_without_a_cutting_tool_is_minded(tool):
    assert codes(with_step(KNOB, "bead", tool=tool)) == ["no_cutting_tool"]


def test_drilling_says_how_wide_and_deep():
    drilling = {"operation": Operation.DRILLING, "stage": Stage.DRILL, "tool": Tool.DRILL}

    assert codes(with_step(KNOB, "part", **drilling)) == ["no_hole"]
    hole = DrillHole(inches("1/4"), inches("1"))
    assert codes(with_step(KNOB, "part", **drilling, hole=hole)) == []


class TestTheTailstock:
    def test_that_goes_away_before_it_has_to_is_minded_with_the_step_that_needs_it(self):
        tailstock = Tailstock(Centre.LIVE_CONE, away_from="bead")

        finding = only(with_mounting(KNOB, 0, tailstock=tailstock))

        assert (finding.code, finding.weight) == ("tailstock_away_early", Weight.MIND)
        assert dict(finding.values) == {"mounting": 1, "step": 3, "needed_from": 6}

    def test_that_is_never_up_is_minded_from_the_first_step_that_runs(self):
        finding = only(with_mounting(KNOB, 0, tailstock=None))

        assert dict(finding.values) == {"mounting": 1, "step": 2, "needed_from": 6}

    def test_that_is_away_though_no_step_needs_it_is_minded(self):
        finding = only(with_mounting(BOWL, 0, tailstock=None))

        assert dict(finding.values) == {"mounting": 1, "step": 1, "needed_from": None}

    def test_may_be_away_from_the_first_cut_that_it_would_be_in_the_way_of(self):
        inside = BOWL.mountings[1]

        assert inside.tailstock is None
        assert inside.steps[0].operation is Operation.HOLLOWING
        assert findings(BOWL) == ()

    @pytest.mark.parametrize("tailstock", [None, Tailstock(Centre.LIVE_POINT, away_from="part")])
    def test_that_leaves_work_between_centres_with_one_centre_is_refused(self, tailstock):
        """Common practice: between two centres one of them alone holds nothing."""
        finding = only(with_mounting(KNOB, 0, holding=BetweenCentres(Drive.RING), tailstock=tailstock))

        assert (finding.code, finding.weight) == ("between_one_centre", Weight.REFUSED)
        assert finding.path == "mountings[0].tailstock"

    def test_that_is_up_to_the_end_is_what_work_between_centres_needs(self):
        tailstock = Tailstock(Centre.LIVE_POINT)

        assert findings(with_mounting(KNOB, 0, holding=BetweenCentres(Drive.RING), tailstock=tailstock)) == ()

    def test_does_nothing_for_steps_with_the_lathe_stopped(self):
        steps = (MOUNT, replace(PART, minutes=38))

        assert codes(with_mounting(KNOB, 0, steps=steps, tailstock=None, minutes=3)) == ["not_to_be_left_out"]
