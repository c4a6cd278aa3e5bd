"""How the work is held in a mounting, and what that needs of the lathe.

Tapers and threads are written as the lathes' room writes them (`MT2`, `1 1/4-8`, `M33x3.5`); an empty one
means whatever the lathe has. `rule_words` are the words by which safety rules know the way of holding.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated, ClassVar, TypeAlias

from club.base.quantities.length import Length
from projects.library.domain.bounds import Above, Key, Line, Text, Whole
from projects.library.domain.words import Centre, Drive, Grip

MaybeTaper: TypeAlias = Annotated[str, Text(3, least=0, pattern=r"^(?:MT[0-6])?(?![\s\S])")]
MaybeThread: TypeAlias = Annotated[str, Text(20, least=0)]
MaybeKey: TypeAlias = Key | None


@dataclass(frozen=True)
class BetweenCentres:
    """A drive in the headstock, a centre in the tailstock."""

    kind: ClassVar[str] = "between_centres"
    rule_words: ClassVar[frozenset[str]] = frozenset({"between_centres", "tailstock"})

    drive: Drive
    taper: MaybeTaper = ""
    drive_diameter: Annotated[Length, Above()] | None = None


@dataclass(frozen=True)
class Collet:
    """A collet in the headstock's taper, drawn in by a draw bar. `size` is what it grips."""

    kind: ClassVar[str] = "collet_drawbar"
    rule_words: ClassVar[frozenset[str]] = frozenset({"collet_drawbar"})

    size: Annotated[Length, Above()]
    grip_length: Annotated[Length, Above()]
    taper: MaybeTaper = ""
    thread: MaybeThread = ""


@dataclass(frozen=True)
class Mandrel:
    """A mandrel in the headstock's taper, held by a draw bar; the bored work is clamped on it."""

    kind: ClassVar[str] = "mandrel_drawbar"
    rule_words: ClassVar[frozenset[str]] = frozenset({"mandrel_drawbar"})

    diameter: Annotated[Length, Above()]
    length: Annotated[Length, Above()]
    taper: MaybeTaper = ""
    thread: MaybeThread = ""


@dataclass(frozen=True)
class TaperOnly:
    """What sits in the headstock's taper with no draw bar behind it; the tailstock has to keep it there."""

    kind: ClassVar[str] = "morse_taper_only"
    rule_words: ClassVar[frozenset[str]] = frozenset({"morse_taper_only"})

    taper: MaybeTaper = ""


@dataclass(frozen=True)
class ScrollChuck:
    """Jaws on a tenon or in a recess of this diameter and length (depth)."""

    kind: ClassVar[str] = "scroll_chuck"
    rule_words: ClassVar[frozenset[str]] = frozenset({"scroll_chuck"})

    jaws: Line
    grip: Grip
    diameter: Annotated[Length, Above()]
    length: Annotated[Length, Above()]
    dovetail: bool = False
    nose_thread: MaybeThread = ""


@dataclass(frozen=True)
class ScrewChuck:
    """One screw into a hole of this diameter and depth, the work seated against the chuck's face."""

    kind: ClassVar[str] = "screw_chuck"
    rule_words: ClassVar[frozenset[str]] = frozenset({"screw_chuck"})

    hole_diameter: Annotated[Length, Above()]
    hole_depth: Annotated[Length, Above()]
    nose_thread: MaybeThread = ""


@dataclass(frozen=True)
class Faceplate:
    """So many screws of this length through a faceplate of this diameter."""

    kind: ClassVar[str] = "faceplate"
    rule_words: ClassVar[frozenset[str]] = frozenset({"faceplate"})

    diameter: Annotated[Length, Above()]
    screws: Annotated[int, Whole(3, 12)]
    screw_length: Annotated[Length, Above()]
    nose_thread: MaybeThread = ""


class JamIn(StrEnum):
    """What the jam chuck itself, a turned piece of waste wood, is held in."""

    SCROLL_CHUCK = "scroll_chuck"
    FACEPLATE = "faceplate"
    SCREW_CHUCK = "screw_chuck"
    COLLET = "collet_drawbar"


@dataclass(frozen=True)
class JamChuck:
    """The work pressed into or over waste wood turned to this diameter. Rules know it by what holds that."""

    kind: ClassVar[str] = "jam_chuck"

    held_in: JamIn
    diameter: Annotated[Length, Above()]
    nose_thread: MaybeThread = ""

    @property
    def rule_words(self) -> frozenset[str]:
        return frozenset({self.held_in.value})


Holding: TypeAlias = (
    BetweenCentres | Collet | Mandrel | TaperOnly | ScrollChuck | ScrewChuck | Faceplate | JamChuck
)


@dataclass(frozen=True)
class Tailstock:
    """The tailstock against the work: until the step `away_from` begins, or to the end when there is none."""

    centre: Centre
    away_from: MaybeKey = None
    taper: MaybeTaper = ""
