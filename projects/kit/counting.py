"""How many kits a class needs: one for each student, one for each demonstration, and the spares."""

from __future__ import annotations

from dataclasses import dataclass

from projects.library.domain.materials import SpareCount, Spares


@dataclass(frozen=True)
class Heads:
    """Who makes a piece: the students, and whoever shows how. ValueError for fewer than nobody."""

    students: int
    demonstrations: int = 1

    def __post_init__(self) -> None:
        if min(self.students, self.demonstrations) < 0:
            raise ValueError("a number of people is never below nought")

    @property
    def all(self) -> int:
        return self.students + self.demonstrations


@dataclass(frozen=True)
class Kits:
    """`all` is what is cut, glued up and packed; `heads` is what is finished."""

    heads: Heads
    spares: int

    @property
    def all(self) -> int:
        return self.heads.all + self.spares


def kits_for(heads: Heads, spares: Spares) -> Kits:
    """Spares are a count, or a percentage of all heads rounded up; a class of nobody needs none.

    12 students, 1 demonstration and 10 % make 13 + 2 = 15.
    """
    if heads.all == 0:
        return Kits(heads, 0)
    if isinstance(spares, SpareCount):
        return Kits(heads, spares.count)
    return Kits(heads, ceil_div(heads.all * spares.percent, 100))


def ceil_div(amount: int, by: int) -> int:
    """Whole division, rounded up."""
    return -(-amount // by)
