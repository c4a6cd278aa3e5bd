"""What is checked of a recipe before it may be used."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from club.base.quantities.length import Length
from projects.library.domain.blank import SlabBlank
from projects.library.domain.check_plan import circle_in
from projects.library.domain.checks import may_be_used
from projects.library.domain.coats import Coat
from projects.library.domain.findings import Finding, Weight
from projects.library.domain.holding import BetweenCentres
from projects.library.domain.materials import BlankNeed, LiquidNeed, SheetNeed
from projects.library.domain.preparation import Task
from projects.library.domain.recipe import Recipe, Variant
from projects.library.domain.words import Drive
from tests.projects.library.examples import BOWL, KNOB, inches, outline, with_mounting, with_step
from tests.projects.library.looking import codes, findings, only
from tests.projects.library.strategies import recipes


@pytest.mark.parametrize("recipe", [KNOB, BOWL], ids=lambda recipe: recipe.key)
def test_a_recipe_without_a_fault_has_no_finding(recipe):
    assert findings(recipe) == ()


@pytest.mark.parametrize(("weight", "may"), [(Weight.MIND, True), (Weight.REFUSED, False)])
def test_an_edition_may_be_used_unless_something_is_refused(weight, may):
    assert may_be_used((Finding("any", weight, ""),)) is may
    assert may_be_used(()) is True


class TestPartingOff:
    def test_from_nothing_is_refused(self):
        finding = only(replace(KNOB, right_end=None))

        assert (finding.code, finding.weight) == ("nothing_to_part_from", Weight.REFUSED)

    def test_is_asked_for_between_centres_as_well(self):
        held = with_mounting(BOWL, 0, holding=BetweenCentres(Drive.RING))

        assert codes(replace(held, left_end=None)) == ["nothing_to_part_from"]

    def test_is_not_asked_for_where_nothing_is_parted(self):
        assert codes(replace(BOWL, left_end=None)) == []


class TestSanding:
    def test_a_step_too_coarse_is_minded_and_one_far_too_coarse_refused(self):
        """P60 to P100 is 269 to 162 micrometres, P80 to P180 201 to 82: ISO 6344-2:2021."""
        said = [(one.code, one.weight) for one in findings(with_grits(60, 100))]
        refused = [(one.code, one.weight) for one in findings(with_grits(80, 180))]

        assert said == [("grit_coarse_step", Weight.MIND)]
        assert refused == [("grit_far_too_coarse", Weight.REFUSED)]

    def test_a_grade_that_the_standard_has_not_is_refused_by_its_place(self):
        finding = only(with_grits(120, 130))

        assert (finding.code, finding.weight, finding.path) == ("grit_unknown", Weight.REFUSED, "grits[1]")

    def test_a_grit_that_is_not_in_the_materials_is_minded(self):
        finding = only(replace(KNOB, grits=(*KNOB.grits, 320)))

        assert (finding.code, finding.values["grit"]) == ("grit_not_in_materials", 320)


def with_grits(*grits: int) -> Recipe:
    sheets = tuple(SheetNeed(f"sheet-{grit}", "Sandpaper", inches("2"), inches("4"), grit) for grit in grits)
    return replace(KNOB, grits=grits, materials=KNOB.materials + sheets)


class TestFinish:
    def test_that_no_table_has_is_refused_wherever_it_stands(self):
        materials = (*KNOB.materials, LiquidNeed("mystery", "From the tin", "mystery"))
        recipe = replace(KNOB, finish=(Coat("mystery", 24, on_the_lathe=False),), materials=materials)

        found = findings(recipe)

        assert [(one.code, one.path) for one in found] == [
            ("unknown_finish", "finish[0].finish"),
            ("unknown_finish", f"materials[{len(materials) - 1}].finish"),
        ]
        assert {one.weight for one in found} == {Weight.REFUSED}

    def test_that_is_not_in_the_materials_is_minded(self):
        assert codes(replace(KNOB, finish=(Coat("mineral_oil", 1, True),))) == ["finish_not_in_materials"]


class TestWood:
    @pytest.mark.parametrize(
        ("species", "code", "weight"),
        [
            ("no_such_wood", "unknown_species", Weight.REFUSED),
            ("unknown", "wood_not_named", Weight.MIND),
            ("oleander", "wood_not_turned", Weight.REFUSED),
        ],
    )
    def test_that_may_not_be_used_as_it_is_is_named(self, species, code, weight):
        finding = only(replace(KNOB, blank=replace(KNOB.blank, species=species)))

        assert (finding.code, finding.weight, finding.path) == (code, weight, "blank.species")

    @pytest.mark.parametrize("species", ["cherry_black", "yew", "balsam_fir"])
    def test_of_either_table_is_known(self, species):
        assert findings(replace(KNOB, blank=replace(KNOB.blank, species=species))) == ()

    def test_of_a_second_blank_is_looked_at_too(self):
        second = BlankNeed("lid", "A lid", SlabBlank("no_such_wood", inches("3"), inches("1")))

        finding = only(replace(KNOB, materials=(*KNOB.materials, second)))

        assert finding.path == f"materials[{len(KNOB.materials)}].blank.species"


class TestTheBlank:
    def test_that_is_too_thin_is_refused_with_what_is_needed(self):
        finding = only(replace(BOWL, profile=outline(("0", "3"), ("2", "8 1/4"))))

        assert (finding.code, finding.weight, finding.path) == ("blank_too_thin", Weight.REFUSED, "profile")
        assert dict(finding.values) == {"needs": inches("8 1/4"), "has": inches("8")}

    def test_has_room_for_what_is_left_at_the_ends(self):
        finding = only(replace(BOWL, profile=outline(("0", "3"), ("2 7/8", "7"))))

        assert (finding.code, finding.values["needs"]) == ("blank_too_short", inches("3 1/8"))
        assert codes(replace(BOWL, profile=outline(("0", "3"), ("2 3/4", "7")))) == []

    def test_is_not_all_the_wood_there_is_where_parts_are_glued_on(self):
        finding = only(replace(KNOB, profile=outline(("0", "1/2"), ("3", "1"))))

        assert (finding.code, finding.weight) == ("blank_too_short", Weight.MIND)

    def test_has_to_hold_the_drawing_of_a_variant_as_well(self):
        harder = Variant("Wide bowl", "All the way out.", profile=outline(("0", "3"), ("2", "9")))

        assert only(replace(BOWL, harder=harder)).path == "harder.profile"


class TestALessonThatWasOnlyBegun:
    def test_is_refused_while_nothing_is_turned_in_it(self):
        mounting = replace(KNOB.mountings[0], steps=KNOB.mountings[0].steps[:1], tailstock=None)
        begun = replace(KNOB, mountings=(mounting,), easier=None)

        found = {finding.code: finding.weight for finding in findings(begun)}

        assert found["nothing_turned"] is Weight.REFUSED

    def test_is_minded_while_it_needs_no_material(self):
        begun = replace(KNOB, materials=(), glue_ups=())

        found = {finding.code: finding.weight for finding in findings(begun)}

        assert found["no_materials"] is Weight.MIND


class TestTime:
    def test_that_does_not_add_up_is_minded_with_both_sums(self):
        finding = only(with_step(KNOB, "bead", minutes=15))

        assert (finding.code, finding.weight) == ("minutes_do_not_add_up", Weight.MIND)
        assert dict(finding.values) == {"stated": 45, "summed": 48}

    def test_counts_putting_the_work_on(self):
        assert only(with_mounting(KNOB, 0, minutes=4)).values["summed"] == 46


class TestPreparation:
    def test_in_a_circle_is_refused_with_the_circle(self):
        cut, drill = KNOB.preparation
        recipe = replace(KNOB, preparation=(replace(cut, after=("glue-dowel",)), drill))

        finding = only(recipe)

        assert (finding.code, finding.weight) == ("tasks_in_a_circle", Weight.REFUSED)
        assert finding.values["keys"] == ("glue-dowel", "drill", "cut")

    def test_of_a_task_that_waits_for_itself_is_a_circle(self):
        task = Task("order", "Order", minutes=5, after=("order",))

        finding = only(replace(KNOB, preparation=(*KNOB.preparation, task)))

        assert finding.values["keys"] == ("order",)

    def test_with_glue_that_has_not_cured_a_day_is_minded(self):
        """Common practice, from data sheets of wood glue and a school's safety test."""
        (glue_up,) = KNOB.glue_ups

        finding = only(replace(KNOB, glue_ups=(replace(glue_up, cure_hours=12),)))

        assert (finding.code, dict(finding.values)) == ("cure_short", {"hours": 12, "usual": 24})


