"""Paths as they lie on a printed sheet, read from the content stream of a PDF (ISO 32000-1, 8.2 to 8.5)."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from pypdf.generic import ContentStream

from tests.paper import MM_A_POINT, read_pdf

Point = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]

PAINTS = frozenset({b"S", b"s", b"f", b"F", b"f*", b"B", b"B*", b"b", b"b*"})
ONLY_FILLS = frozenset({b"f", b"F", b"f*"})


@dataclass(frozen=True)
class OnPaper:
    """One line on the sheet, in mm from the upper left corner; `pen` is nought where it is only filled."""

    points: tuple[Point, ...]
    pen: float

    @property
    def left(self) -> float:
        return min(x for x, _ in self.points)

    @property
    def right(self) -> float:
        return max(x for x, _ in self.points)

    @property
    def top(self) -> float:
        return min(y for _, y in self.points)

    @property
    def bottom(self) -> float:
        return max(y for _, y in self.points)


@dataclass
class _Pencil:
    """The part of the graphics state that a length depends on."""

    matrix: Matrix
    pen: float = 1.0
    lines: list[list[Point]] = field(default_factory=list)
    saved: list[tuple[Matrix, float]] = field(default_factory=list)

    def save(self) -> None:
        self.saved.append((self.matrix, self.pen))

    def restore(self) -> None:
        self.matrix, self.pen = self.saved.pop()

    def move(self, x: float, y: float) -> None:
        self.lines.append([self.at(x, y)])

    def line(self, *numbers: float) -> None:
        """Also a curve, by its end: no point of ours stands out between."""
        self.lines[-1].append(self.at(*numbers[-2:]))

    def rectangle(self, x: float, y: float, width: float, height: float) -> None:
        self.lines.append([self.at(x, y), self.at(x + width, y + height)])

    def at(self, x: float, y: float) -> Point:
        a, b, c, d, e, f = self.matrix
        return (a * x + c * y + e, b * x + d * y + f)

    def turn(self, a: float, b: float, c: float, d: float, e: float, f: float) -> None:
        dx, dy = self.at(0, 0)
        ax, ay = self.at(a, b)
        cx, cy = self.at(c, d)
        self.matrix = (ax - dx, ay - dy, cx - dx, cy - dy, *self.at(e, f))

    def set_pen(self, width: float) -> None:
        self.pen = width

    def take(self, operator: bytes) -> list[OnPaper]:
        """What is painted; a point alone, as some writers begin a path with, leaves no ink."""
        a, b, c, d, _e, _f = self.matrix
        pen = 0.0 if operator in ONLY_FILLS else self.pen * abs(a * d - b * c) ** 0.5
        found = [OnPaper(tuple(line), pen) for line in self.lines if len(line) > 1]
        self.lines = []
        return found


def paths_on(pdf: bytes, page: int) -> list[OnPaper]:
    """Every line painted on a page, counted from 0. What stands in form XObjects is left out."""
    reader = read_pdf(pdf)
    sheet = reader.pages[page]
    height = float(sheet.mediabox.height) * MM_A_POINT
    pencil = _Pencil((MM_A_POINT, 0, 0, -MM_A_POINT, 0, height))
    acts: dict[bytes, Callable[..., None]] = {
        b"q": pencil.save,
        b"Q": pencil.restore,
        b"cm": pencil.turn,
        b"w": pencil.set_pen,
        b"m": pencil.move,
        b"l": pencil.line,
        b"c": pencil.line,
        b"v": pencil.line,
        b"y": pencil.line,
        b"re": pencil.rectangle,
    }
    found: list[OnPaper] = []
    operations: list[tuple[Any, bytes]] = ContentStream(sheet.get_contents(), reader).operations
    for operands, operator in operations:
        if operator in PAINTS:
            found += pencil.take(operator)
        elif operator == b"n":
            pencil.lines = []
        elif operator in acts:
            acts[operator](*(float(each) for each in operands))
    return found
