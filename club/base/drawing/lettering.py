"""Lettering in drawings, and the drawn diameter mark.

Widths are the advance widths of our own typeface in thousandths of its size, figures tabular,
read from the font file; they decide whether a text fits its dimension line.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from club.base.drawing.shapes import Box, Circle, Kind, Line, Shape, plain

_WIDTHS_BY_LETTERS = (
    (165, "\u2009'"),
    (270, "ijl.,:; \u00a0!·"),
    (345, "fIrt()[]-/|"),
    (475, "cksvxyz?"),
    (550, "adehnouEFLPSTVY\u2013"),
    (610, "bgpqABKRXZ+=£\u00d7\u2212"),
    (650, "0123456789CD#"),
    (725, "wGHNOQU&"),
    (870, "mMW@%½¼¾"),
)
_WIDTHS = {letter: width for width, letters in _WIDTHS_BY_LETTERS for letter in letters}
_WIDEST = 870

# The diameter mark: a ring and a stroke, the path of the page's own mark, in ems.
_MARK_WIDTH, _MARK_HEIGHT, _MARK_SINKS, _MARK_GAP = 0.6, 0.81, 0.1, 0.28


class Anchor(StrEnum):
    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True)
class Lettering:
    """Words on one line; x and y in mm, on the base line, size the type size in mm.

    The line is level, or `turned` a quarter to the left, read from the right (ISO 129-1).
    """

    x: float
    y: float
    words: str
    size: float
    anchor: Anchor = Anchor.START
    turned: bool = False

    @property
    def svg_x(self) -> str:
        return plain(self.x)

    @property
    def svg_y(self) -> str:
        return plain(self.y)

    @property
    def svg_size(self) -> str:
        return plain(self.size)

    @property
    def box(self) -> Box:
        width = text_width(self.words, self.size)
        before = _before(width, self.anchor)
        above, below = 0.75 * self.size, 0.25 * self.size
        if self.turned:
            return Box(self.x - above, self.y + before - width, self.x + below, self.y + before)
        return Box(self.x - before, self.y - above, self.x - before + width, self.y + below)

    @property
    def svg_turn(self) -> str:
        """The transform of a turned line; "" for a level one."""
        return f"rotate(-90 {self.svg_x} {self.svg_y})" if self.turned else ""


Mark = Shape | Lettering


@dataclass(frozen=True)
class Label:
    """What stands at a dimension; `diameter` puts the drawn mark before the words."""

    words: str
    diameter: bool = False

    def width(self, size: float) -> float:
        """Width in the unit of `size`."""
        mark = (_MARK_WIDTH + _MARK_GAP) * size if self.diameter else 0.0
        return mark + text_width(self.words, size)


def text_width(words: str, size: float) -> float:
    """How wide the words stand, in the unit of `size`, rounded up to the next class of letters.

    >>> text_width("36 in", 10.0)
    23.9
    """
    return sum(_WIDTHS.get(letter, _WIDEST) for letter in words) * size / 1000


def _before(width: float, anchor: Anchor) -> float:
    """How much of the words stands before their anchor."""
    return {Anchor.START: 0.0, Anchor.MIDDLE: width / 2, Anchor.END: width}[anchor]


def letter(label: Label, x: float, y: float, size: float, anchor: Anchor = Anchor.START) -> tuple[Mark, ...]:
    """The label on a base line at y; x is its start, middle or end."""
    left = x - _before(label.width(size), anchor)
    if not label.diameter:
        return (Lettering(x, y, label.words, size, anchor),)
    text_left = left + (_MARK_WIDTH + _MARK_GAP) * size
    return (*_diameter_mark(left, y, size), Lettering(text_left, y, label.words, size))


def letter_turned(
    label: Label, x: float, y: float, size: float, anchor: Anchor = Anchor.START
) -> tuple[Mark, ...]:
    """The label turned a quarter to the left on an upright base line at x; y is its start, middle or end."""
    if not label.diameter:
        return (Lettering(x, y, label.words, size, anchor, turned=True),)
    foot = y + _before(label.width(size), anchor)
    start = foot - (_MARK_WIDTH + _MARK_GAP) * size
    return (*_turned_diameter_mark(x, foot, size), Lettering(x, start, label.words, size, turned=True))


def _diameter_mark(x: float, y: float, size: float) -> tuple[Shape, ...]:
    unit = _MARK_HEIGHT * size / 100
    foot = y + _MARK_SINKS * size
    return (
        Circle(x + 37 * unit, foot - 50 * unit, 28.5 * unit, Kind.THIN),
        Line(x + 11.5 * unit, foot, x + 62.5 * unit, foot - 100 * unit, Kind.THIN),
    )


def _turned_diameter_mark(x: float, y: float, size: float) -> tuple[Shape, ...]:
    unit = _MARK_HEIGHT * size / 100
    foot = x + _MARK_SINKS * size
    return (
        Circle(foot - 50 * unit, y - 37 * unit, 28.5 * unit, Kind.THIN),
        Line(foot, y - 11.5 * unit, foot - 100 * unit, y - 62.5 * unit, Kind.THIN),
    )
