"""What meets a need: what of it is free on the shelf, and what suppliers sell; all in whole base units.

Whatever is promised to an earlier class, or not fit for use, is left out by whoever fills these in.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from projects.kit.offers import Pack
from projects.kit.sawing import Saw, Stick

# A collet grips its nominal size and 0.1 mm less; common practice, and a setting.
GRIPS_UNDER = 100_000
# Wood that has dried in a heated room; common practice, and a setting.
DRY_PERCENT = 15


@dataclass(frozen=True)
class CountSupply:
    """Things by the piece, liquids in nanolitres, glue in nanograms: so many on the shelf, and packs."""

    on_shelf: int = 0
    packs: tuple[Pack, ...] = ()


@dataclass(frozen=True)
class Sheet:
    """Width and length in nanometres."""

    width: int
    length: int


@dataclass(frozen=True)
class SheetPack:
    """So many sheets in a pack."""

    article: str
    supplier: str
    sheet: Sheet
    sheets: int
    price: int


@dataclass(frozen=True)
class SheetSupply:
    """`pieces` are cut already; `sheets` are whole, each entry one sheet."""

    pieces: int = 0
    sheets: tuple[Sheet, ...] = ()
    packs: tuple[SheetPack, ...] = ()


@dataclass(frozen=True)
class HeldStick:
    """One stick on the shelf; `across` is its diameter as measured, None while nobody has."""

    key: str
    length: int
    across: int | None = None


@dataclass(frozen=True)
class StickSupply:
    """`grips_under` is how much under its size a collet still grips; it never grips a thicker stick."""

    saw: Saw
    shelf: tuple[HeldStick, ...] = ()
    offers: tuple[Stick, ...] = ()
    grips_under: int = GRIPS_UNDER


@dataclass(frozen=True)
class BlankLot:
    """Blanks cut already; `moisture_percent` is None while nobody has measured it."""

    key: str
    count: int
    moisture_percent: int | None = None


@dataclass(frozen=True)
class Board:
    """A board, or a square, with the grain along its length; sizes as they measure, in nanometres."""

    key: str
    thickness: int
    width: int
    length: int
    price: int = 0
    supplier: str = ""
    moisture_percent: int | None = None


@dataclass(frozen=True)
class BlankSupply:
    """`shelf` are boards lying there, each entry one; wood above `dry_percent` isn't counted."""

    saw: Saw
    lots: tuple[BlankLot, ...] = ()
    shelf: tuple[Board, ...] = ()
    offers: tuple[Board, ...] = ()
    dry_percent: int = DRY_PERCENT


Supply: TypeAlias = CountSupply | SheetSupply | StickSupply | BlankSupply
