"""The order of work as page and paper show it: mountings, steps with speeds, cautions where they belong."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass

from django.utils.translation import gettext as _

from club.base.quantities.length import Length
from club.base.quantities.shown import thousands
from projects.library.domain.mountings import Step
from projects.library.domain.operations import CUTTING_TOOLS, TURNING, WITHOUT_REST
from projects.library.domain.recipe import Recipe
from projects.library.domain.speeds import StepLimit, step_limits
from projects.library.domain.words import Moment, Operation, Spindle
from projects.library.sentences.holding import holding_words, tailstock_words
from projects.library.sentences.materials import skill_words
from projects.library.sentences.words import word_for
from projects.library.sentences.workings import speed_worked_out
from safety.topics.always_said import SaidMoment

Show = Callable[[Length], str]

# Before which step a moment's cautions are said; marking and checking are no moment of their own.
MOMENTS: Mapping[Operation, Moment] = {
    Operation.MOUNTING: Moment.MOUNTING,
    Operation.DRILLING: Moment.DRILLING,
    Operation.SANDING: Moment.SANDING,
    Operation.POLISHING: Moment.SANDING,
    Operation.FINISHING: Moment.FINISHING,
    Operation.FRICTION_BURNING: Moment.TURNING,
    **dict.fromkeys(TURNING, Moment.TURNING),
}


@dataclass(frozen=True)
class WorkStep:
    """One step with what a hand sets for it; `before` is said before it is begun."""

    number: int
    step: Step
    name: str
    tool: str
    speed: str
    worked_out: str
    gap: str
    teaches: str
    before: tuple[SaidMoment, ...]


@dataclass(frozen=True)
class MountingWork:
    number: int
    title: str
    held: str
    tailstock: str
    stands_out: str
    steps: tuple[WorkStep, ...]


@dataclass(frozen=True)
class OrderOfWork:
    """`first` is said before any step, `last` when the work is done."""

    first: tuple[SaidMoment, ...]
    mountings: tuple[MountingWork, ...]
    last: tuple[SaidMoment, ...]


def order_of_work(recipe: Recipe, said: Iterable[SaidMoment], show: Show) -> OrderOfWork:
    """Each moment once, before its first step; what no step belongs to is said at the head."""
    waiting = {each.moment: each for each in said}
    leaving = waiting.pop(Moment.LEAVING, None)
    met = {MOMENTS.get(step.operation) for step in recipe.steps()}
    first = tuple(waiting.pop(moment) for moment in list(waiting) if moment not in met)
    steps = _work_steps(recipe, waiting, show)
    titles = {step.key: _step_title(number) for number, step in enumerate(recipe.steps(), 1)}
    mountings = tuple(
        MountingWork(
            number,
            mounting.title,
            holding_words(mounting.holding, show),
            tailstock_words(mounting, titles),
            show(mounting.stands_out),
            tuple(next(steps) for _step in mounting.steps),
        )
        for number, mounting in enumerate(recipe.mountings, 1)
    )
    return OrderOfWork(first, mountings, (leaving,) if leaving else ())


def _step_title(number: int) -> str:
    return _("step %(number)s") % {"number": number}


def _work_steps(recipe: Recipe, waiting: dict[Moment, SaidMoment], show: Show) -> Iterator[WorkStep]:
    """Every step in its order; takes out of `waiting` what is said before it."""
    for number, (step, limit) in enumerate(zip(recipe.steps(), step_limits(recipe), strict=True), 1):
        moment = MOMENTS.get(step.operation)
        said = waiting.pop(moment, None) if moment else None
        yield WorkStep(
            number=number,
            step=step,
            name=word_for(step.operation),
            # Sandpaper for sanding goes without saying.
            tool=word_for(step.tool) if step.tool and step.tool in CUTTING_TOOLS else "",
            speed=_speed(step, limit),
            worked_out=speed_worked_out(limit, show) if limit and limit.rpm else "",
            gap=_gap(step, show),
            teaches=skill_words(step.skill) if step.skill else "",
            before=(said,) if said else (),
        )


def _speed(step: Step, limit: StepLimit | None) -> str:
    if limit is None:
        return _("stopped")
    if limit.rpm is None:
        return _("lowest")
    values = {"rpm": thousands(limit.rpm)}
    if step.spindle is Spindle.REVERSE:
        return _("in reverse, not above %(rpm)s") % values
    return _("not above %(rpm)s") % values


def _gap(step: Step, show: Show) -> str:
    if step.rest_gap is not None:
        return show(step.rest_gap)
    return _("rest off") if step.operation in WITHOUT_REST and step.runs else ""
