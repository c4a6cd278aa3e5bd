"""Two draw bars: one with a fixed head, measured under it, one threaded rod, measured over all. mm."""

from __future__ import annotations

from dataclasses import dataclass

from club.base.drawing.dimensions import extension, leader, level
from club.base.drawing.lettering import Anchor, Label, Mark, letter
from club.base.drawing.shapes import Fill, Kind, Line, Rect
from club.lathes.domain.figures.breaks import break_gap

ROD, ROOT = 9.525 / 2, 7.577 / 2  # 3/8-16 UNC: half the major and the root diameter (ASME B1.1)
LENGTH = 368.3  # 14 1/2 in
LENGTH_BROKEN = 110.0
THREAD_LENGTH = 38.0
HEAD_WIDTH, HEAD = 22.0, 22.0
WASHER_WIDTH, WASHER = 2.0, 12.7
NUT_WIDTH, NUT = 8.5, 7.14  # 3/8 hex nut: thickness, half its width across flats (ASME B18.2.2)


@dataclass(frozen=True)
class DrawBarWords:
    under_the_head: str
    over_all: str
    thread: str
    head: str
    rod: str


def draw_bars(words: DrawBarWords, size: float, *, broken: bool) -> tuple[Mark, ...]:
    """The bar with a fixed head above, the threaded rod with a loose nut below it."""
    length = LENGTH_BROKEN if broken else LENGTH
    apart = HEAD + 5.6 * size + WASHER
    gap_at = (0.38 * length, 0.5 * length)
    fixed, loose = _fixed(length), _loose(length, apart)
    if broken:
        fixed = (*fixed, *break_gap(*gap_at, ROD + 6.0))
        loose = (*loose, *break_gap(*gap_at, ROD + 6.0, middle=apart))
    return (
        *fixed,
        *_fixed_lettering(words, length, size),
        *loose,
        *_loose_lettering(words, length, apart, size),
    )


def _axis(length: float, y: float) -> Line:
    return Line(-HEAD_WIDTH - 8.0, y, length + 8.0, y, Kind.AXIS)


def _rod(left: float, right: float, y: float, threaded_from: float) -> tuple[Mark, ...]:
    roots = (Line(threaded_from, y + way * ROOT, right, y + way * ROOT, Kind.THIN) for way in (-1, 1))
    end = () if threaded_from == left else (Line(threaded_from, y - ROD, threaded_from, y + ROD),)
    return (Rect(left, y - ROD, right - left, 2 * ROD), *roots, *end)


def _fixed(length: float) -> tuple[Mark, ...]:
    """Head left; its underside, where the washer lies, is x = 0."""
    return (
        *_rod(0.0, length, 0.0, length - THREAD_LENGTH),
        Rect(-HEAD_WIDTH, -HEAD, HEAD_WIDTH, 2 * HEAD),
        Rect(0.0, -WASHER, WASHER_WIDTH, 2 * WASHER, Kind.HEAVY, Fill.SHEET),
        _axis(length, 0.0),
    )


def _fixed_lettering(words: DrawBarWords, length: float, size: float) -> tuple[Mark, ...]:
    line_y = HEAD + 1.2 * size
    return (
        extension(0.0, HEAD, line_y, size),
        extension(length, ROD, line_y, size),
        *level(0.0, length, line_y, Label(words.under_the_head), size),
        *letter(Label(words.head), -HEAD_WIDTH, -HEAD - 0.6 * size, size),
        *leader(
            (length - 0.4 * THREAD_LENGTH, -ROD),
            (length - 0.25 * THREAD_LENGTH, -ROD - 1.4 * size),
            Label(words.thread),
            size,
            leftwards=True,
        ),
    )


def _loose(length: float, y: float) -> tuple[Mark, ...]:
    """The rod begins where the head above begins; nut and washer sit on it loosely."""
    left = -HEAD_WIDTH
    return (
        *_rod(left, length, y, left),
        Rect(left + 8.0, y - NUT, NUT_WIDTH, 2 * NUT, Kind.HEAVY, Fill.SHEET),
        Line(left + 8.0, y, left + 8.0 + NUT_WIDTH, y),
        Rect(0.0, y - WASHER, WASHER_WIDTH, 2 * WASHER, Kind.HEAVY, Fill.SHEET),
        _axis(length, y),
    )


def _loose_lettering(words: DrawBarWords, length: float, y: float, size: float) -> tuple[Mark, ...]:
    left, line_y = -HEAD_WIDTH, y + WASHER + 1.2 * size
    return (
        extension(left, y + ROD, line_y, size),
        extension(length, y + ROD, line_y, size),
        *level(left, length, line_y, Label(words.over_all), size),
        *letter(Label(words.rod), left, y - WASHER - 0.6 * size, size, Anchor.START),
    )
