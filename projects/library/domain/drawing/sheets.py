"""A life-size drawing on as many sheets as it takes, with register marks to lay them together by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, product
from math import ceil

from club.base.drawing.lettering import Lettering, Mark
from club.base.drawing.shapes import Box, Kind, Line, box_round
from club.base.drawing.sheet import PAPER_PENS, Drawing

OVERLAP = 12.0  # mm, of neighbouring sheets
CROSS = 2.5  # half a register mark, mm
BESIDE = 4.0  # how far outside the drawing the register marks stand, mm
BAND = BESIDE + CROSS + 1.0  # what they take up beside it
LETTER = 2.4
# From the middle of a cross to its letter, mm.
ASIDE, ABOVE = 0.5, 0.8
MARGIN = 1.0
# How far a cross inside the drawing may make way for words: it has to stay in the overlap.
WAYS = (0.0, 1.5, -1.5, 3.0, -3.0)

Interval = tuple[float, float]


@dataclass(frozen=True)
class Tile:
    """One sheet's part of the drawing at 1:1, numbered from 1 in its row and column."""

    drawing: Drawing
    row: int
    column: int


def tiles(marks: Sequence[Mark], width: float, height: float) -> tuple[Tile, ...]:
    """The drawing on sheets of at most this width and height in mm, row by row; one where it fits.

    Every text stands whole on a sheet at least; so does every point of the drawing.
    """
    box = box_round(mark.box for mark in marks).grown(MARGIN)
    words = [mark.box for mark in marks if isinstance(mark, Lettering)]
    wide, high = _room(box, width, height)
    columns = _strips(box.left, box.right, wide, [(each.left, each.right) for each in words])
    rows = _strips(box.top, box.bottom, high, [(each.top, each.bottom) for each in words])
    shown = (*marks, *_register(_cuts(columns), _cuts(rows), box, words))
    edge = box.grown(BAND)
    return tuple(
        Tile(_part(shown, _paper(row, column, box, edge, len(rows), len(columns))), number, place)
        for number, row in enumerate(rows, 1)
        for place, column in enumerate(columns, 1)
    )


def _room(box: Box, width: float, height: float) -> Interval:
    """What a sheet has for the drawing alone; crosses beyond the ends of a cut may bring on another cut."""
    down = box.height > height or (box.width > width and box.height + 2 * BAND > height)
    across = box.width > width or (down and box.width + 2 * BAND > width)
    return (width - 2 * BAND if down else width, height - 2 * BAND if across else height)


def _strips(low: float, high: float, most: float, words: Sequence[Interval]) -> list[Interval]:
    """Overlapping strips of much one width, none wider than `most`, with every word whole on one of them."""
    count = ceil((high - low - OVERLAP) / (most - OVERLAP))
    if count <= 1:
        return [(low, high)]
    even = low + (high - low + (count - 1) * OVERLAP) / count
    edge = max(_clear(even, words), low + 2 * OVERLAP)
    return [(low, edge), *_strips(edge - OVERLAP, high, most, words)]


def _clear(edge: float, words: Sequence[Interval]) -> float:
    """The edge moved back as little as need be, until no word reaches right across the overlap before it."""
    for start, end in sorted(words, key=lambda each: -each[0]):
        if start < edge - OVERLAP and edge < end:
            edge = start + OVERLAP
    return edge


def _cuts(strips: Sequence[Interval]) -> list[float]:
    """Half-way along every overlap."""
    return [(start + end) / 2 for (_, end), (start, _) in pairwise(strips)]


def _paper(row: Interval, column: Interval, box: Box, edge: Box, rows: int, columns: int) -> Box:
    """What a sheet shows: its part of the drawing, and at the drawing's own edges the crosses beside them."""
    left, right = (edge.left, edge.right) if rows > 1 else (box.left, box.right)
    top, bottom = (edge.top, edge.bottom) if columns > 1 else (box.top, box.bottom)
    return Box(
        left if column[0] == box.left else column[0],
        top if row[0] == box.top else row[0],
        right if column[1] == box.right else column[1],
        bottom if row[1] == box.bottom else row[1],
    )


def _register(
    across: Sequence[float], down: Sequence[float], box: Box, words: Sequence[Box]
) -> Iterator[Mark]:
    """A lettered cross beyond both ends of every cut, and a plain one where two cuts meet."""
    beyond = box.grown(BESIDE)
    points = [(x, y) for x in across for y in (beyond.top, beyond.bottom)]
    points += [(x, y) for y in down for x in (beyond.left, beyond.right)]
    for number, (x, y) in enumerate(points):
        yield from _cross(x, y)
        yield Lettering(x + ASIDE, y - ABOVE, _letter(number), LETTER)
    for x, y in product(across, down):
        ways = ((x + dx, y + dy) for dx, dy in product(WAYS, WAYS))
        free = next((place for place in ways if _is_free(*place, words)), None)
        yield from _cross(*free) if free else ()


def _letter(number: int) -> str:
    """A to Z, then AA, AB and so on."""
    last = chr(ord("A") + number % 26)
    return last if number < 26 else _letter(number // 26 - 1) + last


def _cross(x: float, y: float) -> tuple[Line, Line]:
    return (Line(x - CROSS, y, x + CROSS, y, Kind.THIN), Line(x, y - CROSS, x, y + CROSS, Kind.THIN))


def _is_free(x: float, y: float, words: Sequence[Box]) -> bool:
    cross = Box(x, y, x, y).grown(CROSS + 0.5)
    return not any(
        cross.left < word.right
        and word.left < cross.right
        and cross.top < word.bottom
        and word.top < cross.bottom
        for word in words
    )


def _part(marks: Sequence[Mark], box: Box) -> Drawing:
    """The marks of one sheet; lines go on past its edge and are cut off there, words are whole."""
    kept = tuple(mark for mark in marks if _is_on(mark, box))
    return Drawing(kept, box, box.width, PAPER_PENS)


def _is_on(mark: Mark, box: Box) -> bool:
    """Whether a mark shows on this sheet; words only where they stand there whole."""
    has = mark.box
    if isinstance(mark, Lettering):
        inside = box.left <= has.left and has.right <= box.right
        return inside and box.top <= has.top and has.bottom <= box.bottom
    beside = has.right < box.left or box.right < has.left
    return not beside and not (has.bottom < box.top or box.bottom < has.top)
