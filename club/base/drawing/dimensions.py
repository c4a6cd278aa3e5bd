"""Dimension lines, leaders and their arrows, after ISO 129-1 and the house's own spacing.

`size` is the type size in mm; every distance here hangs on it.
"""

from __future__ import annotations

from math import hypot

from club.base.drawing.lettering import Anchor, Label, Mark, letter
from club.base.drawing.shapes import Circle, Kind, Line, Point, Polyline

ARROW = 0.85  # length of an arrow head, in type sizes
ARROW_HALF = 0.135
OFF_THE_OBJECT = 0.35  # where an extension line starts
PAST_THE_LINE = 0.4  # where it ends
ABOVE_THE_LINE = 0.3  # base line of the words over their line
SHELF_INDENT = 0.4  # from a leader to its words
RUN_ON = 1.7  # outside arrows: how far the line runs on


def arrow(tip: Point, from_point: Point, size: float) -> Polyline:
    """A filled head whose tip lies at `tip`, coming from `from_point`."""
    dx, dy = tip[0] - from_point[0], tip[1] - from_point[1]
    length = hypot(dx, dy)
    ux, uy = dx / length, dy / length
    back = (tip[0] - ARROW * size * ux, tip[1] - ARROW * size * uy)
    half = ARROW_HALF * size
    wings = ((back[0] - half * uy, back[1] + half * ux), (back[0] + half * uy, back[1] - half * ux))
    return Polyline((tip, *wings), Kind.SOLID, closed=True)


def extension(x: float, from_y: float, line_y: float, size: float) -> Line:
    """An upright extension line from the object at `from_y` to just past the dimension line."""
    way = 1 if line_y > from_y else -1
    return Line(x, from_y + way * OFF_THE_OBJECT * size, x, line_y + way * PAST_THE_LINE * size, Kind.THIN)


def fits_between(label: Label, gap: float, size: float) -> bool:
    """Whether the words fit over a line of this length with both arrows inside it."""
    return label.width(size) + 2 * (ARROW + 0.1) * size <= gap


def level(
    x1: float, x2: float, y: float, label: Label, size: float, *, words_after: float | None = None
) -> tuple[Mark, ...]:
    """A level dimension from x1 to x2 (x1 < x2) on the line y, without extension lines.

    The words stand over its middle, or over the middle of what lies right of `words_after`. Words that
    don't fit stand on the line's run-on to the right, with the arrows turned outside.
    """
    words_x1 = x1 if words_after is None else words_after
    if fits_between(label, x2 - words_x1, size):
        ends = (arrow((x1, y), (x2, y), size), arrow((x2, y), (x1, y), size))
        words = letter(label, (words_x1 + x2) / 2, y - ABOVE_THE_LINE * size, size, Anchor.MIDDLE)
        return (Line(x1, y, x2, y, Kind.THIN), *ends, *words)
    ends = (arrow((x1, y), (x1 - 1, y), size), arrow((x2, y), (x2 + 1, y), size))
    start = x2 + RUN_ON * size
    words = letter(label, start, y - ABOVE_THE_LINE * size, size)
    return (Line(x1 - RUN_ON * size, y, start + label.width(size), y, Kind.THIN), *ends, *words)


def upright_on_a_shelf(
    x: float, y1: float, y2: float, shelf_y: float, label: Label, size: float, *, leftwards: bool = False
) -> tuple[Mark, ...]:
    """An upright dimension from y1 down to y2 whose line runs on up to a shelf with the words on it."""
    outside = y2 - y1 < 2.4 * ARROW * size
    away = -1 if outside else 1
    ends = (arrow((x, y1), (x, y1 + away), size), arrow((x, y2), (x, y2 - away), size))
    foot = y2 + RUN_ON * size if outside else y2
    line = Line(x, foot, x, shelf_y, Kind.THIN)
    return (line, *ends, *_shelf((x, shelf_y), label, size, leftwards))


def leader(
    tip: Point, elbow: Point, label: Label, size: float, *, leftwards: bool = False, dot: bool = False
) -> tuple[Mark, ...]:
    """A leader from an edge (arrow) or from inside a thing (dot) to a shelf with the words on it."""
    end: Mark = Circle(*tip, 0.13 * size, Kind.SOLID) if dot else arrow(tip, elbow, size)
    return (Line(*tip, *elbow, Kind.THIN), end, *_shelf(elbow, label, size, leftwards))


def _shelf(start: Point, label: Label, size: float, leftwards: bool) -> tuple[Mark, ...]:
    """A level line from `start` with the words standing on it, clear of the line that comes up to it."""
    x, y = start
    way = -1 if leftwards else 1
    words_x = x + way * SHELF_INDENT * size
    end_x = x + way * (label.width(size) + SHELF_INDENT * size)
    anchor = Anchor.END if leftwards else Anchor.START
    return (Line(x, y, end_x, y, Kind.THIN), *letter(label, words_x, y - ABOVE_THE_LINE * size, size, anchor))
