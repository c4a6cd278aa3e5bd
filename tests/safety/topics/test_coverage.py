"""What a recipe uses that no rule of the handout speaks of is named; silence never passes for safety."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from projects.library.domain.holding import JamChuck, JamIn
from projects.library.domain.materials import AdhesiveNeed
from projects.library.domain.mountings import DrillHole, Step
from projects.library.domain.recipe import Recipe
from projects.library.domain.rule_words import rule_words
from projects.library.domain.words import Glue, Operation, Spindle, Stage, Tool, WoodCondition
from projects.library.tables import finishes, woods
from safety.topics.domain.coverage import uncovered, uses
from safety.topics.domain.rules import Place, Word, fire
from safety.topics.tables import rules
from tests.projects.library.examples import BOWL, KNOB, inches, with_mounting, with_step
from tests.projects.library.strategies import recipes


def named(recipe: Recipe) -> set[Word]:
    return set(uncovered(rules(), recipe, woods(), finishes()))


def test_tools_that_no_line_of_the_handout_speaks_of_are_named():
    assert {word.word for word in named(KNOB) if word.among == "tools"} == {
        *("paper_towel", "parting_tool", "spindle_gouge", "spindle_roughing_gouge")
    }


def test_what_a_rule_speaks_of_is_not_named():
    assert not {Word("operations", "sanding"), Word("holding", "collet_drawbar")} & named(KNOB)
    assert Word("finishes", "walnut_oil") not in named(KNOB)


def test_a_drill_is_spoken_of_with_drilling():
    hole = DrillHole(inches("1/4"), inches("1"))
    drill = Step(
        "drill", "Drill.", Operation.DRILLING, Spindle.RUNNING, 3, Tool.DRILL, Stage.DRILL, hole=hole
    )
    drilled = with_mounting(BOWL, 1, steps=(drill,))

    assert not {
        Word("tools", "drill"),
        Word("holding", "drill_chuck"),
        Word("operations", "drilling"),
    } & named(drilled)


def test_a_jam_chuck_is_named_though_a_rule_speaks_of_what_holds_it():
    held = with_mounting(BOWL, 1, holding=JamChuck(JamIn.SCROLL_CHUCK, inches("2")))

    assert Word("holding", "jam_chuck") in named(held)
    assert Word("holding", "scroll_chuck") not in named(held)


def test_reverse_is_named_where_its_rule_does_not_hold_for_such_a_holding():
    reversed_knob = with_step(KNOB, "sand", spindle=Spindle.REVERSE)

    assert Word("operations", "reverse") in named(reversed_knob)
    assert Word("operations", "reverse") not in named(with_step(BOWL, "sand-bowl", spindle=Spindle.REVERSE))


def test_a_handsaw_and_trimming_are_named():
    trim = Step("trim", "Saw it off.", Operation.TRIMMING, Spindle.STOPPED, 3, Tool.HANDSAW)

    assert {Word("tools", "handsaw"), Word("operations", "trimming")} <= named(
        with_mounting(KNOB, 0, steps=(*KNOB.mountings[0].steps, trim))
    )


@pytest.mark.parametrize(
    ("species", "is_named"), [("maple_sugar", True), ("iroko", False), ("not_in_any_table", False)]
)
def test_a_wood_is_named_unless_a_rule_speaks_of_it_or_of_woods_that_nobody_knows(species, is_named):
    recipe = replace(BOWL, blank=replace(BOWL.blank, species=species))

    assert (Word("woods", species) in named(recipe)) == is_named


@pytest.mark.parametrize("condition", WoodCondition)
def test_every_condition_of_wood_has_its_rule(condition):
    recipe = replace(BOWL, blank=replace(BOWL.blank, conditions=(condition,)))

    assert Word("wood_conditions", condition.value) not in named(recipe)


def test_a_finish_without_any_of_the_properties_is_named():
    (coat,) = KNOB.finish

    assert Word("finishes", "mineral_oil") in named(
        replace(KNOB, finish=(replace(coat, finish="mineral_oil"),))
    )


@pytest.mark.parametrize(("glue", "is_named"), [(Glue.PVA, True), (Glue.INSTANT_GLUE, False)])
def test_a_glue_is_named_unless_a_rule_speaks_of_it(glue, is_named):
    needs = tuple(
        replace(need, glue=glue) if isinstance(need, AdhesiveNeed) else need for need in KNOB.materials
    )

    assert (Word("adhesives", glue.value) in named(replace(KNOB, materials=needs))) == is_named


@settings(max_examples=200, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(recipe=recipes())
def test_everything_that_is_used_is_covered_or_named(recipe):
    words = rule_words(recipe, woods(), finishes())
    covered = {word for one in fire(rules(), Place.HANDOUT, words) for word in one.because}
    missing = named(recipe)

    used = {use.word for use in uses(recipe, words, woods(), finishes())}
    assert {step.tool for step in recipe.steps() if step.tool} == {
        word.word for word in used if word.among == "tools"
    }
    assert {Word("holding", word) for word in words.holding} <= used
    assert {Word("operations", word) for word in words.operations} <= used
    assert {Word("woods", word) for word in words.woods} <= used
    assert {Word("finishes", word) for word in words.finishes} <= used
    assert {Word("finish_properties", word) for word in words.finish_properties} <= used
    assert {Word("wood_conditions", word) for word in words.wood_conditions} <= used
    assert missing <= used
    assert not missing & covered
    for use in uses(recipe, words, woods(), finishes()):
        assert use.word in missing or use.known_by & covered
