"""How a number came about, in words: every value that went in stands there, and where the formula is from."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from club.base.quantities.length import Length, LengthStyle, show_length
from projects.library.domain.facts import facts
from projects.library.domain.recipe import Recipe
from projects.library.domain.speeds import step_limits
from projects.library.domain.words import Stage
from projects.library.sentences.workings import speed_worked_out, worked_out
from projects.library.tables import woods
from tests.projects.library.examples import BOWL, KNOB, with_step
from tests.projects.library.strategies import recipes


def show(length: Length) -> str:
    return show_length(length, LengthStyle.AS_TYPED)


def told(recipe: Recipe) -> dict[str, str]:
    return {name: worked_out(working, show) for name, working in facts(recipe, woods()).workings.items()}


def speeds(recipe: Recipe) -> list[str]:
    return [speed_worked_out(limit, show) for limit in step_limits(recipe) if limit]


def test_mass_is_told_with_volume_density_source_and_how_far_to_trust_it():
    assert told(KNOB)["mass"].startswith(
        "14.1\u00a0cm\u00b3 at 706 kg a cubic metre, the wood at 12 % moisture."
    )
    assert "Wood Handbook" in told(KNOB)["mass"]
    assert told(KNOB)["mass"].endswith("(published).")


def test_an_estimated_density_is_called_so():
    iroko = replace(KNOB, blank=replace(KNOB.blank, species="iroko"))

    assert told(iroko)["mass"].endswith("(estimated).")


def test_surface_is_told_part_by_part():
    assert told(KNOB)["surface"].startswith(
        "29.3\u00a0cm\u00b2 outside and 0.0\u00a0cm\u00b2 inside, 4.1\u00a0cm\u00b2 for the flat ends."
    )


def test_end_grain_says_how_the_grain_runs():
    assert told(KNOB)["end_grain"].startswith("Grain along the axis")
    assert told(BOWL)["end_grain"].startswith("Grain across the axis")


def test_slenderness_says_when_a_length_counted_double():
    working = told(BOWL)

    assert "counted double" in working["slenderness:inside"]
    assert "counted double" not in working["slenderness:outside"]


def test_a_speed_is_told_by_every_limit_there_is_the_least_first():
    roughing = speeds(BOWL)[0]

    assert roughing.startswith(
        "The least of these, rounded down to 370\u00a0rpm: "
        "roughing face work, 3\u00a0000 inches times rpm over 8\u00a0in: 375\u00a0rpm; "
        "roughing face work never above 600\u00a0rpm; "
        "any rim, 6\u00a0000 inches times rpm over 8\u00a0in: 750\u00a0rpm."
    )
    assert "runs at 3.94\u00a0m/s" in roughing
    assert "plate of lathe, chuck or faceplate comes first" in roughing
    assert "common practice" in roughing


def test_a_start_has_nothing_to_be_worked_out():
    start = with_step(KNOB, "rough", stage=Stage.START)

    assert speeds(start)[0] == ""


@settings(max_examples=50, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(recipe=recipes())
def test_any_working_can_be_told_and_none_says_that_anything_is_safe(recipe):
    texts = [*told(recipe).values(), *speeds(recipe)]

    assert all(told(recipe).values())
    assert not any("safe" in text or "%(" in text for text in texts)


@pytest.mark.parametrize("name", ["volume", "surface", "end_grain", "shavings", "minutes"])
def test_each_fact_of_a_knob_has_a_working(name):
    assert told(KNOB)[name].endswith(".")
