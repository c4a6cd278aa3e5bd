"""Whole packs that cover a need at the least cost, exact over sizes and suppliers.

The search goes from the whole need to nought, always on from what has cost least so far (Dijkstra, Numerische
Mathematik 1, 1959), so the first cover it meets is a cheapest one.
"""

from __future__ import annotations

from collections.abc import Sequence
from heapq import heappop, heappush
from math import gcd

from projects.kit.counting import ceil_div
from projects.kit.offers import Pack, Purchase, counted

# Some tenths of a second; needs of a class stay far below.
MOST_STATES = 50_000


def cheapest_packs(need: int, packs: Sequence[Pack]) -> Purchase:
    """The cheapest purchase that covers the need; of equal ones one supplier's, then the least left over.

    `need` and what packs hold are in one unit. With no pack that holds anything all of it is missing. Where
    the search grows too large the purchase covers all the same and says by its bound that it isn't proved.

    15 from packs of 4 at 1.00 and of 10 at 2.20 are 2 packs of 4 and 1 of 10, 4.20.
    """
    useful = sorted(
        {pack for pack in packs if pack.holds > 0}, key=lambda pack: (-pack.holds, pack.price, pack.article)
    )
    if need <= 0 or not useful:
        return Purchase(missing=max(need, 0))
    best = _search(need, useful)
    alone = [
        _search(need, [pack for pack in useful if pack.supplier == supplier])
        for supplier in sorted({pack.supplier for pack in useful})
        if len(best.suppliers) > 1
    ]
    equal = [each for each in alone if each.cost <= best.cost]
    chosen = min(equal, key=lambda each: (each.cost, each.holds, each.packs), default=best)
    return Purchase(chosen.bought, best.bound)


def least_cost(need: int, packs: Sequence[Pack]) -> int:
    """A cost below which these packs can't cover the need; exact unless the search grows too large."""
    useful = [pack for pack in packs if pack.holds > 0]
    return _search(need, useful).bound if need > 0 and useful else 0


def _search(need: int, packs: Sequence[Pack]) -> Purchase:
    unit = gcd(*(pack.holds for pack in packs))
    left = ceil_div(need, unit)
    came: dict[int, tuple[int, Pack]] = {}
    costs = {left: 0}
    # Cost, left over, still to cover: at equal cost whatever isn't covered yet goes on first.
    heap = [(0, -1, left)]
    while heap and len(costs) < MOST_STATES:
        cost, over, state = heappop(heap)
        if over >= 0:
            return Purchase(counted(_way(left, state, came)), cost)
        if cost > costs[state]:
            continue
        for pack in packs:
            rest, total = state - pack.holds // unit, cost + pack.price
            if total < costs.get(rest, total + 1):
                costs[rest], came[rest] = total, (state, pack)
                heappush(heap, (total, max(-rest, -1) if rest <= 0 else -1, rest))
    return _unproved(need, packs)


def _way(start: int, state: int, came: dict[int, tuple[int, Pack]]) -> list[Pack]:
    way = []
    while state != start:
        state, pack = came[state]
        way.append(pack)
    return way


def _unproved(need: int, packs: Sequence[Pack]) -> Purchase:
    """The cheapest cover by one kind of pack, and the bound of parts of packs."""
    covers = [counted([pack] * ceil_div(need, pack.holds)) for pack in packs]
    cheapest = min(covers, key=lambda bought: sum(each.cost for each in bought))
    return Purchase(cheapest, min(ceil_div(need * pack.price, pack.holds) for pack in packs))
