"""What has to be ordered for a class, and how long it takes to come."""

from __future__ import annotations

from dataclasses import dataclass

from club.classes.kit_totals import ClassTotals


@dataclass(frozen=True)
class Ordering:
    """`slowest` is the supplier who takes longest, `days` how long; `missing` counts what nobody sells."""

    packs: int = 0
    suppliers: tuple[str, ...] = ()
    slowest: str = ""
    days: int = 0
    missing: int = 0

    @property
    def is_needed(self) -> bool:
        return bool(self.packs or self.missing)


def ordering_of(found: ClassTotals) -> Ordering:
    orders = found.totals.orders
    sellers = [found.stocked.sellers[order.supplier.key] for order in orders]
    slowest = max(sellers, key=lambda seller: seller.delivery_days, default=None)
    return Ordering(
        packs=sum(bought.count for order in orders for bought in order.bought),
        suppliers=tuple(sorted(seller.name for seller in sellers)),
        slowest=slowest.name if slowest else "",
        days=slowest.delivery_days if slowest else 0,
        missing=sum(not line.complete for line in found.totals.lines),
    )