WAITS = st.dictionaries(st.sampled_from("abcdef"), st.lists(st.sampled_from("abcdef"), max_size=3).map(tuple))


@given(WAITS)
def test_a_circle_is_one_and_without_one_there_is_an_order(waits):
    circle = circle_in(waits)

    if circle:
        assert all(then in waits[key] for key, then in zip(circle, (*circle[1:], circle[0]), strict=True))
    else:
        left = {key: {then for then in after if then in waits} for key, after in waits.items()}
        while left:
            free = {key for key, after in left.items() if not after & set(left)}
            assert free
            left = {key: after for key, after in left.items() if key not in free}


def test_many_tasks_that_wait_for_the_same_ones_are_gone_through_once():
    """Else sixty tasks, each waiting for the two before, would take years."""
    waits = {str(number): (str(number - 1), str(number - 2)) for number in range(2, 60)}

    assert circle_in(waits) == ()


def test_a_variant_leaves_out_only_what_may_be_left_out():
    finding = only(with_step(KNOB, "bead", may_be_left_out=False))

    assert (finding.code, finding.weight) == ("not_to_be_left_out", Weight.REFUSED)
    assert (finding.path, finding.values["step"]) == ("easier.leaves_out[0]", "bead")


@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
@given(recipes())
def test_any_recipe_that_can_be_read_can_be_checked(recipe):
    for finding in findings(recipe):
        assert finding.code
        assert finding.path
        assert not any(isinstance(value, Length) and value.nm < 0 for value in finding.values.values())
