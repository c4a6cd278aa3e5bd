"""Plans for cutting pieces from sticks, with the bound that says how far from the least cost they may be.

One length is solved exactly: a stick gives so many pieces whatever else happens, so buying is a cover by
whole packs. Several lengths are filled by simple rules and the cheapest of their plans is taken; it can be
cut as it stands, and it says whether its cost is proved to be the least.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from projects.kit.bounds import least_sticks_cost
from projects.kit.filling import first_fit, fullest
from projects.kit.offers import Pack
from projects.kit.packs import cheapest_packs
from projects.kit.sawing import CutStick, CuttingPlan, Saw, Stick, longest_first

Filling = Callable[[Counter[int], int, Saw], tuple[int, ...]]


def cutting_plan(demand: Mapping[int, int], sticks: Sequence[Stick], saw: Saw) -> CuttingPlan:
    """How to cut so many pieces of each length; pieces that no stick is left for stay unplaced.

    Sticks on the shelf come first, where that saves anything. Every cut plan holds to its sticks' lengths,
    kerfs and trimmed ends. `bound` is 0 while pieces are unplaced.

    15 pieces of 2 1/4 in come from one stick of 36 in with a kerf of 1/16 and 1/8 trimmed off.
    """
    wanted = Counter({length: count for length, count in demand.items() if count > 0})
    fitting = {length for length in wanted if any(saw.fits(length, stick.length) for stick in sticks)}
    placeable = Counter({length: wanted[length] for length in fitting})
    too_long = (wanted - placeable).elements()
    plan = _one_length(placeable, sticks, saw) if len(placeable) == 1 else _mixed(placeable, sticks, saw)
    unplaced = longest_first((*plan.unplaced, *too_long))
    return replace(plan, bound=0 if unplaced else plan.bound, unplaced=unplaced)


def _one_length(demand: Counter[int], sticks: Sequence[Stick], saw: Saw) -> CuttingPlan:
    ((piece, need),) = demand.items()
    gives = {stick: saw.fits(piece, stick.length) for stick in sticks}
    shelf = [stick for stick in _on_shelf(sticks) if gives[stick]]
    offered = {
        Pack(stick.key, stick.supplier, gives[stick], stick.price): stick for stick in _offered(sticks)
    }
    purchase = cheapest_packs(need - sum(gives[stick] for stick in shelf), list(offered))
    bought = [offered[each.pack] for each in purchase.bought for _ in range(each.count)]
    used = _fewest(shelf, gives, need - purchase.holds)
    cuts, left = _share_out(piece, need, [*used, *bought], gives)
    return CuttingPlan(cuts, purchase.bound, (piece,) * left)


def _fewest(shelf: Sequence[Stick], gives: Mapping[Stick, int], need: int) -> list[Stick]:
    """The fewest sticks of the shelf that give so many pieces, the last one the shortest that still does."""
    ordered = sorted(shelf, key=lambda stick: (-gives[stick], stick.length, stick.key))
    used: list[Stick] = []
    while need > 0 and ordered:
        enough = [stick for stick in ordered if gives[stick] >= need]
        chosen = ordered[0]
        if enough:
            chosen = min(enough, key=lambda stick: (gives[stick], stick.length, stick.key))
        ordered.remove(chosen)
        used.append(chosen)
        need -= gives[chosen]
    return used


def _share_out(
    piece: int, need: int, sticks: Sequence[Stick], gives: Mapping[Stick, int]
) -> tuple[tuple[CutStick, ...], int]:
    cuts = []
    for stick in sticks:
        count = min(gives[stick], need)
        need -= count
        cuts.append(CutStick(stick, (piece,) * count))
    return tuple(cut for cut in cuts if cut.pieces), need


def _mixed(demand: Counter[int], sticks: Sequence[Stick], saw: Saw) -> CuttingPlan:
    plans = [
        _filled(demand, sticks, saw, filling, main)
        for filling in (fullest, first_fit)
        for main in (*_offered(sticks), None)
    ]
    best = min(plans, key=lambda plan: (len(plan.unplaced), plan.cost, len(plan.sticks)))
    if best.unplaced:
        return best
    return replace(best, bound=least_sticks_cost(demand, sticks, saw))


def _offered(sticks: Sequence[Stick]) -> tuple[Stick, ...]:
    return tuple(stick for stick in sticks if not stick.on_shelf)


def _on_shelf(sticks: Sequence[Stick]) -> tuple[Stick, ...]:
    """Each as often as it lies there, the shortest first."""
    ordered = sorted(sticks, key=lambda stick: (stick.length, stick.key))
    return tuple(stick for stick in ordered for _ in range(stick.limit or 0))


def _filled(
    demand: Counter[int], sticks: Sequence[Stick], saw: Saw, filling: Filling, main: Stick | None
) -> CuttingPlan:
    """The shelf's sticks filled first, then sticks of one kind, or each time the best value for money."""
    left, cuts, offered = Counter(demand), [], _offered(sticks)
    scarce = {piece for piece in demand if not any(saw.fits(piece, stick.length) for stick in offered)}
    for stick in _on_shelf(sticks):
        cuts += _cut(left, stick, _shelf_filling(left, scarce, saw.room(stick.length), saw, filling))
    while left and (chosen := _next(left, offered, saw, filling, main)):
        for _ in range(_times(left, chosen[1])):
            cuts += _cut(left, *chosen)
    return CuttingPlan(tuple(cuts), 0, longest_first(left.elements()))


def _shelf_filling(
    left: Counter[int], scarce: set[int], room: int, saw: Saw, filling: Filling
) -> tuple[int, ...]:
    """Pieces that only the shelf has a stick for go first."""
    first = filling(Counter({piece: left[piece] for piece in scarce if left[piece]}), room, saw)
    others = Counter({piece: count for piece, count in left.items() if piece not in scarce})
    return first + filling(others, room - sum(map(saw.taken, first)), saw)


def _cut(left: Counter[int], stick: Stick, pieces: tuple[int, ...]) -> list[CutStick]:
    """Take the pieces off what is left to cut."""
    left -= Counter(pieces)
    return [CutStick(stick, pieces)] if pieces else []


def _next(
    left: Counter[int], offered: Sequence[Stick], saw: Saw, filling: Filling, main: Stick | None
) -> tuple[Stick, tuple[int, ...]] | None:
    """The cheapest stick that takes all that is left; else the main one; else the least paid for a length."""
    room = sum(saw.taken(piece) * count for piece, count in left.items())
    last = [stick for stick in offered if room <= saw.room(stick.length)]
    if last:
        cheapest = min(last, key=lambda stick: (stick.price, stick.length))
        return cheapest, longest_first(left.elements())
    serves_main = main and any(saw.fits(piece, main.length) for piece in left)
    tried = [main] if main and serves_main else offered
    filled = [(stick, filling(left, saw.room(stick.length), saw)) for stick in tried]
    useful = [each for each in filled if each[1]]
    return min(useful, key=lambda each: _paid_for_length(*each), default=None)


def _times(left: Counter[int], pieces: tuple[int, ...]) -> int:
    """How often the same filling is cut at once: as often as it can be, but for the last time."""
    counts = Counter(pieces)
    return max(min(left[piece] // count for piece, count in counts.items()) - 1, 1)


def _paid_for_length(stick: Stick, pieces: tuple[int, ...]) -> tuple[float, int]:
    # Only an order to try things in: no number of a plan comes from it.
    return stick.price / sum(pieces), stick.length
