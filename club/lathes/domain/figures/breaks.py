"""A part left out of a long drawing, between two zigzag lines (ISO 128-3)."""

from __future__ import annotations

from club.base.drawing.lettering import Mark
from club.base.drawing.shapes import Fill, Kind, Point, Polyline


def break_gap(left: float, right: float, half_height: float, middle: float = 0.0) -> tuple[Mark, ...]:
    """Blank out everything between two upright zigzag lines, half_height either side of `middle`, in mm."""
    tooth = 0.3 * (right - left)
    lines = [_zigzag(x, half_height, tooth, middle) for x in (left, right)]
    blank = Polyline((*lines[0], *reversed(lines[1])), Kind.BLANK, Fill.SHEET, closed=True)
    return (blank, *(Polyline(line, Kind.THIN) for line in lines))


def _zigzag(x: float, half_height: float, tooth: float, middle: float) -> tuple[Point, ...]:
    """A straight line with one sharp double bend in its middle."""
    steps = ((0.0, -half_height), (0.0, -tooth), (tooth, -0.4 * tooth), (-tooth, 0.4 * tooth))
    ends = ((0.0, tooth), (0.0, half_height))
    return tuple((x + dx, middle + dy) for dx, dy in (*steps, *ends))
