"""Values of the tables written into an edition when it is frozen, so that later tables don't change it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from projects.library.domain.blank import Blank
from projects.library.domain.coats import Coat
from projects.library.domain.finishes import Finish
from projects.library.domain.materials import BlankNeed, Need
from projects.library.domain.recipe import Recipe
from projects.library.domain.species import Woods

# 1 m²/l is 10 cm²/ml.
CM2_PER_ML = 10


def with_table_values(recipe: Recipe, woods: Woods, finishes: Mapping[str, Finish]) -> Recipe:
    """The recipe with density and spread filled in wherever they are empty and a table has them.

    Spread is the least of the table's range: then the finish bought is enough.
    """
    return replace(
        recipe,
        blank=_dense(recipe.blank, woods),
        finish=tuple(_spread(coat, finishes) for coat in recipe.finish),
        materials=tuple(_material(need, woods) for need in recipe.materials),
    )


def _dense(blank: Blank, woods: Woods) -> Blank:
    species = woods.species.get(blank.species)
    density = species.density_dry if species else None
    if density is None or blank.density_kg_per_m3 is not None:
        return blank
    return replace(blank, density_kg_per_m3=_nearest(density.value))


def _material(need: Need, woods: Woods) -> Need:
    if isinstance(need, BlankNeed) and need.blank is not None:
        return replace(need, blank=_dense(need.blank, woods))
    return need


def _spread(coat: Coat, finishes: Mapping[str, Finish]) -> Coat:
    finish = finishes.get(coat.finish)
    spread = finish.spread if finish else None
    if spread is None or coat.spread_cm2_per_ml is not None:
        return coat
    return replace(coat, spread_cm2_per_ml=int(spread.least * CM2_PER_ML))


def _nearest(value: Fraction) -> int:
    return int(value + Fraction(1, 2))
