"""What one piece needs, by specification; which article of the stores meets it is the stores' affair."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar, TypeAlias

from club.base.quantities.area import Area
from club.base.quantities.length import Length
from club.base.quantities.volume import Volume
from projects.library.domain.blank import Blank
from projects.library.domain.bounds import Above, Count, Key, Line, Percent, Whole
from projects.library.domain.words import Glue


@dataclass(frozen=True)
class LengthNeed:
    """Pieces cut from length stock: dowel, square, rod. `across` is its diameter or side as it is sold."""

    kind: ClassVar[str] = "length_stock"

    key: Key
    specification: Line
    across: Annotated[Length, Above()]
    length: Annotated[Length, Above()]
    count: Count = 1


@dataclass(frozen=True)
class BlankNeed:
    """Blanks cut from boards or slabs: the project's own, or another one for a second part."""

    kind: ClassVar[str] = "blank"

    key: Key
    specification: Line
    blank: Blank | None = None
    count: Count = 1


@dataclass(frozen=True)
class PieceNeed:
    """Things bought by the piece: corks, ferrules, hinges."""

    kind: ClassVar[str] = "piece"

    key: Key
    specification: Line
    count: Count = 1


@dataclass(frozen=True)
class SheetNeed:
    """Pieces cut from sheets: sandpaper of a P grade, or another sheet when `grit` is empty."""

    kind: ClassVar[str] = "sheet"

    key: Key
    specification: Line
    width: Annotated[Length, Above()]
    length: Annotated[Length, Above()]
    grit: Annotated[int, Whole(1, 10_000)] | None = None
    count: Count = 1


@dataclass(frozen=True)
class LiquidNeed:
    """A finish, its coats as scheduled, its area from the drawing; `in_cloth` is what stays in the cloth."""

    kind: ClassVar[str] = "liquid"

    key: Key
    specification: Line
    finish: Key
    in_cloth: Annotated[Volume, Above()] | None = None


@dataclass(frozen=True)
class AdhesiveNeed:
    """Glue on this area: so many grams on a square metre, and what is lost besides."""

    kind: ClassVar[str] = "adhesive"

    key: Key
    specification: Line
    glue: Glue
    area: Annotated[Area, Above()]
    grams_per_m2: Annotated[int, Whole(1, 5_000)]
    loss_percent: Percent = 0


@dataclass(frozen=True)
class ConsumedNeed:
    """What a head uses up: respirators, paper towels."""

    kind: ClassVar[str] = "consumed"

    key: Key
    specification: Line
    count: Count = 1


Need: TypeAlias = LengthNeed | BlankNeed | PieceNeed | SheetNeed | LiquidNeed | AdhesiveNeed | ConsumedNeed


@dataclass(frozen=True)
class SpareCount:
    """So many spare kits for a class, however large."""

    kind: ClassVar[str] = "count"

    count: Annotated[int, Whole(0, 100)]


@dataclass(frozen=True)
class SparePercent:
    """So many spare kits in a hundred, rounded up to whole ones."""

    kind: ClassVar[str] = "percent"

    percent: Percent


Spares: TypeAlias = SpareCount | SparePercent
