"""Hatching of cut faces: lines at 45 degrees, clipped in geometry so that paper shows them too."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import ceil, sqrt

from club.base.drawing.shapes import Kind, Line, Point


def hatched(outline: Sequence[Point], pitch: float, *, falling: bool = False) -> tuple[Line, ...]:
    """Hatch lines inside a closed outline, `pitch` mm apart; rising to the right, or falling.

    Even-odd rule, so the outline may run in either sense.
    """
    way = -1.0 if falling else 1.0
    # On a line x + way * y = c; c grows by pitch * sqrt(2) from one line to the next.
    turned = [(x + way * y, x, y) for x, y in outline]
    step = pitch * sqrt(2)
    low, high = min(c for c, _, _ in turned), max(c for c, _, _ in turned)
    first = ceil(low / step)
    rows = range(first, ceil(high / step))
    return tuple(line for row in rows for line in _row(turned, row * step + 1e-7))


def _row(turned: Sequence[tuple[float, float, float]], c: float) -> list[Line]:
    crossings = sorted(
        point
        for (c1, x1, y1), (c2, x2, y2) in pairwise([*turned, turned[0]])
        if (c1 <= c) != (c2 <= c)
        for point in [_between((x1, y1), (x2, y2), (c - c1) / (c2 - c1))]
    )
    pairs = zip(crossings[::2], crossings[1::2], strict=True)
    return [Line(*start, *end, Kind.HATCH) for start, end in pairs]


def _between(start: Point, end: Point, share: float) -> Point:
    return (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
