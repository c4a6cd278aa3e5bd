"""What turns in each step of a recipe: the largest that the work swings there, and the drill's bit."""

from __future__ import annotations

from dataclasses import dataclass

from club.base.quantities.length import Length
from projects.geometry.blank import largest_nm
from projects.library.domain.blank import RoundBlank, SquareBlank
from projects.library.domain.drawings import check_drawings, drawings
from projects.library.domain.errors import RecipeError
from projects.library.domain.mountings import Step
from projects.library.domain.recipe import Recipe
from projects.library.domain.words import Operation, Stage


@dataclass(frozen=True)
class StepDiameters:
    """`swings` is the largest the work swings, corners included while it is not round; `bit` is a drill's."""

    swings: Length
    is_round: bool
    bit: Length | None = None


def step_diameters(recipe: Recipe) -> tuple[StepDiameters, ...]:
    """For each step in the order of work. Nothing is round before a roughing step has gone by.

    A square swings its diagonal until then. Round work is taken to swing what it was cut from, whatever has
    been turned off it since: a limit is never too high for that. A rod that no step roughs counts as round.
    """
    across = _across(recipe)
    swung = Length(max(across.nm, recipe.blank.size.roughing_diameter))
    rough = across if swung == across else swung
    roughed = _is_rod(recipe)
    found = []
    for step in recipe.steps():
        is_round = roughed and step.stage is not Stage.ROUGH
        bit = step.hole.diameter if step.hole else None
        found.append(StepDiameters(across if is_round else rough, is_round, bit))
        roughed = roughed or _roughs(step)
    return tuple(found)


def _roughs(step: Step) -> bool:
    return step.runs and (step.stage is Stage.ROUGH or step.operation is Operation.ROUGHING)


def _is_rod(recipe: Recipe) -> bool:
    return isinstance(recipe.blank, RoundBlank) and not any(_roughs(step) for step in recipe.steps())


def _across(recipe: Recipe) -> Length:
    """Of the round blank. Where parts are glued on, the piece may be thicker than its blank."""
    blank = recipe.blank
    own = blank.side if isinstance(blank, SquareBlank) else blank.diameter
    try:
        check_drawings(recipe)
    except RecipeError:
        return own
    largest = max(largest_nm(drawn.profile()) for _path, drawn in drawings(recipe))
    return own if largest <= own.nm else Length(largest)
