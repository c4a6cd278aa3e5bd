"""How a class spends its minutes: briefing, demonstration, its sittings, clean-up; and whether they fit."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from projects.library.domain.mountings import Mounting
from projects.library.domain.recipe import ClassTime


class PartKind(StrEnum):
    BRIEFING = "briefing"
    DEMONSTRATION = "demonstration"
    HANDS_ON = "hands_on"
    CHANGE_OVER = "change_over"
    CLEAN_UP = "clean_up"


@dataclass(frozen=True)
class Part:
    """`begins` counts minutes from the beginning of the class; `sitting` from 1, or None where all are in."""

    kind: PartKind
    begins: int
    minutes: int
    sitting: int | None = None

    @property
    def ends(self) -> int:
        return self.begins + self.minutes


@dataclass(frozen=True)
class TimePlan:
    """The parts in their order, and the minutes the class has."""

    parts: tuple[Part, ...]
    available: int

    @property
    def needed(self) -> int:
        return sum(part.minutes for part in self.parts)

    @property
    def over(self) -> int:
        """Minutes too many, 0 where it fits."""
        return max(0, self.needed - self.available)

    @property
    def left(self) -> int:
        """Minutes to spare, 0 where there are none."""
        return max(0, self.available - self.needed)

    def sitting_begins(self, sitting: int) -> int:
        """When hands come on in this sitting, in minutes from the beginning of the class."""
        hands_on = (part for part in self.parts if part.kind is PartKind.HANDS_ON)
        return next(part.begins for part in hands_on if part.sitting == sitting)


def time_plan(time: ClassTime, sittings: int, available: int) -> TimePlan:
    """The plan of a class of `available` minutes. Every sitting is followed by its change-over.

    needed = briefing + demonstration + sittings x (hands-on + change-over) + clean-up, all in minutes.

    >>> time_plan(ClassTime(10, 20, 45, 5, 15), 2, 150).needed
    145
    """
    parts: list[Part] = []
    begins = 0
    for kind, minutes, sitting in _spans(time, sittings):
        parts.append(Part(kind, begins, minutes, sitting))
        begins += minutes
    return TimePlan(tuple(parts), available)


def _spans(time: ClassTime, sittings: int) -> Iterator[tuple[PartKind, int, int | None]]:
    yield PartKind.BRIEFING, time.briefing, None
    yield PartKind.DEMONSTRATION, time.demonstration, None
    for sitting in range(1, sittings + 1):
        yield PartKind.HANDS_ON, time.hands_on, sitting
        yield PartKind.CHANGE_OVER, time.change_over, sitting
    yield PartKind.CLEAN_UP, time.clean_up, None


def most_sittings(time: ClassTime, available: int) -> int | None:
    """How many sittings fit; 0 where not even one does, None where a sitting takes no time at all."""
    each = time.hands_on + time.change_over
    left = available - time.briefing - time.demonstration - time.clean_up
    if each == 0:
        return None if left >= 0 else 0
    return max(0, left // each)


@dataclass(frozen=True)
class Checkpoint:
    """What has to be true by `due`, in minutes from the beginning of the class."""

    step: str
    text: str
    sitting: int
    due: int


def checkpoints(plan: TimePlan, mountings: Iterable[Mounting], sittings: int) -> tuple[Checkpoint, ...]:
    """When each step that has a checkpoint should be done, sitting by sitting.

    It counts the minutes of mountings and steps as they are written, from where hands come on.
    """
    marked = tuple(_marked(mountings))
    return tuple(
        Checkpoint(step, text, sitting, plan.sitting_begins(sitting) + after)
        for sitting in range(1, sittings + 1)
        for step, text, after in marked
    )


def _marked(mountings: Iterable[Mounting]) -> Iterator[tuple[str, str, int]]:
    after = 0
    for mounting in mountings:
        after += mounting.minutes
        for step in mounting.steps:
            after += step.minutes
            if step.checkpoint:
                yield step.key, step.checkpoint, after
