"""What suppliers sell and what is bought of it; money is in whole minor units of the one currency."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True)
class Supplier:
    """`delivery` is paid once for an order, `least_order` is what the goods have to come to."""

    key: str
    delivery: int = 0
    least_order: int = 0


@dataclass(frozen=True)
class Pack:
    """One pack as it is sold. `holds` is what it covers of a need: pieces, nanolitres or nanograms."""

    article: str
    supplier: str
    holds: int
    price: int


@dataclass(frozen=True)
class Bought:
    """So many of a pack."""

    pack: Pack
    count: int

    @property
    def cost(self) -> int:
        return self.count * self.pack.price


@dataclass(frozen=True)
class Purchase:
    """What is bought for one need. `bound` is a proved least cost; `missing` is what nobody sells of it."""

    bought: tuple[Bought, ...] = ()
    bound: int = 0
    missing: int = 0

    @property
    def cost(self) -> int:
        return sum(bought.cost for bought in self.bought)

    @property
    def holds(self) -> int:
        return sum(bought.count * bought.pack.holds for bought in self.bought)

    @property
    def packs(self) -> int:
        return sum(bought.count for bought in self.bought)

    @property
    def suppliers(self) -> frozenset[str]:
        return frozenset(bought.pack.supplier for bought in self.bought)

    @property
    def proved_least(self) -> bool:
        """Whether nothing cheaper can cover the need, delivery aside."""
        return not self.missing and self.cost == self.bound


def counted(packs: Iterable[Pack]) -> tuple[Bought, ...]:
    """The same packs with equal ones together, in the order of article and supplier."""
    counts: dict[Pack, int] = {}
    for pack in packs:
        counts[pack] = counts.get(pack, 0) + 1
    ordered = sorted(counts, key=lambda pack: (pack.article, pack.supplier, pack.holds, pack.price))
    return tuple(Bought(pack, counts[pack]) for pack in ordered)
