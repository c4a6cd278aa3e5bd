from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from club.base.quantities.length import Length, LengthStyle, parse_length
from projects.library.domain.holding import BetweenCentres
from projects.library.domain.json_form import to_json
from projects.library.domain.leaves import leaves
from projects.library.domain.mountings import Step
from projects.library.domain.recipe import Recipe
from projects.library.domain.words import Drive, Operation, Spindle, Tool
from projects.library.sentences.difference import difference_sentences
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.strategies import recipes

TYPED = LengthStyle.AS_TYPED
JUNK = re.compile(r"%\(|Length\(|Area\(|Volume\(|<[A-Z]|None|True|False|\w+_gouge|_chuck|_cut\b")

SLOW = settings(
    phases=[Phase.explicit, Phase.reuse, Phase.generate],
    max_examples=60,
    suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.data_too_large],
)


def told(old: Recipe, new: Recipe) -> tuple[str, ...]:
    return difference_sentences(old, new, TYPED)


def junk_in(text: str) -> set[str]:
    return {found[0] for found in JUNK.finditer(text)}


def texts(recipe: Recipe) -> list[str]:
    """What somebody wrote freely, in which anything may stand."""
    free = ("title", "text", "summary", "specification", "watch", "checkpoint", "note", "jaws", "thread")
    return [text for way, text in leaves(to_json(recipe)).items() if way.endswith(free)]


def with_step(recipe: Recipe, mounting: int, step: int, **changes: object) -> Recipe:
    steps = list(recipe.mountings[mounting].steps)
    steps[step] = replace(steps[step], **changes)  # type: ignore[arg-type]
    return with_steps(recipe, mounting, steps)


def with_steps(recipe: Recipe, mounting: int, steps: list[Step]) -> Recipe:
    mountings = list(recipe.mountings)
    mountings[mounting] = replace(mountings[mounting], steps=tuple(steps))
    return replace(recipe, mountings=tuple(mountings))


def test_a_value_that_changed_is_told_with_its_place():
    before = with_step(KNOB, 0, 1, minutes=5, tool=Tool.BOWL_GOUGE, rest_gap=None)
    after = with_step(KNOB, 0, 1, minutes=8, tool=Tool.SPINDLE_GOUGE, rest_gap=parse_length("1/4 in"))

    assert told(before, after) == (
        "Mounting 1, step 2, minutes: 5 became 8.",
        "Mounting 1, step 2, tool: bowl gouge became spindle gouge.",
        "Mounting 1, step 2, rest gap: 1/4\u00a0in is new.",
    )


def test_steps_that_came_went_and_moved_are_told():
    steps = KNOB.mountings[0].steps
    new = Step("wipe", "Wipe it.", Operation.FINISHING, Spindle.STOPPED, 1)

    assert told(KNOB, with_steps(KNOB, 0, [*steps, new])) == (
        f"Mounting 1, step {len(steps) + 1} is new: Wipe it.",
    )
    assert told(KNOB, with_steps(KNOB, 0, [*steps[:1], *steps[2:]]))[-1] == (
        f"Mounting 1, what was step 2 is taken out: {steps[1].text}"
    )
    assert told(KNOB, with_steps(KNOB, 0, [*steps[:-2], steps[-1], steps[-2]]))[0] in {
        f"Mounting 1, step {len(steps)} was step {len(steps) - 1}.",
        f"Mounting 1, step {len(steps) - 1} was step {len(steps)}.",
    }


def test_another_way_of_holding_is_told_in_words():
    holding = BetweenCentres(Drive.TWO_PRONG)
    first = replace(KNOB.mountings[0], holding=holding)

    (said,) = told(KNOB, replace(KNOB, mountings=(first, *KNOB.mountings[1:])))

    assert said.startswith("Mounting 1, holding: ")
    assert said.endswith(" became between centres, two-prong drive.")


def test_lists_of_words_and_numbers_are_told_whole():
    assert told(replace(KNOB, grits=(120, 1000)), replace(KNOB, grits=(120, 240))) == (
        "Grits: 120, 1000 became 120, 240.",
    )
    assert told(replace(KNOB, skills=("parting_tool",)), replace(KNOB, skills=())) == (
        "Skills: parting tool is taken out.",
    )


def test_what_is_left_to_the_tables_is_told_so():
    before = replace(KNOB, blank=replace(KNOB.blank, density_kg_per_m3=705))

    assert told(before, KNOB) == ("Blank, density in kg/m³: 705 became as the table says.",)


def test_a_text_that_ends_a_sentence_gets_no_second_full_stop():
    (said,) = told(with_step(KNOB, 0, 1, text="Cut."), with_step(KNOB, 0, 1, text="Cut it."))

    assert said == "Mounting 1, step 2, text: “Cut.” became “Cut it.”"


def test_a_difference_that_rounding_hides_is_told_to_the_last_digit():
    before = with_step(KNOB, 0, 1, rest_gap=Length(12_700_000))
    after = with_step(KNOB, 0, 1, rest_gap=Length(12_700_001))

    (said,) = difference_sentences(before, after, LengthStyle.SIXTEENTHS)

    assert said == "Mounting 1, step 2, rest gap: 12.7\u00a0mm became 12.700001\u00a0mm."


@pytest.mark.parametrize("recipe", [KNOB, BOWL])
def test_equal_recipes_differ_in_nothing(recipe):
    assert told(recipe, replace(recipe)) == ()


@SLOW
@given(recipes(), st.sampled_from([KNOB, BOWL]), st.booleans(), st.sampled_from(LengthStyle))
def test_recipes_that_differ_are_told_apart_in_clean_words(one, other, turned, lengths):
    old, new = (other, one) if turned else (one, other)

    typed = {junk for recipe in (old, new) for text in texts(recipe) for junk in junk_in(text)}

    said = difference_sentences(old, new, lengths)

    assert bool(said) == (old != new)
    for sentence in said:
        assert junk_in(sentence) <= typed, sentence
        assert sentence[0] == sentence[0].upper()
        assert re.search(r": (.+) became \1\.?$", sentence) is None, sentence


@SLOW
@given(recipes())
def test_one_step_changed_anywhere_is_told(recipe):
    changed = with_step(
        recipe, len(recipe.mountings) - 1, 0, minutes=recipe.mountings[-1].steps[0].minutes ^ 1
    )

    assert len(told(recipe, changed)) == 1
