"""Speeds a step is not to be run above; the limits for classes are settings, common practice."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from club.base.quantities.length import NM_PER_INCH, Length
from club.base.quantities.speed import show_rim_speed
from projects.library.domain.blank import Blank, RoundBlank, SlabBlank, SquareBlank
from projects.library.domain.mountings import DrillHole, Step
from projects.library.domain.recipe import Recipe
from projects.library.domain.sourced import Confidence
from projects.library.domain.speeds import USUAL_LIMITS, StepLimit, TermKind, Work, step_limits
from projects.library.domain.words import Operation, Spindle, Stage, Tool
from tests.projects.library.demonstration import RECIPES
from tests.projects.library.examples import BEAD, KNOB, MOUNT, OIL, ROUGH, SAND, inches, with_mounting
from tests.projects.library.strategies import recipes
from tests.reference.tables import rows

TABLES = rows("03_spindle_speeds.csv")
# The row of the reference for each class limit, by how it begins.
CLASS_ROWS = {
    Work.ROUGH_SPINDLE: "rough spindle",
    Work.ROUGH_FACE: "rough face work",
    Work.SHAPE: "shape, round",
    Work.SHAPE_SIGNED_OFF: "shape, signed-off",
    Work.SAND: "sand and burnish",
    Work.DRILL: "drill with saw-tooth bits",
}
DRILL = Step(
    *("drill", "Drill.", Operation.DRILLING, Spindle.RUNNING, 3, Tool.DRILL, Stage.DRILL),
    hole=DrillHole(inches("1/2"), inches("1")),
)
BURN = replace(BEAD, key="burn", operation=Operation.FRICTION_BURNING, stage=Stage.BURN)
POLISH = replace(SAND, key="polish", operation=Operation.POLISHING, stage=Stage.POLISH)
START = replace(ROUGH, key="start", stage=Stage.START)
# The piece is small, so that the blank decides.
SMALL = with_mounting(KNOB, 0, tailstock=None)


def square(side: str, *steps: Step) -> Recipe:
    blank = SquareBlank("maple_sugar", inches(side), inches("6"))
    return with_mounting(replace(SMALL, blank=blank), 0, steps=steps)


def disc(diameter: str, *steps: Step) -> Recipe:
    blank = SlabBlank("cherry_black", inches(diameter), inches("3"))
    return with_mounting(replace(SMALL, blank=blank), 0, steps=steps)


def limit(recipe: Recipe, key: str, *, signed_off: bool = False) -> StepLimit:
    found = step_limits(recipe, signed_off=signed_off)
    (limit,) = [limit for step, limit in zip(recipe.steps(), found, strict=True) if step.key == key and limit]
    return limit


def rpm(recipe: Recipe, key: str, *, signed_off: bool = False) -> int:
    found = limit(recipe, key, signed_off=signed_off).rpm
    assert found is not None
    return found


@pytest.mark.parametrize("work", Work)
def test_the_class_limits_are_those_of_the_reference(work):
    (row,) = [
        row for row in TABLES if row["kind"] == "class limits" and row["what"].startswith(CLASS_ROWS[work])
    ]
    kept = USUAL_LIMITS.classes[work]

    assert (str(kept.inch_rpm), str(kept.ceiling)) == (row["dia_in_x_rpm"], row["rpm_ceiling"])
    assert kept.confidence is Confidence.COMMON_PRACTICE


def test_a_square_of_an_inch_and_a_half_is_not_too_fast_at_1550():
    """Common practice: a turner roughs a square of 1 1/2 in at 1 550 rpm."""
    assert rpm(square("1 1/2", ROUGH), "rough") == 1_600


def test_a_square_is_roughed_by_its_diagonal():
    """3 in square is 4.2426 in across corners: 3 500 / 4.2426 is 824.96."""
    found = limit(square("3", ROUGH), "rough")

    assert found.rpm == 820
    assert not found.is_round
    assert abs(found.swings.nm - Fraction("4.242640687") * NM_PER_INCH) < 100


def test_once_roughed_it_is_shaped_by_its_round_diameter():
    """6 000 / 3 is 2 000."""
    found = limit(square("3", ROUGH, BEAD), "bead")

    assert (found.rpm, found.is_round, found.swings) == (2_000, True, inches("3"))
    assert found.swings.typed == "3 in"


def test_until_something_is_roughed_nothing_counts_as_round():
    assert rpm(square("3", BEAD, ROUGH), "bead") == rpm(square("3", ROUGH), "rough")


def test_what_is_written_as_roughing_with_the_lathe_stopped_makes_nothing_round():
    still = replace(ROUGH, spindle=Spindle.STOPPED)

    assert not limit(square("3", still, BEAD), "bead").is_round


def test_a_second_roughing_step_is_roughing_again():
    again = replace(ROUGH, key="again")

    assert rpm(square("3", ROUGH, BEAD, again), "again") == 820


@pytest.mark.parametrize(
    ("diameter", "rough", "shape", "sand"),
    [("4", 600, 1_500, 750), ("8", 370, 750, 370), ("12", 250, 500, 250)],
)
def test_a_disc_is_limited_by_its_diameter(diameter, rough, shape, sand):
    """3 000, 6 000 and 3 000 over the diameter; roughing face work never above 600."""
    work = disc(diameter, ROUGH, BEAD, SAND)

    assert [rpm(work, key) for key in ("rough", "bead", "sand")] == [rough, shape, sand]


def test_a_rod_that_nobody_roughs_counts_as_round_and_a_rough_branch_doesnt():
    rod = replace(SMALL, blank=RoundBlank("maple_sugar", inches("2"), inches("6")))

    assert limit(with_mounting(rod, 0, steps=(BEAD,)), "bead").is_round
    assert not limit(with_mounting(rod, 0, steps=(BEAD, ROUGH)), "bead").is_round


def test_drilling_goes_by_the_bit_as_long_as_the_work_itself_allows_it():
    """600 / (1/2) is 1 200, the ceiling; 8 in across allows 6 000 / 8."""
    assert rpm(square("2", ROUGH, DRILL), "drill") == 1_200
    assert rpm(disc("8", ROUGH, DRILL), "drill") == 750
    assert limit(disc("8", ROUGH, DRILL), "drill").deciding.kind is TermKind.RIM


def test_a_wide_bit_turns_slowly():
    wide = replace(DRILL, hole=DrillHole(inches("2"), inches("1")))

    assert rpm(square("3", ROUGH, wide), "drill") == 300


def test_drilling_work_that_is_not_round_yet_keeps_to_the_roughing_limit():
    assert rpm(disc("4", DRILL), "drill") == 600


def test_a_drill_whose_hole_nobody_wrote_down_goes_by_the_work():
    assert rpm(square("3", ROUGH, replace(DRILL, hole=None)), "drill") == 200


def test_burning_takes_the_roughing_limit_and_polishing_that_of_sanding():
    work = square("3", ROUGH, BURN, SAND, POLISH)

    assert rpm(work, "burn") == 1_160
    assert limit(work, "burn").deciding.work is Work.ROUGH_SPINDLE
    assert rpm(work, "polish") == rpm(work, "sand") == 1_000


def test_people_who_are_signed_off_may_shape_round_work_faster_and_nothing_else():
    work = square("4", ROUGH, BEAD, SAND)

    assert [rpm(work, key, signed_off=True) for key in ("rough", "bead", "sand")] == [610, 2_250, 750]
    assert [rpm(work, key) for key in ("rough", "bead", "sand")] == [610, 1_500, 750]
    assert limit(work, "rough", signed_off=True).terms[-1].inch_rpm == 6_000


def test_the_first_start_is_at_the_lowest_setting_whatever_that_is():
    found = limit(square("3", START, BEAD), "start")

    assert (found.rpm, found.terms, found.deciding, found.rim_speed) == (None, (), None, None)
    assert limit(square("3", START, BEAD), "bead").is_round


def test_a_running_step_without_a_stage_is_run_at_the_lowest_setting():
    marking = Step("mark", "Mark.", Operation.MARKING, Spindle.RUNNING, 2, Tool.PENCIL)

    assert limit(square("3", ROUGH, marking), "mark").rpm is None


def test_steps_with_the_lathe_stopped_have_no_limit_and_the_others_stand_in_their_place():
    found = step_limits(square("3", MOUNT, ROUGH, OIL, BEAD))

    assert [limit and limit.stage for limit in found] == [None, Stage.ROUGH, None, Stage.SHAPE]


def test_where_parts_are_glued_on_the_piece_itself_may_be_what_swings_widest():
    thin = replace(KNOB, blank=SquareBlank("maple_sugar", inches("1/2"), inches("2")))

    assert limit(thin, "bead").swings == inches("1 1/4")
    assert limit(thin, "rough").swings == inches("1 1/4")


def test_every_term_is_kept_with_what_it_is_made_of():
    found = limit(square("3", ROUGH), "rough")

    by_diameter, ceiling, rim = found.terms
    assert (by_diameter.kind, by_diameter.inch_rpm, by_diameter.diameter) == (
        TermKind.CLASS_LIMIT,
        3_500,
        found.swings,
    )
    assert (ceiling.kind, ceiling.rpm, ceiling.diameter) == (TermKind.CEILING, Fraction(1_600), None)
    assert (rim.kind, rim.inch_rpm) == (TermKind.RIM, 6_000)
    assert found.deciding is by_diameter
    assert all(term.source and term.confidence is Confidence.COMMON_PRACTICE for term in found.terms)


def test_the_rim_speed_is_that_of_the_work_at_its_limit():
    """Definition of surface speed: pi times 10 in times 600 rpm is 7.98 m/s."""
    found = limit(disc("10", ROUGH, BEAD), "bead")

    assert found.rpm == 600
    assert found.rim_speed
    assert show_rim_speed(found.rim_speed) == "7.98\u00a0m/s"


class TestAgainstPublishedTables:
    """Table A: home-workshop textbook, Table 12-1. Table B: chart of lathe manuals and school guides."""

    SPANS = [row for row in TABLES if row["kind"].startswith(("table A", "table B"))]

    @staticmethod
    def columns(row: dict[str, str]) -> list[int]:
        return [int(speed) for speed in row["rpm"].split("/")]

    @staticmethod
    def widths(row: dict[str, str]) -> list[Fraction]:
        """From just above the lower end of the span to its upper end."""
        low, high = Fraction(row["dia_from_in"]), Fraction(row["dia_to_in"])
        return [low + (high - low) * part / 4 for part in range(0 if low else 1, 5)]

    @pytest.mark.parametrize("row", SPANS, ids=lambda row: f"{row['kind'][:7]} {row['dia_to_in']} in")
    def test_roughing_a_square_is_never_above_the_last_column_of_either(self, row):
        for width in self.widths(row):
            side = Length(int(width * NM_PER_INCH * Fraction(70_710, 100_000)))
            work = replace(square("1", ROUGH), blank=SquareBlank("maple_sugar", side, inches("6")))
            assert rpm(work, "rough") <= self.columns(row)[2]

    @pytest.mark.parametrize(
        "row",
        [row for row in SPANS if row["kind"].startswith("table B")],
        ids=lambda row: f"{row['dia_to_in']} in",
    )
    def test_a_class_roughs_no_faster_than_table_b_turns_and_shapes_no_faster_than_it_finishes(self, row):
        _roughing, general, finishing = self.columns(row)
        for width in self.widths(row):
            inch = Length(int(width * NM_PER_INCH))
            work = replace(square("1", ROUGH, BEAD, SAND), blank=SlabBlank("maple_sugar", inch, inches("3")))
            assert rpm(work, "rough") <= general
            assert rpm(work, "bead") <= finishing
            assert rpm(work, "sand") <= general


diameters = st.integers(1_000_000, 1_500_000_000)
stages = st.sampled_from([ROUGH, BEAD, DRILL, BURN, SAND, POLISH])


def of_width(kind: str, nm: int, *steps: Step) -> Recipe:
    blanks: dict[str, Blank] = {
        "square": SquareBlank("maple_sugar", Length(nm), inches("6")),
        "round": RoundBlank("maple_sugar", Length(nm), inches("6")),
        "slab": SlabBlank("maple_sugar", Length(nm), inches("3")),
    }
    return with_mounting(replace(SMALL, blank=blanks[kind]), 0, steps=steps)


@given(
    kind=st.sampled_from(["square", "round", "slab"]),
    widths=st.tuples(diameters, diameters),
    step=stages,
    signed_off=st.booleans(),
    roughed=st.booleans(),
)
def test_wider_work_is_never_allowed_a_higher_speed(kind, widths, step, signed_off, roughed):
    steps = (ROUGH, replace(step, key="it")) if roughed else (replace(step, key="it"),)
    narrow, wide = (of_width(kind, nm, *steps) for nm in sorted(widths))

    assert rpm(wide, "it", signed_off=signed_off) <= rpm(narrow, "it", signed_off=signed_off)


@given(bits=st.tuples(diameters, diameters))
def test_a_wider_bit_is_never_allowed_a_higher_speed(bits):
    narrow, wide = (
        rpm(
            square("3", ROUGH, replace(DRILL, hole=DrillHole(Length(bit), inches("1")))),
            "drill",
        )
        for bit in sorted(bits)
    )

    assert wide <= narrow


@settings(max_examples=100, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(recipe=recipes(), signed_off=st.booleans())
def test_no_limit_is_above_any_of_its_terms(recipe, signed_off):
    found = step_limits(recipe, signed_off=signed_off)

    assert len(found) == len(list(recipe.steps()))
    for step, limit in zip(recipe.steps(), found, strict=True):
        assert (limit is None) == (not step.runs)
        if limit and limit.rpm is not None:
            assert all(limit.rpm <= term.rpm for term in limit.terms)
            assert limit.rpm % 10 == 0
            rim = 9_000 if signed_off and limit.is_round else 6_000
            assert limit.rpm * limit.swings.nm <= rim * NM_PER_INCH


@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.key)
def test_every_running_step_of_the_demonstration_has_a_speed_one_can_set(recipe):
    for step, limit in zip(recipe.steps(), step_limits(recipe), strict=True):
        if limit and limit.stage is not Stage.START:
            assert 100 <= (limit.rpm or 0) <= 2_200, step.key
