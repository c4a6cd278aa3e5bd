"""The words of a recipe that safety rules fire on."""

from __future__ import annotations

import json
from dataclasses import asdict, replace

import pytest
from hypothesis import HealthCheck, given, settings

from projects.library.domain.coats import Coat
from projects.library.domain.holding import BetweenCentres, JamChuck, JamIn
from projects.library.domain.materials import AdhesiveNeed
from projects.library.domain.recipe import Recipe
from projects.library.domain.rule_words import RuleWords, rule_words
from projects.library.domain.words import (
    Drive,
    Glue,
    Moment,
    Operation,
    Severity,
    Spindle,
    Tool,
    WoodCondition,
)
from projects.library.tables import finishes, woods
from tests.projects.library.examples import BOWL, KNOB, inches, with_mounting, with_step
from tests.projects.library.strategies import recipes
from tests.reference.tables import HERE

VOCABULARY: dict[str, list[str]] = json.loads((HERE / "08_rule_vocabulary.json").read_text(encoding="utf-8"))


def words(recipe: Recipe) -> RuleWords:
    return rule_words(recipe, woods(), finishes())


def test_a_knob_in_a_collet_has_the_words_of_its_holding_tools_oil_and_glue():
    assert words(KNOB) == RuleWords(
        tools=frozenset({"lathe", "spindle_roughing_gouge", "spindle_gouge", "parting_tool"}),
        holding=frozenset({"collet_drawbar", "tailstock"}),
        finishes=frozenset({"walnut_oil"}),
        finish_properties=frozenset({"dries_by_oxidation", "contains_tree_nut"}),
        woods=frozenset({"maple_sugar"}),
        wood_groups=frozenset({"hardwood"}),
        wood_conditions=frozenset(),
        operations=frozenset({"turning", "sanding", "finishing_on_lathe", "glued_blank"}),
    )


def test_a_bowl_is_face_work_and_food_ware():
    found = words(BOWL)

    assert found.operations == {"turning", "sanding", "face_work", "food_ware"}
    assert found.holding == {"faceplate", "scroll_chuck", "tailstock"}


@pytest.mark.parametrize("in_what", JamIn)
def test_a_jam_chuck_is_known_by_what_holds_it(in_what):
    held = with_mounting(BOWL, 1, holding=JamChuck(in_what, inches("2")))

    assert words(held).holding == {"faceplate", "tailstock", in_what.value}


def test_work_between_centres_has_a_tailstock():
    held = with_mounting(KNOB, 0, holding=BetweenCentres(Drive.RING), tailstock=None)

    assert words(held).holding == {"between_centres", "tailstock"}


def test_a_drill_sits_in_a_drill_chuck_in_the_tailstock():
    drilled = with_step(BOWL, "hollow", tool=Tool.DRILL, operation=Operation.DRILLING)

    assert {"drill_chuck", "tailstock"} <= words(drilled).holding
    assert "drilling" in words(drilled).operations


def test_a_finish_nobody_knows_counts_as_having_every_property():
    found = words(replace(KNOB, finish=(Coat("mystery", 1, on_the_lathe=False),)))

    assert found.finish_properties == set(VOCABULARY["finish_properties"])


def test_instant_glue_counts_as_a_finish():
    materials = tuple(
        replace(need, glue=Glue.INSTANT_GLUE) if isinstance(need, AdhesiveNeed) else need
        for need in KNOB.materials
    )

    assert "instant_glue" in words(replace(KNOB, materials=materials)).finishes


def test_a_wood_nobody_named_is_of_unknown_group():
    blank = replace(KNOB.blank, species="unknown", conditions=(WoodCondition.SPALTED,))

    found = words(replace(KNOB, blank=blank))

    assert found.wood_groups == {"unknown"}
    assert found.wood_conditions == {"spalted"}


def test_running_in_reverse_is_said():
    assert "reverse" in words(with_step(BOWL, "sand-bowl", spindle=Spindle.REVERSE)).operations


@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
@given(recipes())
def test_every_word_is_one_that_rules_know(recipe):
    found = asdict(words(recipe))

    for name, allowed in VOCABULARY.items():
        assert found.get(name, frozenset()) <= set(allowed), name


def test_moments_and_severities_are_those_of_the_rules():
    assert [moment.value for moment in Moment] == VOCABULARY["moment"]
    assert [severity.value for severity in Severity] == VOCABULARY["severity"]
