"""Checks of the steps, one by one: tool, operation, lathe running or not, and the tailstock."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from projects.library.domain.findings import Finding, mind, refused
from projects.library.domain.holding import BetweenCentres
from projects.library.domain.mountings import Mounting, Step
from projects.library.domain.operations import (
    CUTTING_TOOLS,
    MAY_RUN,
    NEED_FREE_END,
    STAGES,
    TURNING,
    WITHOUT_REST,
)
from projects.library.domain.recipe import Recipe
from projects.library.domain.words import Operation, Tool

# Operations that mean nothing on work that stands still. Sanding by hand, along the grain, is done so.
ALWAYS_RUN = frozenset({*STAGES} - {Operation.SANDING})


def step_findings(recipe: Recipe) -> Iterator[Finding]:
    """Whatever is wrong with a step, each finding with the numbers of mounting and step from 1."""
    for place, mounting in enumerate(recipe.mountings):
        for number, step in enumerate(mounting.steps):
            at = f"mountings[{place}].steps[{number}]"
            values = {"mounting": place + 1, "step": number + 1}
            if recipe.blank.grain_across and step.tool is Tool.SPINDLE_ROUGHING_GOUGE:
                yield refused("roughing_gouge_on_face_work", f"{at}.tool", **values)
            for check in CHECKS:
                yield from check(step, at, values)
        yield from _tailstock(mounting, place)


def _running(step: Step, at: str, values: dict[str, int]) -> Iterator[Finding]:
    """Finish is put on with the lathe stopped; what is measured or mounted stands still."""
    if step.operation is Operation.FINISHING and step.runs:
        yield refused("finishing_while_running", f"{at}.spindle", **values)
    elif step.runs and step.operation not in MAY_RUN:
        yield mind("should_stand_still", f"{at}.spindle", operation=step.operation, **values)
    elif not step.runs and step.operation in ALWAYS_RUN:
        yield mind("should_run", f"{at}.spindle", operation=step.operation, **values)


def _stage(step: Step, at: str, values: dict[str, int]) -> Iterator[Finding]:
    """Without the right stage a step would get no speed, or one of another stage."""
    if not step.runs:
        if step.stage is not None:
            yield mind("stage_while_stopped", f"{at}.stage", stage=step.stage, **values)
    elif step.stage is None:
        yield refused("no_stage", f"{at}.stage", **values)
    elif step.operation in STAGES and step.stage not in STAGES[step.operation]:
        fault = {"stage": step.stage, "operation": step.operation}
        yield refused("stage_unlike_operation", f"{at}.stage", **fault, **values)


def _rest(step: Step, at: str, values: dict[str, int]) -> Iterator[Finding]:
    if step.operation in WITHOUT_REST and step.runs and step.rest_gap is not None:
        yield refused("rest_in_the_way", f"{at}.rest_gap", operation=step.operation, **values)
    if step.operation in TURNING and step.runs and step.rest_gap is None:
        yield mind("no_rest_gap", f"{at}.rest_gap", operation=step.operation, **values)


def _tool(step: Step, at: str, values: dict[str, int]) -> Iterator[Finding]:
    if step.operation in TURNING and step.tool not in CUTTING_TOOLS:
        yield mind("no_cutting_tool", f"{at}.tool", operation=step.operation, **values)
    if step.operation is Operation.DRILLING and step.hole is None:
        yield mind("no_hole", f"{at}.hole", **values)


CHECKS: tuple[Callable[[Step, str, dict[str, int]], Iterator[Finding]], ...] = (
    _running,
    _stage,
    _rest,
    _tool,
)


def _tailstock(mounting: Mounting, place: int) -> Iterator[Finding]:
    """The tailstock stays up until a step cannot be done with it; nothing before that is done without it."""
    if isinstance(mounting.holding, BetweenCentres) and _lets_go(mounting):
        # Common practice, and plain statics: between two centres one of them alone holds nothing.
        yield refused("between_one_centre", f"mountings[{place}].tailstock", mounting=place + 1)
        return
    without = [
        step for step in mounting.steps_without_tailstock() if step.runs or step.operation in NEED_FREE_END
    ]
    if not without or without[0].operation in NEED_FREE_END:
        return
    needed = next((step for step in without if step.operation in NEED_FREE_END), None)
    numbers = {step.key: number for number, step in enumerate(mounting.steps, start=1)}
    yield mind(
        "tailstock_away_early",
        f"mountings[{place}].tailstock",
        mounting=place + 1,
        step=numbers[without[0].key],
        needed_from=numbers[needed.key] if needed else None,
    )


def _lets_go(mounting: Mounting) -> bool:
    """Whether the lathe runs with no centre in the tailstock, or none was ever said to be there."""
    return mounting.tailstock is None or any(step.runs for step in mounting.steps_without_tailstock())
