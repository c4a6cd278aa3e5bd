"""One lesson recipe: everything from which drawing, handout, kit, dates and fit are worked out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, TypeAlias

from club.base.quantities.length import Length
from projects.library.domain.blank import Blank
from projects.library.domain.bounds import Above, Key, Line, Many, Minutes, Passage, Whole
from projects.library.domain.coats import Coat
from projects.library.domain.drawn import DrawnProfile
from projects.library.domain.materials import Need, Spares
from projects.library.domain.mountings import Mounting, Step
from projects.library.domain.preparation import GlueUp, Task
from projects.library.domain.words import EndKind, Moment, Severity

# P grades of ISO 6344 in the order they are used: (120, 180, 240).
Grits: TypeAlias = Annotated[tuple[Annotated[int, Whole(1, 10_000)], ...], Many(12)]


@dataclass(frozen=True)
class End:
    """What is left at an end of the piece to hold it by until it is parted or turned off there."""

    kind: EndKind
    diameter: Annotated[Length, Above()]
    length: Annotated[Length, Above()]


@dataclass(frozen=True)
class ClassTime:
    """Minutes of a class; hands-on and change-over are for each sitting."""

    briefing: Minutes
    demonstration: Minutes
    hands_on: Minutes
    change_over: Minutes
    clean_up: Minutes


@dataclass(frozen=True)
class Caution:
    """Something this project needs said besides the rules that are always said."""

    moment: Moment
    severity: Severity
    text: Passage


@dataclass(frozen=True)
class Variant:
    """The same blank made easier or harder: which steps fall away, and the drawing where it differs."""

    title: Line
    text: Passage
    leaves_out: Annotated[tuple[Key, ...], Many(60)] = ()
    profile: DrawnProfile | None = None


@dataclass(frozen=True)
class Recipe:
    """An edition's content. `key` is the project's own name, the same in every edition.

    The piece is drawn with its headstock end on the left; `left_end` and `right_end` are what is left there.
    `skills` are keys of what somebody must have been signed off for before this class.
    """

    key: Key
    title: Line
    summary: Passage
    blank: Blank
    profile: DrawnProfile
    mountings: Annotated[tuple[Mounting, ...], Many(10, least=1)]
    spares: Spares
    time: ClassTime
    left_end: End | None = None
    right_end: End | None = None
    grits: Grits = ()
    finish: Annotated[tuple[Coat, ...], Many(12)] = ()
    glue_ups: Annotated[tuple[GlueUp, ...], Many(20)] = ()
    preparation: Annotated[tuple[Task, ...], Many(40)] = ()
    materials: Annotated[tuple[Need, ...], Many(60)] = ()
    skills: Annotated[tuple[Key, ...], Many(20)] = ()
    cautions: Annotated[tuple[Caution, ...], Many(20)] = ()
    food_ware: bool = False
    easier: Variant | None = None
    harder: Variant | None = None

    def steps(self) -> Iterator[Step]:
        """Every step, in the order of work."""
        for mounting in self.mountings:
            yield from mounting.steps
