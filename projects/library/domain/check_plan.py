"""Checks of what surrounds the steps: time, preparation, sanding, finish, materials, variants."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from projects.library.domain.findings import Finding, mind, refused
from projects.library.domain.finishes import Finish
from projects.library.domain.grits import GritFault, StepLimits, ladder_findings
from projects.library.domain.materials import AdhesiveNeed, LiquidNeed, SheetNeed
from projects.library.domain.recipe import Recipe
from projects.library.domain.words import Glue

# Data sheets and school safety tests agree on a day before glued stock is turned; common practice.
USUAL_CURE_HOURS = {Glue.PVA: 24}


def work_findings(recipe: Recipe) -> Iterator[Finding]:
    """A lesson in which nothing is turned, or that needs nothing, is one that was only begun."""
    if not any(step.runs for step in recipe.steps()):
        yield refused("nothing_turned", "mountings")
    if not recipe.materials:
        yield mind("no_materials", "materials")


def time_findings(recipe: Recipe) -> Iterator[Finding]:
    """Hands-on minutes are those of the mountings and their steps together."""
    summed = sum(mounting.minutes for mounting in recipe.mountings) + sum(
        step.minutes for step in recipe.steps()
    )
    if summed != recipe.time.hands_on:
        yield mind("minutes_do_not_add_up", "time.hands_on", stated=recipe.time.hands_on, summed=summed)


def preparation_findings(recipe: Recipe) -> Iterator[Finding]:
    waits = {glue_up.key: glue_up.after for glue_up in recipe.glue_ups}
    waits |= {task.key: task.after for task in recipe.preparation}
    if circle := circle_in(waits):
        yield refused("tasks_in_a_circle", "preparation", keys=circle)
    glues = {need.key: need.glue for need in recipe.materials if isinstance(need, AdhesiveNeed)}
    for place, glue_up in enumerate(recipe.glue_ups):
        usual = USUAL_CURE_HOURS.get(glues.get(glue_up.adhesive, Glue.EPOXY), 0)
        if glue_up.cure_hours < usual:
            hours = {"hours": glue_up.cure_hours, "usual": usual}
            yield mind("cure_short", f"glue_ups[{place}].cure_hours", **hours)


def circle_in(waits: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """Keys that wait for each other in a circle, each for the next and the last for the first; or none."""
    done: set[str] = set()
    for start in waits:
        path: list[str] = [start]
        ways = [iter(waits[start])]
        while ways:
            ahead = next((key for key in ways[-1] if key in waits and key not in done), None)
            if ahead is None:
                done.add(path.pop())
                ways.pop()
            elif ahead in path:
                return tuple(path[path.index(ahead) :])
            else:
                path.append(ahead)
                ways.append(iter(waits[ahead]))
    return ()


def sanding_findings(recipe: Recipe, limits: StepLimits) -> Iterator[Finding]:
    for found in ladder_findings(recipe.grits, limits):
        give = mind if found.fault is GritFault.COARSE_STEP else refused
        values = {"grit": found.number, "before": found.before, "times_finer": found.times_finer}
        yield give(f"grit_{found.fault.value}", f"grits[{found.place}]", **values)
    bought = {need.grit for need in recipe.materials if isinstance(need, SheetNeed)}
    for place, number in enumerate(recipe.grits):
        if number not in bought:
            yield mind("grit_not_in_materials", f"grits[{place}]", grit=number)


def finish_findings(recipe: Recipe, finishes: Mapping[str, Finish]) -> Iterator[Finding]:
    bought = {need.finish for need in recipe.materials if isinstance(need, LiquidNeed)}
    for place, coat in enumerate(recipe.finish):
        if coat.finish not in finishes:
            yield refused("unknown_finish", f"finish[{place}].finish", finish=coat.finish)
        if coat.finish not in bought:
            yield mind("finish_not_in_materials", f"finish[{place}].finish", finish=coat.finish)
    for place, need in enumerate(recipe.materials):
        if isinstance(need, LiquidNeed) and need.finish not in finishes:
            yield refused("unknown_finish", f"materials[{place}].finish", finish=need.finish)


def variant_findings(recipe: Recipe) -> Iterator[Finding]:
    """A variant leaves out only what may be left out."""
    may = {step.key for step in recipe.steps() if step.may_be_left_out}
    for name, variant in (("easier", recipe.easier), ("harder", recipe.harder)):
        for place, key in enumerate(variant.leaves_out if variant else ()):
            if key not in may:
                yield refused("not_to_be_left_out", f"{name}.leaves_out[{place}]", step=key)
