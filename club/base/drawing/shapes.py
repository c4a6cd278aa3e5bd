"""What a drawing is made of: lines, rectangles, polylines, circles, each with a kind of line.

All coordinates are millimetres, x to the right, y downwards, as in SVG.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

Point = tuple[float, float]


class Kind(StrEnum):
    """Line types after ISO 128-2; each means one thing wherever it stands."""

    HEAVY = "heavy"  # the thing itself, as measured
    THIN = "thin"  # dimension, extension, leader, thread root
    DASHED = "dashed"  # not measured: stands at a stand-in size
    AXIS = "axis"  # long dash and dot
    PHANTOM = "phantom"  # long dash and two dots: work, or another position of a moving part
    HATCH = "hatch"  # cut through
    SOLID = "solid"  # arrow heads and dots, filled
    BLANK = "blank"  # no line: what a break leaves out


class Fill(StrEnum):
    """What a closed shape is filled with; either hides what lies behind it."""

    NONE = "none"
    SHEET = "sheet"
    WOOD = "wood"


@dataclass(frozen=True)
class Box:
    """An upright rectangle round something, in mm."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        return self.right - self.left

    @property
    def height(self) -> float:
        return self.bottom - self.top

    def grown(self, by: float) -> Box:
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)


def box_round(boxes: Iterable[Box]) -> Box:
    """The least box that holds all of these; ValueError when there are none."""
    held = list(boxes)
    return Box(
        min(box.left for box in held),
        min(box.top for box in held),
        max(box.right for box in held),
        max(box.bottom for box in held),
    )


def plain(value: float) -> str:
    """A number for SVG: at most three decimals, always a point, never an exponent."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _path(points: Sequence[Point], closed: bool) -> str:
    pairs = [" ".join((plain(x), plain(y))) for x, y in points]
    return "M" + "L".join(pairs) + ("Z" if closed else "")


@dataclass(frozen=True)
class Line:
    x1: float
    y1: float
    x2: float
    y2: float
    kind: Kind = Kind.HEAVY
    fill: Fill = Fill.NONE

    @property
    def d(self) -> str:
        """Path data of SVG."""
        return _path([(self.x1, self.y1), (self.x2, self.y2)], closed=False)

    @property
    def box(self) -> Box:
        return Box(min(self.x1, self.x2), min(self.y1, self.y2), max(self.x1, self.x2), max(self.y1, self.y2))


@dataclass(frozen=True)
class Rect:
    x: float
    y: float
    width: float
    height: float
    kind: Kind = Kind.HEAVY
    fill: Fill = Fill.NONE

    @property
    def corners(self) -> tuple[Point, ...]:
        right, bottom = self.x + self.width, self.y + self.height
        return ((self.x, self.y), (right, self.y), (right, bottom), (self.x, bottom))

    @property
    def d(self) -> str:
        """Path data of SVG."""
        return _path(self.corners, closed=True)

    @property
    def box(self) -> Box:
        return Box(self.x, self.y, self.x + self.width, self.y + self.height)


@dataclass(frozen=True)
class Polyline:
    points: tuple[Point, ...]
    kind: Kind = Kind.HEAVY
    fill: Fill = Fill.NONE
    closed: bool = False

    @property
    def d(self) -> str:
        """Path data of SVG."""
        return _path(self.points, self.closed)

    @property
    def box(self) -> Box:
        across, down = [x for x, _ in self.points], [y for _, y in self.points]
        return Box(min(across), min(down), max(across), max(down))


@dataclass(frozen=True)
class Circle:
    x: float
    y: float
    radius: float
    kind: Kind = Kind.HEAVY
    fill: Fill = Fill.NONE

    @property
    def d(self) -> str:
        """Path data of SVG: two half circles."""
        left, right, y, r = (
            plain(v) for v in (self.x - self.radius, self.x + self.radius, self.y, self.radius)
        )
        return f"M{left} {y}A{r} {r} 0 1 0 {right} {y}A{r} {r} 0 1 0 {left} {y}Z"

    @property
    def box(self) -> Box:
        return Box(self.x, self.y, self.x, self.y).grown(self.radius)


Shape = Line | Rect | Polyline | Circle


def mirrored(points: Sequence[Point]) -> tuple[Point, ...]:
    """The same points below the axis, y = 0."""
    return tuple((x, -y) for x, y in points)
