"""Several classes served from the same shelves, one after the other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from projects.kit.amounts import Soak
from projects.kit.counting import Heads
from projects.kit.offers import Supplier
from projects.kit.promised import NO_ARTICLES, Articles, left_for
from projects.kit.supplies import Supply
from projects.kit.totals import USUAL_SOAK, Totals, totals
from projects.library.domain.recipe import Recipe


@dataclass(frozen=True)
class ClassKit:
    """What one class is to make. The keys of its needs are unlike those of any other class."""

    recipe: Recipe
    heads: Heads


def with_own_keys(recipe: Recipe, prefix: str) -> Recipe:
    """The recipe with `prefix` before the key of each need."""
    return replace(
        recipe, materials=tuple(replace(need, key=f"{prefix}{need.key}") for need in recipe.materials)
    )


def in_turn(
    classes: Sequence[ClassKit],
    supplies: Mapping[str, Supply],
    suppliers: Sequence[Supplier] = (),
    articles: Articles = NO_ARTICLES,
    soak: Soak = USUAL_SOAK,
) -> Iterator[Totals]:
    """The totals of each class, from what the classes before it leave on the shelf.

    `supplies` are those of all their needs, as if each class were the first.
    """
    needs = {need.key: need for each in classes for need in each.recipe.materials}
    left = dict(supplies)
    for each in classes:
        own = {need.key: left[need.key] for need in each.recipe.materials if need.key in left}
        found = totals(each.recipe, each.heads, own, suppliers, soak, articles)
        for line in found.lines:
            left = left_for(left, line, needs, articles)
        yield found
