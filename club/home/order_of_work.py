"""The order of work as page and paper show it: mountings, steps with speeds, cautions where they belong."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from django.utils.translation import gettext as _

from club.base.quantities.shown import thousands
from club.home.said_where import SaidWhere
from projects.library.domain.keys import skill_words
from projects.library.domain.mountings import Step
from projects.library.domain.operations import CUTTING_TOOLS, WITHOUT_REST
from projects.library.domain.recipe import Recipe
from projects.library.domain.speeds import StepLimit, step_limits
from projects.library.domain.words import Spindle
from projects.library.sentences.holding import holding_words, tailstock_words
from projects.library.sentences.lengths import Show
from projects.library.sentences.words import word_for
from projects.library.sentences.workings import speed_worked_out
from safety.topics.always_said import SaidMoment


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
    """One mounting; `before` is said of its way of holding."""

    number: int
    title: str
    held: str
    tailstock: str
    stands_out: str
    before: tuple[SaidMoment, ...]
    steps: tuple[WorkStep, ...]


@dataclass(frozen=True)
class OrderOfWork:
    """`first` is said before any step, `last` when the work is done."""

    first: tuple[SaidMoment, ...]
    mountings: tuple[MountingWork, ...]
    last: tuple[SaidMoment, ...]


def order_of_work(recipe: Recipe, said: Iterable[SaidMoment], show: Show) -> OrderOfWork:
    """Every caution once: before the step or at the mounting that calls for it, else at the head."""
    where = SaidWhere(recipe, said)
    steps = _work_steps(recipe, where, show)
    titles = {step.key: _step_title(number) for number, step in enumerate(recipe.steps(), 1)}
    mountings = tuple(
        MountingWork(
            number,
            mounting.title,
            holding_words(mounting.holding, show),
            tailstock_words(mounting, titles),
            show(mounting.stands_out),
            where.before_mounting(number - 1),
            tuple(next(steps) for _step in mounting.steps),
        )
        for number, mounting in enumerate(recipe.mountings, 1)
    )
    return OrderOfWork(where.first, mountings, where.last)


def _step_title(number: int) -> str:
    return _("step %(number)s") % {"number": number}


def _work_steps(recipe: Recipe, where: SaidWhere, show: Show) -> Iterator[WorkStep]:
    """Every step in its order, with what is said before it."""
    for number, (step, limit) in enumerate(zip(recipe.steps(), step_limits(recipe), strict=True), 1):
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
            before=where.before_step(step.operation),
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
