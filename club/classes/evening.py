"""The evening of a class by the clock on the wall, part by part, and what does not fit into it."""

from __future__ import annotations

from dataclasses import dataclass

from club.classes.domain.time_plan import Part, PartKind, TimePlan, time_plan
from club.classes.models import ClassSession
from club.classes.preparing_sentences import part_words
from club.classes.sentences import clock_words


@dataclass(frozen=True)
class EveningPart:
    """`begins` and `ends` are what the clock shows; `part` has them in minutes of the class, to scale."""

    words: str
    begins: str
    ends: str
    part: Part

    @property
    def at_lathes(self) -> bool:
        return self.part.kind is PartKind.HANDS_ON


@dataclass(frozen=True)
class Evening:
    """`ends` is when the class ends, `done` when all of its parts have had their time."""

    plan: TimePlan
    parts: tuple[EveningPart, ...]
    ends: str
    done: str

    @property
    def length(self) -> int:
        """Minutes of the scale: what the class has, or needs where that is more."""
        return max(self.plan.available, self.plan.needed)


def evening_of(session: ClassSession) -> Evening:
    plan = time_plan(session.edition.recipe.time, session.sittings, session.minutes)
    parts = tuple(_part(session, part) for part in plan.parts if part.minutes)
    return Evening(plan, parts, clock_at(session, session.minutes), clock_at(session, plan.needed))


def _part(session: ClassSession, part: Part) -> EveningPart:
    return EveningPart(
        part_words(part, session.sittings),
        clock_at(session, part.begins),
        clock_at(session, part.ends),
        part,
    )


def clock_at(session: ClassSession, minutes: int) -> str:
    """What the clock in the workshop shows so many minutes after the class begins."""
    return clock_words(session.hours.clock(minutes).time())


def sitting_clocks(session: ClassSession) -> dict[int, str]:
    """When hands come on in each sitting, by its number."""
    plan = time_plan(session.edition.recipe.time, session.sittings, session.minutes)
    sittings = range(1, session.sittings + 1)
    return {sitting: clock_at(session, plan.sitting_begins(sitting)) for sitting in sittings}
