"""Sticks, the pieces cut from them, and the plan of the cuts; lengths in nanometres."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True)
class Saw:
    """`kerf` is the width of a cut, `trim` what is cut off a stick's ends all told, its cuts with it."""

    kerf: int
    trim: int = 0

    def room(self, length: int) -> int:
        """What `taken` of the pieces may add up to, since the last piece needs no cut behind it."""
        return length - self.trim + self.kerf

    def taken(self, piece: int) -> int:
        return piece + self.kerf

    def fits(self, piece: int, length: int) -> int:
        """How many pieces one stick gives: n pieces and n - 1 cuts.

        36 in give 5 pieces of 6 in with a kerf of 1/8: 36 1/8 over 6 1/8, rounded down.
        """
        return max(self.room(length) // self.taken(piece), 0)


@dataclass(frozen=True)
class Stick:
    """Length stock of one kind; on the shelf it has a limit and no price."""

    key: str
    length: int
    price: int = 0
    supplier: str = ""
    limit: int | None = None

    @property
    def on_shelf(self) -> bool:
        return self.limit is not None


@dataclass(frozen=True)
class CutStick:
    """One stick and the pieces that come out of it, the longest first."""

    stick: Stick
    pieces: tuple[int, ...]

    def rest(self, saw: Saw) -> int:
        """The offcut behind the last cut, nought where nothing is left."""
        return max(self.stick.length - saw.trim - sum(map(saw.taken, self.pieces)), 0)

    def is_possible(self, saw: Saw) -> bool:
        return sum(map(saw.taken, self.pieces)) <= saw.room(self.stick.length)


@dataclass(frozen=True)
class CuttingPlan:
    """`bound` is a proved least cost of the bought sticks; `unplaced` are pieces no stick is left for."""

    sticks: tuple[CutStick, ...]
    bound: int
    unplaced: tuple[int, ...] = ()

    @property
    def bought(self) -> tuple[CutStick, ...]:
        return tuple(cut for cut in self.sticks if not cut.stick.on_shelf)

    @property
    def cost(self) -> int:
        return sum(cut.stick.price for cut in self.sticks)

    @property
    def proved_least(self) -> bool:
        return not self.unplaced and self.cost == self.bound

    @property
    def pieces(self) -> Counter[int]:
        return Counter(piece for cut in self.sticks for piece in cut.pieces)


def longest_first(pieces: Iterable[int]) -> tuple[int, ...]:
    return tuple(sorted(pieces, reverse=True))
