"""Which rooms and people a new class would need while another one has them.

Comparison is by real time, so classes of workshops in two zones are set side by side rightly. The way from
one workshop to another isn't counted: a class may begin elsewhere the minute another ends.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import timedelta
from enum import StrEnum

from club.classes.domain.local_time import ClassHours

MINUTE = timedelta(minutes=1)


class ClashKind(StrEnum):
    """Room and people: wanted twice at once. Turnaround: the room is free, but not long enough between."""

    ROOM = "room"
    TURNAROUND = "turnaround"
    PERSON = "person"


@dataclass(frozen=True)
class Planned:
    """A class as far as it takes room and people. `key` is None while it hasn't been saved."""

    key: int | None
    workshop: int
    hours: ClassHours
    people: frozenset[int] = frozenset()


@dataclass(frozen=True)
class Clash:
    """`other` is the key of the class in the way, `minutes` how many both want, or the turnaround lacks."""

    kind: ClashKind
    other: int | None
    minutes: int
    person: int | None = None


def clashes(new: Planned, others: Iterable[Planned], turnaround: int = 0) -> tuple[Clash, ...]:
    """Every clash, by the other's beginning. `turnaround` is the minutes a room needs between two classes.

    A class that was saved before is not in its own way. Cancelled classes are not to be handed in.
    """
    rest = [other for other in others if new.key is None or other.key != new.key]
    rest.sort(key=lambda other: (other.hours.begins, other.key or 0))
    return tuple(clash for other in rest for clash in _with_one(new, other, turnaround))


def _with_one(new: Planned, other: Planned, turnaround: int) -> Iterator[Clash]:
    gap = minutes_between(new.hours, other.hours)
    if new.workshop == other.workshop and gap < 0:
        yield Clash(ClashKind.ROOM, other.key, -gap)
    elif new.workshop == other.workshop and gap < turnaround:
        yield Clash(ClashKind.TURNAROUND, other.key, turnaround - gap)
    if gap < 0:
        for person in sorted(new.people & other.people):
            yield Clash(ClashKind.PERSON, other.key, -gap, person)


def minutes_between(one: ClassHours, other: ClassHours) -> int:
    """From the end of the earlier to the beginning of the later; negative is what both last together."""
    gap = max(one.begins, other.begins) - min(one.ends, other.ends)
    # Rounded down: a part of a minute in common is a clash.
    return gap // MINUTE
