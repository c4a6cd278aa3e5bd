"""Checks of the piece: its wood, whether it comes out of its blank, what it is parted from."""

from __future__ import annotations

from collections.abc import Iterator

from club.base.quantities.length import Length
from projects.geometry.blank import Allowances, containing_blank
from projects.library.domain.blank import NOT_NAMED, Blank
from projects.library.domain.drawings import drawings
from projects.library.domain.findings import Finding, mind, refused
from projects.library.domain.holding import BetweenCentres
from projects.library.domain.materials import BlankNeed
from projects.library.domain.recipe import Recipe
from projects.library.domain.species import Woods
from projects.library.domain.words import Operation

PARTED = frozenset({Operation.PARTING_OFF, Operation.TRIMMING})


def wood_findings(recipe: Recipe, woods: Woods) -> Iterator[Finding]:
    yield from _wood(recipe.blank, "blank", woods)
    for place, need in enumerate(recipe.materials):
        if isinstance(need, BlankNeed) and need.blank is not None:
            yield from _wood(need.blank, f"materials[{place}].blank", woods)


def _wood(blank: Blank, at: str, woods: Woods) -> Iterator[Finding]:
    key = blank.species
    if key == NOT_NAMED:
        yield mind("wood_not_named", f"{at}.species")
    elif not woods.knows(key):
        yield refused("unknown_species", f"{at}.species", species=key)
    elif any(note.forbids for note in woods.health(key).notes):
        yield refused("wood_not_turned", f"{at}.species", species=key)


def size_findings(recipe: Recipe) -> Iterator[Finding]:
    """Each drawing comes out of the blank, with what is left at its ends.

    Where parts are glued on, the blank isn't all the wood there is, and somebody has to look at it.
    """
    give = mind if recipe.glue_ups else refused
    has = recipe.blank.size
    ends = sum(end.length.nm for end in (recipe.left_end, recipe.right_end) if end)
    for at, drawn in drawings(recipe):
        needs = containing_blank(drawn.profile(), has.form, Allowances(holding=ends))
        if needs.across > has.across:
            yield give("blank_too_thin", at, needs=Length(needs.across), has=Length(has.across))
        if needs.length > has.length:
            yield give("blank_too_short", at, needs=Length(needs.length), has=Length(has.length))


def parting_findings(recipe: Recipe) -> Iterator[Finding]:
    """A piece that is parted off, or marked by centres, has a nub or tenon that takes the cut."""
    parted = any(step.operation in PARTED for step in recipe.steps())
    marked = any(isinstance(mounting.holding, BetweenCentres) for mounting in recipe.mountings)
    if (parted or marked) and recipe.left_end is None and recipe.right_end is None:
        yield refused("nothing_to_part_from", "left_end")
