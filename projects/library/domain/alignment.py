"""Which of several things kept their order, so that as few as can be are said to have moved."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence


def kept_in_order(pairs: Sequence[tuple[int, int]]) -> set[int]:
    """New places of a longest run that is in order in both lists; `pairs` are (old, new), by old place."""
    ends: list[int] = []
    runs: list[tuple[int, ...]] = []
    for _old, new in pairs:
        place = bisect_left(ends, new)
        run = (*(runs[place - 1] if place else ()), new)
        ends[place:] = [new, *ends[place + 1 :]]
        runs[place:] = [run, *runs[place + 1 :]]
    return set(runs[-1]) if runs else set()
