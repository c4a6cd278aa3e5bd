"""The cautions of a handout: nine stop lines at most, and nothing that has to be said gets lost."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from projects.library.domain.recipe import Caution, Recipe
from projects.library.domain.rule_words import RuleWords, rule_words
from projects.library.domain.words import Moment, Severity
from projects.library.tables import finishes, woods
from safety.topics.domain.assembly import MOST_STOP_LINES, WORST_FIRST, MomentCautions, Said, assemble
from safety.topics.domain.rules import Place, fire
from safety.topics.tables import rules
from tests.projects.library.demonstration import RECIPES
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.strategies import recipes
from tests.safety.topics.reference import LISTS, REFERENCE, words

EVERY_WORD = {among: tuple({word for row in REFERENCE for word in row["trigger"][among]}) for among in LISTS}


def said(recipe: Recipe) -> tuple[MomentCautions, ...]:
    return assemble(rules(), rule_words(recipe, woods(), finishes()), recipe.cautions)


def stops(cautions: tuple[MomentCautions, ...]) -> int:
    return sum(len(each.of(Severity.STOP)) for each in cautions)


def statements(cautions: tuple[MomentCautions, ...]) -> list[tuple[Moment, Severity, Said]]:
    return [
        (each.moment, line.severity, one) for each in cautions for line in each.lines for one in line.said
    ]


def keys(cautions: tuple[MomentCautions, ...]) -> list[str]:
    return [one.rule.key for _moment, _severity, one in statements(cautions) if one.rule]


def own(moment: Moment, severity: Severity, text: str) -> Caution:
    return Caution(moment, severity, text)


def test_a_knob_in_a_collet_has_the_eight_stops_of_the_reference_and_its_own():
    """A spindle project in a collet, oiled with walnut oil: eight stops and one caution."""
    found = said(KNOB)

    assert sorted(keys(found)) == sorted(
        [
            *("face-shield", "nothing-loose", "slow-start", "tailstock-lock", "drawbar-tight"),
            *("resp-sanding", "rest-off-sanding", "rags-can", "nut-notice"),
        ]
    )
    assert stops(found) == 9
    assert all(len(line.said) == 1 for each in found for line in each.lines)


def test_a_bowl_that_calls_for_more_than_nine_folds_what_holds_it_into_one_line():
    found = {each.moment: each for each in said(BOWL)}

    lines = [[one.rule.key for one in line.said] for line in found[Moment.MOUNTING].lines]
    assert lines == [["tailstock-lock"], ["faceplate-screws"], ["chuck-home", "jaws-grip"]]
    assert stops(tuple(found.values())) == MOST_STOP_LINES
    assert len(found[Moment.BEFORE_POWER].lines) == 3


def test_moments_stand_in_order_and_the_worst_of_each_first():
    found = assemble(rules(), words(**EVERY_WORD), ())

    assert [each.moment for each in found] == list(Moment)
    for each in found:
        severities = [line.severity for line in each.lines]
        assert severities == sorted(severities, key=WORST_FIRST.index)


def test_with_every_rule_there_is_nine_lines_say_all_stops():
    found = assemble(rules(), words(**EVERY_WORD), ())

    assert stops(found) == MOST_STOP_LINES
    assert sorted(keys(found)) == sorted(row["id"] for row in REFERENCE)


def test_a_recipes_own_stop_is_the_first_of_its_moment_and_the_last_to_be_folded():
    cautions = tuple(
        own(Moment.MOUNTING, Severity.STOP, text) for text in ("Dry wood only.", "Glue has cured.")
    )

    (mounting,) = [each for each in said(replace(BOWL, cautions=cautions)) if each.moment is Moment.MOUNTING]

    assert [str(line.said[0].statement) for line in mounting.lines[:2]] == [
        "Dry wood only.",
        "Glue has cured.",
    ]
    assert [len(line.said) for line in mounting.lines] == [1, 1, 4]


def test_twenty_stops_of_its_own_fit_and_are_all_said():
    cautions = tuple(
        own(moment, Severity.STOP, f"Own {place}.") for place, moment in enumerate([*Moment] * 3)
    )[:20]

    found = said(replace(BOWL, cautions=cautions))

    texts = [str(one.statement) for _moment, _severity, one in statements(found)]
    assert stops(found) == MOST_STOP_LINES
    assert {caution.text for caution in cautions} <= set(texts)


def test_of_two_moments_with_as_much_to_say_the_later_one_is_folded():
    cautions = tuple(
        own(moment, Severity.STOP, f"Own {place}.")
        for moment in (Moment.TURNING, Moment.SANDING)
        for place in range(6)
    )

    turning, sanding = assemble((), words(), cautions)

    assert [len(line.said) for line in turning.lines] == [1] * 6
    assert [len(line.said) for line in sanding.lines] == [1, 1, 4]


@pytest.mark.parametrize("severity", [Severity.CAUTION, Severity.NOTE])
def test_what_is_no_stop_is_never_folded(severity):
    cautions = tuple(own(Moment.TURNING, severity, f"Own {place}.") for place in range(20))

    (turning,) = assemble((), words(), cautions)

    assert [len(line.said) for line in turning.lines] == [1] * 20


def test_what_is_written_twice_for_one_moment_is_said_once_as_the_worse_of_both():
    cautions = (
        own(Moment.SANDING, Severity.NOTE, "Mind the rim."),
        own(Moment.SANDING, Severity.STOP, "Mind  the rim. "),
        own(Moment.TURNING, Severity.NOTE, "Mind the rim."),
    )

    found = assemble((), words(), cautions)

    assert [(moment, severity) for moment, severity, _one in statements(found)] == [
        (Moment.TURNING, Severity.NOTE),
        (Moment.SANDING, Severity.STOP),
    ]


def test_nothing_used_and_nothing_of_its_own_says_nothing():
    assert assemble(rules(), words(), ()) == ()


@settings(max_examples=200, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(recipe=recipes())
def test_whatever_the_recipe_no_stop_is_lost_and_nothing_is_said_twice(recipe):
    found = said(recipe)

    used = rule_words(recipe, woods(), finishes())
    assert sorted(keys(found)) == sorted(one.rule.key for one in fire(rules(), Place.HANDOUT, used))
    texts = {(moment, " ".join(str(one.statement).split())) for moment, _severity, one in statements(found)}
    assert {(one.moment, " ".join(one.text.split())) for one in recipe.cautions} <= texts
    assert max(Counter((moment, str(one.statement)) for moment, _s, one in statements(found)).values()) == 1
    assert stops(found) <= MOST_STOP_LINES


@given(
    used=st.fixed_dictionaries(
        {among: st.sets(st.sampled_from(EVERY_WORD[among] or ("-",))) for among in LISTS}
    )
)
def test_whatever_words_come_together_the_statements_are_those_that_fire(used):
    of: RuleWords = words(**{among: tuple(found) for among, found in used.items()})

    found = assemble(rules(), of, ())

    assert sorted(keys(found)) == sorted(one.rule.key for one in fire(rules(), Place.HANDOUT, of))
    assert stops(found) <= MOST_STOP_LINES
    assert all(line.said for each in found for line in each.lines)


@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.key)
def test_every_project_of_the_demonstration_has_nine_stop_lines_at_most(recipe):
    found = said(recipe)

    assert 3 < stops(found) <= MOST_STOP_LINES
    texts = {str(one.statement) for _moment, _severity, one in statements(found)}
    assert {caution.text for caution in recipe.cautions} <= texts
