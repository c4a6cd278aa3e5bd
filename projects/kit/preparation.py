"""Until when the work before a class has to be begun, counted back from the class through the opening hours.

Times are datetimes of one zone or of UTC; whoever calls knows the workshop's zone and what is open when.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from graphlib import TopologicalSorter

from projects.kit.counting import Kits
from projects.library.domain.preparation import GlueUp, Task
from projects.library.domain.recipe import Recipe

NONE = timedelta(0)


@dataclass(frozen=True)
class Job:
    """`hands_on` is work for the whole class, `wait` passes after it whether open or not: cure, delivery."""

    key: str
    hands_on: timedelta
    wait: timedelta
    after: tuple[str, ...] = ()
    people: int = 1


@dataclass(frozen=True)
class Opening:
    """The workshop is open from `start` to `end`."""

    start: datetime
    end: datetime


@dataclass(frozen=True)
class Dated:
    """A job with its latest times; None where it would have to begin before the first opening known.

    `holds_up` is the job that has to begin right after, "" where that is the class itself.
    """

    job: Job
    start_by: datetime | None
    finish_by: datetime | None
    holds_up: str = ""

    def late(self, now: datetime) -> timedelta:
        """How long ago it had to be begun; nought while there is time, or where no time is known."""
        return max(now - self.start_by, NONE) if self.start_by else NONE


def jobs_of(recipe: Recipe, kits: Kits) -> tuple[Job, ...]:
    """Glue-ups are done for every kit; the clamp comes off while the glue cures, so the longer one counts."""
    return (
        *(_task(task, kits) for task in recipe.preparation),
        *(_glue_up(glue_up, kits) for glue_up in recipe.glue_ups),
    )


def _task(task: Task, kits: Kits) -> Job:
    minutes = task.minutes * (kits.all if task.for_each_piece else 1)
    return Job(
        task.key, timedelta(minutes=minutes), timedelta(hours=task.lead_hours), task.after, task.people
    )


def _glue_up(glue_up: GlueUp, kits: Kits) -> Job:
    wait = max(timedelta(minutes=glue_up.clamp_minutes), timedelta(hours=glue_up.cure_hours))
    minutes = timedelta(minutes=glue_up.minutes * kits.all)
    return Job(glue_up.key, minutes, wait, glue_up.after, glue_up.people)


def dated(jobs: Sequence[Job], class_starts: datetime, openings: Sequence[Opening]) -> tuple[Dated, ...]:
    """The latest times of every job, the first to begin first, those without a time before all.

    Work may go on at the next opening, a wait goes on through the night. Reckoned as if there were always
    people enough for jobs that don't wait for each other. Raises graphlib.CycleError for jobs that wait for
    each other in a ring.

    With 24 h of cure before a class on Thursday at 18:30, 45 minutes of gluing begin on Wednesday at 17:45.
    """
    by_key = {job.key: job for job in jobs}
    before = {key: [each for each in job.after if each in by_key] for key, job in by_key.items()}
    found: dict[str, Dated] = {}
    for key in reversed(tuple(TopologicalSorter(before).static_order())):
        found[key] = _dated(by_key[key], class_starts, openings, found)
    timeless = sorted(key for key, each in found.items() if each.start_by is None)
    timed = sorted((each.start_by, key) for key, each in found.items() if each.start_by is not None)
    return tuple(found[key] for key in (*timeless, *(key for _, key in timed)))


def _dated(
    job: Job, class_starts: datetime, openings: Sequence[Opening], found: Mapping[str, Dated]
) -> Dated:
    waiting = [each for each in found.values() if job.key in each.job.after]
    if any(each.start_by is None for each in waiting):
        blocked = next(each for each in waiting if each.start_by is None)
        return Dated(job, None, None, blocked.job.key)
    starts = [(each.start_by, each.job.key) for each in waiting if each.start_by is not None]
    needed_by, holds_up = min(starts, default=(class_starts, ""))
    start, finish = _back(job.hands_on, needed_by - job.wait, openings)
    return Dated(job, start, finish, holds_up)


def _back(
    hands_on: timedelta, by: datetime, openings: Sequence[Opening]
) -> tuple[datetime | None, datetime | None]:
    """When so much work has to begin and end at the latest, to be done by then."""
    finish = None
    for opening in sorted(openings, key=lambda each: each.end, reverse=True):
        end = min(opening.end, by)
        if end < opening.start or (end == opening.start and hands_on):
            continue
        finish = finish or end
        if end - opening.start >= hands_on:
            return end - hands_on, finish
        hands_on -= end - opening.start
    return None, finish


def longest_chain(found: Sequence[Dated]) -> tuple[str, ...]:
    """Keys of the jobs that have to begin first and hold up each other, up to the class."""
    return tuple(_chain(found[0], {each.job.key: each for each in found})) if found else ()


def _chain(first: Dated, by_key: Mapping[str, Dated]) -> Iterator[str]:
    each: Dated | None = first
    while each is not None:
        yield each.job.key
        each = by_key.get(each.holds_up)
