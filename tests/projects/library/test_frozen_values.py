"""Values of the tables that an edition keeps once it is frozen."""

from __future__ import annotations

from dataclasses import replace

import pytest

from projects.library.domain.blank import SlabBlank
from projects.library.domain.coats import Coat
from projects.library.domain.frozen_values import with_table_values
from projects.library.domain.materials import BlankNeed
from projects.library.domain.recipe import Recipe
from projects.library.tables import finishes, woods
from tests.projects.library.examples import BOWL, KNOB, inches


def frozen(recipe: Recipe) -> Recipe:
    return with_table_values(recipe, woods(), finishes())


def test_the_density_of_the_wood_is_kept_to_the_nearest_kilogram():
    """Sugar maple, 0.63 at 12 %: 705.6 kg/m³ by the Wood Handbook's table 5-3b and equation 4-14."""
    assert frozen(KNOB).blank.density_kg_per_m3 == 706


def test_the_least_spread_is_kept_so_that_the_finish_bought_is_enough():
    """Walnut oil, 10 to 20 m²/l: common practice, from labels."""
    assert frozen(KNOB).finish[0].spread_cm2_per_ml == 100


def test_what_was_frozen_once_stays_as_it_was():
    recipe = replace(
        KNOB,
        blank=replace(KNOB.blank, density_kg_per_m3=650),
        finish=(Coat("walnut_oil", 24, on_the_lathe=True, spread_cm2_per_ml=120),),
    )

    assert frozen(recipe) == recipe
    assert frozen(frozen(KNOB)) == frozen(KNOB)


@pytest.mark.parametrize("species", ["unknown", "no_such_wood", "balsam_fir"])
def test_what_no_table_prints_stays_empty(species):
    recipe = replace(KNOB, blank=replace(KNOB.blank, species=species), finish=(Coat("mystery", 1, True),))

    assert frozen(recipe) == recipe


def test_a_second_blank_is_filled_in_too():
    second = BlankNeed("lid", "A lid", SlabBlank("walnut_black", inches("3"), inches("1")))
    filled = frozen(replace(BOWL, materials=(second,))).materials[0]

    assert isinstance(filled, BlankNeed)
    assert filled.blank
    assert filled.blank.density_kg_per_m3 == 616
