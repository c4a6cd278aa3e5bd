"""Two bars to measure before a life-size print is trusted: 100 mm and 4 in."""

from __future__ import annotations

from collections.abc import Iterator

from club.base.drawing.lettering import Lettering, Mark
from club.base.drawing.shapes import Box, Fill, Kind, Rect
from club.base.drawing.sheet import PAPER_PENS, Drawing

HEIGHT = 1.6
APART = 5.0
LETTER = 2.9
LONGEST = 101.6
BARS = ((100.0, 10, "100\u00a0mm"), (101.6, 8, "4\u00a0in"))


def check_bars() -> Drawing:
    """The bars one under the other, in parts of 10 mm and of half an inch, every other one filled."""
    marks: list[Mark] = []
    for number, (length, parts, words) in enumerate(BARS):
        y = number * APART
        marks += _bar(length, parts, y)
        marks.append(Lettering(LONGEST + 2.0, y + HEIGHT, words, LETTER))
    box = Box(-0.5, -1.2, LONGEST + 18.0, APART + HEIGHT + 0.5)
    return Drawing(tuple(marks), box, box.width, PAPER_PENS)


def _bar(length: float, parts: int, y: float) -> Iterator[Mark]:
    part = length / parts
    yield Rect(0.0, y, length, HEIGHT, Kind.THIN, Fill.NONE)
    yield from (Rect(place * part, y, part, HEIGHT, Kind.SOLID) for place in range(0, parts, 2))
