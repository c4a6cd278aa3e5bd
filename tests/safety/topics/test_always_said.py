"""The cautions of a handout as people read them."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from projects.library.domain.recipe import Recipe
from projects.library.domain.words import Moment, Operation, Severity, Tool
from projects.library.tables import finishes, woods
from safety.topics.always_said import SaidLine, SaidMoment, cautions_for, uncovered_words
from safety.topics.sentences import HEADINGS, MOMENTS, WORDS
from tests.projects.library.demonstration import RECIPES
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.strategies import recipes
from tests.safety.topics.reference import LISTS, REFERENCE


def said(recipe: Recipe) -> tuple[SaidMoment, ...]:
    return cautions_for(recipe, woods(), finishes())


def lines(recipe: Recipe) -> list[SaidLine]:
    return [line for each in said(recipe) for group in each.groups for line in group.lines]


def test_a_line_says_why_it_is_here_and_who_says_so():
    (line,) = [line for line in lines(KNOB) if line.statement.startswith("Oily paper towels")]

    assert line.why == "finish that dries by oxidation"
    assert line.who_says == "NFPA; OSHA"


def test_a_recipes_own_caution_has_nobody_else_to_name():
    (line,) = [line for line in lines(KNOB) if line.statement.startswith("Try by hand")]

    assert (line.why, line.who_says) == ("", "")


def test_a_folded_line_says_both_sentences_in_full_and_each_reason_once():
    (line,) = [line for line in lines(BOWL) if "jaws" in line.statement]

    assert line.statement == (
        "Chuck or plate screwed right home on the spindle, set screw tight. "
        "The work's shoulder tight on the jaws, no jaw standing out past the chuck's body."
    )
    assert line.why == "scroll chuck; faceplate"
    assert line.who_says == "turners and clubs"


def test_each_moment_has_its_name_and_a_heading_for_each_severity():
    named = {each.moment: (str(each.name), [group.heading for group in each.groups]) for each in said(KNOB)}

    assert named[Moment.BEFORE_POWER] == ("before power", ["Stop: before power"])
    assert named[Moment.FINISHING] == ("finishing", ["Caution: finishing"])
    assert set(MOMENTS) == set(Moment)
    assert set(HEADINGS) == set(Severity)


def test_every_word_a_rule_or_a_recipe_uses_has_a_word_for_people():
    asked = {(among, word) for row in REFERENCE for among in LISTS for word in row["trigger"][among]}
    named = {(among, word) for among, words in WORDS.items() for word in words}

    assert {pair for pair in asked if pair[0] not in {"woods", "finishes"}} <= named
    assert {("tools", tool.value) for tool in Tool} <= named
    assert {operation.value for operation in (Operation.MARKING, Operation.TRIMMING)} <= set(
        WORDS["operations"]
    )


def test_what_no_rule_speaks_of_is_told_in_words():
    assert uncovered_words(BOWL, woods(), finishes()) == ("bowl gouge", "turning", "Cherry, black")


def test_woods_and_finishes_that_no_table_has_go_by_their_key():
    (coat,) = KNOB.finish
    other = replace(
        KNOB,
        blank=replace(KNOB.blank, species="heart-of-x"),
        finish=(replace(coat, finish="house-oil"),),
    )

    whys = {why for line in lines(other) for why in line.why.split("; ")}
    assert "wood that is not in our tables" in whys
    assert "finish with a flammable solvent" in whys


@settings(max_examples=50, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(recipe=recipes())
def test_any_recipe_can_be_put_into_words(recipe):
    assert all(line.statement for line in lines(recipe) if line.who_says)
    assert all(uncovered_words(recipe, woods(), finishes()))


@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.key)
def test_nothing_that_a_project_says_calls_a_thing_safe(recipe):
    for line in lines(recipe):
        assert not re.search(
            r"\bsafe(ly)?\b", line.statement.replace("does not make it safe", ""), re.IGNORECASE
        )
