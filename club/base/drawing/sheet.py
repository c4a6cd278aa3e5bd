"""A finished drawing: its marks, its view box and the widths of its lines at the size it is made for."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from itertools import groupby
from math import inf

from club.base.drawing.lettering import Lettering, Mark
from club.base.drawing.shapes import Box, Fill, Kind, Shape, box_round, plain

TEXT_PX = 14.0
_MOST_ROUNDS = 40
_CLOSE_ENOUGH = 0.002
_NEXT_TO_NOTHING = 1e-6
INK, PENCIL = "#14253b", "#586069"
FILLS = {Fill.NONE: "none", Fill.SHEET: "#fbfaf6", Fill.WOOD: "#ddbb88"}


@dataclass(frozen=True)
class Pen:
    """How a kind of line is drawn; width and dashes in units of the size the drawing is made for."""

    width: float
    ink: str = INK
    dashes: tuple[float, ...] = ()


PENS = {
    Kind.HEAVY: Pen(2.0),
    Kind.THIN: Pen(1.0),
    Kind.DASHED: Pen(1.5, dashes=(6.0, 4.0)),
    Kind.AXIS: Pen(1.0, dashes=(14.0, 3.0, 2.0, 3.0)),
    Kind.PHANTOM: Pen(1.0, PENCIL, (12.0, 3.0, 2.0, 3.0, 2.0, 3.0)),
    Kind.HATCH: Pen(0.75),
    Kind.SOLID: Pen(0.0, "none"),
    Kind.BLANK: Pen(0.0, "none"),
}
# For a drawing printed life size, in mm: ISO 128-2 has line groups, and 0.5 with 0.18 holds on a copier.
PAPER_PENS = {
    Kind.HEAVY: Pen(0.5),
    Kind.THIN: Pen(0.18),
    Kind.DASHED: Pen(0.25, dashes=(3.0, 1.5)),
    Kind.AXIS: Pen(0.18, dashes=(8.0, 1.5, 1.0, 1.5)),
    Kind.PHANTOM: Pen(0.18, PENCIL, (6.0, 1.5, 1.0, 1.5, 1.0, 1.5)),
    Kind.HATCH: Pen(0.15),
    Kind.SOLID: Pen(0.0, "none"),
    Kind.BLANK: Pen(0.0, "none"),
}


@dataclass(frozen=True)
class Stroke:
    """Neighbouring shapes of one kind and fill, drawn as one path, with all that SVG asks for as text.

    The attributes are for paper, where no style sheet reaches a drawing; on screen the kind is the class.
    """

    kind: Kind
    d: str
    ink: str
    fill: str
    width: str
    dashes: str


@dataclass(frozen=True)
class Drawing:
    """Marks in mm, made to be seen `width_px` pixels wide, or on paper so many mm."""

    marks: tuple[Mark, ...]
    box: Box
    width_px: float
    pens: Mapping[Kind, Pen] = field(default_factory=lambda: PENS)

    @property
    def strokes(self) -> list[Stroke]:
        """The shapes in order, neighbours of a kind joined, as path data."""
        shapes: list[Shape] = [mark for mark in self.marks if not isinstance(mark, Lettering)]
        runs = groupby(shapes, key=lambda shape: (shape.kind, shape.fill))
        return [self._stroke(kind, fill, "".join(shape.d for shape in run)) for (kind, fill), run in runs]

    def _stroke(self, kind: Kind, fill: Fill, d: str) -> Stroke:
        pen = self.pens[kind]
        dashes = " ".join(plain(dash * self.px) for dash in pen.dashes)
        filled = INK if kind is Kind.SOLID else FILLS[fill]
        return Stroke(kind, d, pen.ink, filled, plain(pen.width * self.px), dashes)

    @property
    def letterings(self) -> list[Lettering]:
        return [mark for mark in self.marks if isinstance(mark, Lettering)]

    @property
    def view_box(self) -> str:
        box = self.box
        return " ".join(plain(value) for value in (box.left, box.top, box.width, box.height))

    @property
    def px(self) -> float:
        """How many mm of the drawing one pixel shows."""
        return self.box.width / self.width_px

    @property
    def height_px(self) -> float:
        return self.box.height / self.px

    @property
    def svg_width(self) -> str:
        return plain(self.width_px)

    @property
    def svg_height(self) -> str:
        return plain(self.height_px)


def drawn(marks: Iterable[Mark], width_px: float, margin: float, tallest_px: float = inf) -> Drawing:
    """The marks with a margin in mm round them all; room at both sides keeps a tall one at this height."""
    kept = tuple(marks)
    box = box_round(mark.box for mark in kept).grown(margin)
    beside = max(box.height * width_px / tallest_px - box.width, 0.0) / 2
    return Drawing(kept, Box(box.left - beside, box.top, box.right + beside, box.bottom), width_px)


def fitted(
    build: Callable[[float], Iterable[Mark]],
    width_px: float,
    text_px: float = TEXT_PX,
    tallest_px: float = inf,
) -> Drawing:
    """Letter a drawing so that its text stands `text_px` high when it is `width_px` wide.

    `build` takes a type size in mm and gives the marks. Larger lettering widens the drawing, which makes
    the lettering smaller on screen, so the size is found by going round. Words so long that the thing itself
    would shrink to less than a third of the width stay smaller instead.
    """
    least = drawn(build(_NEXT_TO_NOTHING), width_px, 0.0, tallest_px).box.width
    size = text_px * least / width_px
    drawing = drawn(build(size), width_px, size / 2, tallest_px)
    for _ in range(_MOST_ROUNDS):
        wanted = text_px * drawing.px
        if abs(wanted - size) < _CLOSE_ENOUGH * size or drawing.box.width > 3 * least:
            break
        size = wanted
        drawing = drawn(build(size), width_px, size / 2, tallest_px)
    return drawing
