"""Mountings in their order, and what is done in each, step by step."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from club.base.quantities.length import Length
from projects.library.domain.bounds import Above, Key, Line, Many, MaybePassage, Minutes, Passage
from projects.library.domain.holding import Holding, Tailstock
from projects.library.domain.words import Operation, Spindle, Stage, Tool


@dataclass(frozen=True)
class DrillHole:
    """What is drilled on the lathe: a hole of this diameter, this deep."""

    diameter: Annotated[Length, Above()]
    depth: Annotated[Length, Above()]


@dataclass(frozen=True)
class Step:
    """One thing to do. `key` stays the same from edition to edition, wherever the step moves.

    `stage` is what the speed is chosen for, none where the lathe stands. `rest_gap` is how far the tool rest
    stands from the work, none where it is out of the way. `checkpoint` says what has to be true before going
    on, `watch` what to look out for; `skill` is the key of the skill taught here.
    """

    key: Key
    text: Passage
    operation: Operation
    spindle: Spindle
    minutes: Minutes
    tool: Tool | None = None
    stage: Stage | None = None
    rest_gap: Annotated[Length, Above()] | None = None
    may_be_left_out: bool = False
    checkpoint: MaybePassage = ""
    watch: MaybePassage = ""
    skill: Key | None = None
    hole: DrillHole | None = None

    @property
    def runs(self) -> bool:
        return self.spindle is not Spindle.STOPPED


@dataclass(frozen=True)
class Mounting:
    """One way the work is held, and the steps done so. `minutes` is what putting it on takes.

    `stands_out` is how far the work stands out of what holds it. The piece sits as it is drawn, or turned
    round with its right end at the headstock.
    """

    key: Key
    title: Line
    holding: Holding
    stands_out: Annotated[Length, Above()]
    minutes: Minutes
    steps: Annotated[tuple[Step, ...], Many(60, least=1)]
    tailstock: Tailstock | None = None
    turned_round: bool = False

    def steps_without_tailstock(self) -> tuple[Step, ...]:
        """The steps that are done with the tailstock away from the work."""
        if self.tailstock is None:
            return self.steps
        keys = [step.key for step in self.steps]
        away_from = self.tailstock.away_from
        return self.steps[keys.index(away_from) :] if away_from in keys else ()
