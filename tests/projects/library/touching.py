"""Whether anything in a drawing touches a text: another text, a line, a filled arrow, or the edge."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, pairwise
from math import hypot

from club.base.drawing.lettering import Lettering, Mark
from club.base.drawing.shapes import Box, Circle, Fill, Kind, Line, Point, Polyline, Rect
from club.base.drawing.sheet import Drawing


def touched_texts(drawing: Drawing) -> list[str]:
    """What touches what, in words; empty for a drawing that reads."""
    texts = drawing.letterings
    lines = [mark for mark in drawing.marks if not isinstance(mark, Lettering)]
    found = [f"{a.words} on {b.words}" for a, b in combinations(texts, 2) if overlap(a.box, b.box)]
    found += [f"{text.words} on a line" for text in texts for line in lines if touches(line, text.box)]
    found += [f"{text.words} over the edge" for text in texts if not inside(text.box, drawing.box)]
    return found


def overlap(a: Box, b: Box) -> bool:
    return a.left < b.right and b.left < a.right and a.top < b.bottom and b.top < a.bottom


def inside(a: Box, b: Box) -> bool:
    return b.left <= a.left and a.right <= b.right and b.top <= a.top and a.bottom <= b.bottom


def touches(mark: Mark, box: Box) -> bool:
    if not overlap(mark.box.grown(1e-9), box):
        return False
    if isinstance(mark, Circle):
        return _ring_touches(mark, box)
    if any(crosses(a, b, box) for a, b in segments(mark)):
        return True
    # A text that lies in a filled face is crossed by no edge of it.
    return isinstance(mark, Polyline) and mark.closed and _is_filled(mark) and _holds(mark.points, box)


def _is_filled(mark: Polyline) -> bool:
    return mark.kind is Kind.SOLID or mark.fill is Fill.WOOD


def _ring_touches(ring: Circle, box: Box) -> bool:
    near_x = min(max(ring.x, box.left), box.right)
    near_y = min(max(ring.y, box.top), box.bottom)
    return hypot(near_x - ring.x, near_y - ring.y) <= ring.radius


def segments(mark: Mark) -> Iterator[tuple[Point, Point]]:
    if isinstance(mark, Line):
        yield (mark.x1, mark.y1), (mark.x2, mark.y2)
    elif isinstance(mark, Rect):
        yield from pairwise([*mark.corners, mark.corners[0]])
    elif isinstance(mark, Polyline):
        yield from pairwise([*mark.points, mark.points[0]] if mark.closed else mark.points)


def crosses(a: Point, b: Point, box: Box) -> bool:
    """Whether the stretch from a to b has a point in the box (Liang and Barsky's clipping)."""
    low, high = 0.0, 1.0
    (x1, y1), (x2, y2) = a, b
    for step, near, far in (
        (x2 - x1, box.left - x1, box.right - x1),
        (y2 - y1, box.top - y1, box.bottom - y1),
    ):
        if step == 0:
            if near > 0 or far < 0:
                return False
            continue
        enters, leaves = sorted((near / step, far / step))
        low, high = max(low, enters), min(high, leaves)
    return low <= high


def _holds(points: tuple[Point, ...], box: Box) -> bool:
    """Even-odd rule for the middle of the box."""
    x, y = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    crossed = [
        (y1 > y) != (y2 > y) and x < x1 + (y - y1) / (y2 - y1) * (x2 - x1)
        for (x1, y1), (x2, y2) in pairwise([*points, points[0]])
    ]
    return sum(crossed) % 2 == 1
