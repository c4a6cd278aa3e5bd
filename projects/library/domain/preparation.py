"""What has to be done before the class: glue-ups that cure, and tasks that wait for each other."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, TypeAlias

from projects.library.domain.bounds import Hours, Key, Line, Many, MaybePassage, Minutes, Whole

# Keys of tasks or glue-ups that have to be done before.
After: TypeAlias = Annotated[tuple[Key, ...], Many(20)]
People: TypeAlias = Annotated[int, Whole(1, 20)]


@dataclass(frozen=True)
class GlueUp:
    """Parts glued together: the keys of the needs they come from, and of the glue.

    `minutes` is hands-on time for each one, `clamp_minutes` how long it is clamped, `cure_hours` how long it
    rests before it may be turned.
    """

    key: Key
    title: Line
    parts: Annotated[tuple[Key, ...], Many(20, least=2)]
    adhesive: Key
    minutes: Minutes
    clamp_minutes: Annotated[int, Whole(0, 10_080)]
    cure_hours: Hours
    people: People = 1
    after: After = ()
    watch: MaybePassage = ""


@dataclass(frozen=True)
class Task:
    """Something to do beforehand. `minutes` is hands-on time for the class, or for each piece.

    `lead_hours` is what has to pass after it: drying, delivery.
    """

    key: Key
    title: Line
    minutes: Minutes
    for_each_piece: bool = False
    lead_hours: Hours = 0
    people: People = 1
    after: After = ()
    watch: MaybePassage = ""
