"""Costs below which no cutting plan can come, whatever the plan.

Give every length a weight. No stick holds more weight than its heaviest filling, so the sticks bought have to
cover what is left of all weight when the shelf has given the most it can; a cover by whole packs is exact.
The weights taken: the lengths with their cuts, and for each length "1 for a piece at least as long".
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from projects.kit.offers import Pack
from projects.kit.packs import least_cost
from projects.kit.sawing import Saw, Stick

# Fillings of one stick looked at before its room is taken instead, which is never less.
MOST_FILLINGS = 5_000


def least_sticks_cost(demand: Counter[int], sticks: Sequence[Stick], saw: Saw) -> int:
    """The best of these bounds on what is paid, in minor units."""
    by_length = {piece: saw.taken(piece) for piece in demand}
    counts = ({piece: int(piece >= least) for piece in demand} for least in demand)
    return max(
        (_bound(demand, weights, sticks, saw) for weights in (by_length, *counts)),
        default=0,
    )


def _bound(demand: Counter[int], weights: Mapping[int, int], sticks: Sequence[Stick], saw: Saw) -> int:
    need = sum(weights[piece] * count for piece, count in demand.items())
    packs = []
    for stick in sticks:
        most = heaviest(demand, weights, saw.room(stick.length), saw)
        if stick.limit is None:
            packs.append(Pack(stick.key, stick.supplier, most, stick.price))
        else:
            need -= most * stick.limit
    return least_cost(need, packs)


def heaviest(demand: Counter[int], weights: Mapping[int, int], room: int, saw: Saw) -> int:
    """The most weight that pieces of the demand have in one stick with this room, or something above it."""
    fillings = {0: 0}
    for piece in sorted(demand, reverse=True):
        fillings = _with_piece(fillings, saw.taken(piece), weights[piece], demand[piece], room)
        if len(fillings) > MOST_FILLINGS:
            return _by_room(demand, weights, room, saw)
    return max(fillings.values())


def _with_piece(fillings: dict[int, int], taken: int, weight: int, most: int, room: int) -> dict[int, int]:
    """Room used and the most weight in it, with up to `most` of one piece added."""
    wider = dict(fillings)
    for used, weighs in fillings.items():
        for count in range(1, min(most, (room - used) // taken) + 1):
            place = used + count * taken
            wider[place] = max(wider.get(place, 0), weighs + count * weight)
    return wider


def _by_room(demand: Counter[int], weights: Mapping[int, int], room: int, saw: Saw) -> int:
    """As if every bit of the stick could be filled with the piece that weighs most for its length."""
    return max(max(room, 0) * weights[piece] // saw.taken(piece) for piece in demand)
