"""Two ways to fill one stick with pieces that are still to be cut; neither has to be the best one."""

from __future__ import annotations

from collections import Counter

from projects.kit.sawing import Saw, longest_first

# Fillings kept while the fullest is looked for; beyond it the emptiest are forgotten.
MOST_KEPT = 500


def first_fit(left: Counter[int], room: int, saw: Saw) -> tuple[int, ...]:
    """Whatever still fits, the longest first."""
    pieces = []
    for piece in longest_first(left):
        count = min(left[piece], max(room, 0) // saw.taken(piece))
        room -= count * saw.taken(piece)
        pieces += [piece] * count
    return tuple(pieces)


def fullest(left: Counter[int], room: int, saw: Saw) -> tuple[int, ...]:
    """The least of the stick left over; of equal fillings the one with longer pieces."""
    fillings: dict[int, tuple[int, ...]] = {0: ()}
    for piece in longest_first(left):
        taken = saw.taken(piece)
        for used, pieces in list(fillings.items()):
            for count in range(1, min(left[piece], (room - used) // taken) + 1):
                fillings.setdefault(used + count * taken, pieces + (piece,) * count)
        if len(fillings) > MOST_KEPT:
            fillings = {used: fillings[used] for used in sorted(fillings, reverse=True)[:MOST_KEPT]}
    return fillings[max(fillings)]
