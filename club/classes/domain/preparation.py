"""What has to be begun when, so that all is ready as the class begins: counted back from it.

A date is the latest for its own job alone: where two fall in the same hours and one pair of hands does both,
one of them has to be earlier.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from graphlib import TopologicalSorter
from zoneinfo import ZoneInfo

from club.classes.domain.errors import ClassError
from club.classes.domain.local_time import local
from club.classes.domain.opening_hours import latest_work
from club.lathes.domain.opening_hours import Opening, check_openings
from projects.library.domain.check_plan import circle_in
from projects.library.domain.preparation import GlueUp, Task
from projects.library.domain.recipe import Recipe


@dataclass(frozen=True)
class Job:
    """`minutes` of hands-on work for the class, then `wait` minutes that pass by themselves."""

    key: str
    title: str
    minutes: int
    wait: int = 0
    people: int = 1
    after: tuple[str, ...] = ()


def jobs_of(recipe: Recipe, pieces: int) -> tuple[Job, ...]:
    """Tasks and glue-ups for so many pieces, students', demonstration and spares together.

    Raises less_than_none.
    """
    if pieces < 0:
        raise ClassError("less_than_none", wanted=pieces)
    tasks = (_of_task(task, pieces) for task in recipe.preparation)
    return (*tasks, *(_of_glue_up(glue_up, pieces) for glue_up in recipe.glue_ups))


def needs_material(recipe: Recipe) -> frozenset[str]:
    """Keys of what can't be begun before the material is there: all that is done piece by piece."""
    tasks = (task.key for task in recipe.preparation if task.for_each_piece)
    return frozenset((*tasks, *(glue_up.key for glue_up in recipe.glue_ups)))


def _of_task(task: Task, pieces: int) -> Job:
    minutes = task.minutes * (pieces if task.for_each_piece else 1)
    return Job(task.key, task.title, minutes, task.lead_hours * 60, task.people, task.after)


def _of_glue_up(glue_up: GlueUp, pieces: int) -> Job:
    """Glue cures from when it is put on, in the clamps as well, so the longer of the two is the wait."""
    wait = max(glue_up.clamp_minutes, glue_up.cure_hours * 60)
    return Job(glue_up.key, glue_up.title, glue_up.minutes * pieces, wait, glue_up.people, glue_up.after)


@dataclass(frozen=True)
class DatedJob:
    """In UTC: begun by, hands off by, and by when the wait behind it is over.

    `then` is the job that needs it first, or None where that is the class.
    """

    job: Job
    start_by: datetime
    done_by: datetime
    ready_by: datetime
    then: str | None


@dataclass(frozen=True)
class LateJob:
    """`days` by the calendar of the workshop; 0 is earlier today."""

    job: Job
    days: int


@dataclass(frozen=True)
class Preparation:
    """Every job with its dates, the first to begin first; `zone` is the workshop's."""

    jobs: tuple[DatedJob, ...]
    zone: ZoneInfo

    @property
    def longest_chain(self) -> tuple[DatedJob, ...]:
        """From the job that has to be begun first, each for the next one, to the class."""
        by_key = {dated.job.key: dated for dated in self.jobs}
        chain: list[DatedJob] = list(self.jobs[:1])
        while chain and (key := chain[-1].then) is not None:
            chain.append(by_key[key])
        return tuple(chain)

    def late(self, now: datetime, done: Collection[str] = ()) -> tuple[LateJob, ...]:
        """What should have been begun before now (UTC) and isn't done."""
        today = local(now, self.zone).date()
        return tuple(
            LateJob(dated.job, (today - local(dated.start_by, self.zone).date()).days)
            for dated in self.jobs
            if dated.start_by < now and dated.job.key not in done
        )


def preparation(
    jobs: Iterable[Job], class_begins: datetime, zone: ZoneInfo, openings: Collection[Opening] = ()
) -> Preparation:
    """Counts back from the class's beginning (UTC) through waits, work and opening hours.

    Work lies within the openings, or at any hour where there are none; waits run on when doors are shut.
    Raises unknown_task, tasks_in_a_circle, too_long_beforehand, and OpeningError for openings that overlap.
    """
    by_key = {job.key: job for job in jobs}
    _check(by_key)
    check_openings(openings)
    dated: dict[str, DatedJob] = {}
    for key in _last_first(by_key):
        needing = [later for later in dated.values() if key in later.job.after]
        first = min(needing, key=lambda later: later.start_by, default=None)
        ready_by = first.start_by if first else class_begins
        start, end = _work(by_key[key], ready_by, openings, zone)
        dated[key] = DatedJob(by_key[key], start, end, ready_by, first.job.key if first else None)
    # Turned round first, so that of jobs that take no time those stand first that others need.
    in_order = list(dated.values())[::-1]
    in_order.sort(key=lambda each: each.start_by)
    return Preparation(tuple(in_order), zone)


def with_order(
    plan: Preparation, order: Job, class_begins: datetime, needing: Collection[str]
) -> Preparation:
    """The plan with an order that has come before the first of the jobs that need it, or before the class.

    An order goes out from anywhere at any hour, so it waits for no doors; delivery is its wait.
    """
    first = next((dated for dated in plan.jobs if dated.job.key in needing), None)
    ready_by = first.start_by if first else class_begins
    done_by = ready_by - timedelta(minutes=order.wait)
    start_by = done_by - timedelta(minutes=order.minutes)
    ordered = DatedJob(order, start_by, done_by, ready_by, first.job.key if first else None)
    return Preparation(tuple(sorted((ordered, *plan.jobs), key=lambda each: each.start_by)), plan.zone)


def _work(
    job: Job, ready_by: datetime, openings: Collection[Opening], zone: ZoneInfo
) -> tuple[datetime, datetime]:
    try:
        return latest_work(ready_by - timedelta(minutes=job.wait), job.minutes, openings, zone)
    except ClassError as error:
        raise ClassError(error.code, key=job.key) from error


def _check(by_key: dict[str, Job]) -> None:
    for job in by_key.values():
        for key in job.after:
            if key not in by_key:
                raise ClassError("unknown_task", key=key, wanted_by=job.key)
    if circle := circle_in({job.key: job.after for job in by_key.values()}):
        raise ClassError("tasks_in_a_circle", keys=circle)


def _last_first(by_key: dict[str, Job]) -> tuple[str, ...]:
    """Keys so that each stands behind all that need it."""
    return tuple(TopologicalSorter({job.key: job.after for job in by_key.values()}).static_order())[::-1]
