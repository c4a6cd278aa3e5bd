"""What a line of a kit takes off the shelf, and what of it goes back there."""

from __future__ import annotations

from dataclasses import dataclass

from projects.kit.supplies import BlankLot, Board, Sheet


@dataclass(frozen=True)
class CutHeld:
    """One stick of the shelf by its key and length; `rest` goes back, nought where nothing is left."""

    key: str
    length: int
    rest: int


@dataclass(frozen=True)
class FromLot:
    """So many blanks of a lot."""

    lot: BlankLot
    count: int


@dataclass(frozen=True)
class CutBoard:
    """One board and the blanks that come out of it; `rest` is how long what goes back is."""

    board: Board
    blanks: int
    rest: int


@dataclass(frozen=True)
class Taken:
    """`count` is of things counted, poured and glued, and of pieces torn already; `sheets` are whole ones,
    and `over` are the pieces of these sheets that the line doesn't need."""

    count: int = 0
    sheets: tuple[Sheet, ...] = ()
    over: int = 0
    sticks: tuple[CutHeld, ...] = ()
    lots: tuple[FromLot, ...] = ()
    boards: tuple[CutBoard, ...] = ()


NOTHING = Taken()
