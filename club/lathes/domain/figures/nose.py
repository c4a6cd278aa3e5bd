"""The spindle nose from the side, and how the threads of an inch are counted. mm, y downwards."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from club.base.drawing.dimensions import extension, level, upright_on_a_shelf
from club.base.drawing.lettering import Anchor, Label, Mark, letter
from club.base.drawing.shapes import Kind, Line, Point, Polyline, Rect
from club.lathes.domain.figures.headstock import (
    COLLAR,
    COLLAR_WIDTH,
    REGISTER,
    REGISTER_LENGTH,
    ROOT,
    SPINDLE,
    THREAD,
    THREAD_LENGTH,
)

INCH = 25.4
THREADS_AN_INCH = 8
CHAMFER = THREAD - ROOT


@dataclass(frozen=True)
class NoseWords:
    thread: str
    register_diameter: str
    register_length: str


def nose(words: NoseWords, size: float) -> tuple[Mark, ...]:
    """The nose in elevation: thread with thin root lines, register, the collar a chuck seats against."""
    shoulder = -THREAD_LENGTH - REGISTER_LENGTH
    back = shoulder - COLLAR_WIDTH
    thread: tuple[Point, ...] = (
        (-THREAD_LENGTH, -THREAD),
        (-CHAMFER, -THREAD),
        (0.0, -ROOT),
        (0.0, ROOT),
        (-CHAMFER, THREAD),
        (-THREAD_LENGTH, THREAD),
    )
    body: tuple[Mark, ...] = (
        Rect(shoulder - COLLAR_WIDTH, -COLLAR, COLLAR_WIDTH, 2 * COLLAR),
        Rect(shoulder, -REGISTER, REGISTER_LENGTH, 2 * REGISTER),
        Polyline(thread),
        Line(-CHAMFER, -THREAD, -CHAMFER, THREAD),
        *(Line(-THREAD_LENGTH, y, -0.3 * CHAMFER, y, Kind.THIN) for y in (-ROOT, ROOT)),
        *(Line(back - 14.0, y, back, y) for y in (-SPINDLE, SPINDLE)),
        *_broken_end(back - 14.0),
        Line(back - 18.0, 0.0, 6.0, 0.0, Kind.AXIS),
    )
    return (*body, *_nose_lettering(words, shoulder, size))


def _broken_end(x: float) -> tuple[Mark, ...]:
    """The spindle goes on: a zigzag where the drawing stops."""
    points = ((x, -SPINDLE - 4.0), (x, -3.0), (x + 3.0, -1.2), (x - 3.0, 1.2), (x, 3.0), (x, SPINDLE + 4.0))
    return (Polyline(points, Kind.THIN),)


def _nose_lettering(words: NoseWords, shoulder: float, size: float) -> tuple[Mark, ...]:
    shelf = -COLLAR - 1.2 * size
    line_x, low = 1.6 * size, COLLAR + 1.8 * size
    middle = shoulder + REGISTER_LENGTH / 2
    return (
        *(Line(-CHAMFER + 0.35 * size, y, line_x + 0.4 * size, y, Kind.THIN) for y in (-THREAD, THREAD)),
        *upright_on_a_shelf(line_x, -THREAD, THREAD, shelf, Label(words.thread, diameter=True), size),
        *upright_on_a_shelf(
            middle,
            -REGISTER,
            REGISTER,
            shelf,
            Label(words.register_diameter, diameter=True),
            size,
            leftwards=True,
        ),
        extension(shoulder, COLLAR, low, size),
        extension(-THREAD_LENGTH, REGISTER, low, size),
        *level(shoulder, -THREAD_LENGTH, low, Label(words.register_length), size),
    )


def thread_count(words: str, size: float) -> tuple[Mark, ...]:
    """A rule along the crests of an 8 to the inch thread at its true 60 degrees; the gaps are numbered.

    Basic profile of ASME B1.1: crest flat an eighth of the pitch, root flat a quarter.
    """
    pitch = INCH / THREADS_AN_INCH
    depth = 0.625 * pitch * sqrt(3) / 2
    rule_top = -1.9 * size
    numbers = [
        mark
        for gap in range(THREADS_AN_INCH)
        for mark in letter(Label(str(gap + 1)), (gap + 0.5) * pitch, depth + 1.2 * size, size, Anchor.MIDDLE)
    ]
    line_y = rule_top - 0.7 * size
    return (
        Polyline(_crests(pitch, depth)),
        *_rule(rule_top, size),
        *numbers,
        *(extension(x, rule_top, line_y, size) for x in (0.0, INCH)),
        *level(0.0, INCH, line_y, Label(words), size),
    )


def _crests(pitch: float, depth: float) -> tuple[Point, ...]:
    """Crests whose middles stand at whole pitches, one more at either end than the inch needs."""
    crest, root = pitch / 16, pitch / 8
    points: list[Point] = []
    for turn in range(-1, THREADS_AN_INCH + 2):
        middle = turn * pitch
        points += [(middle - crest, 0.0), (middle + crest, 0.0)]
        if turn <= THREADS_AN_INCH:
            points += [(middle + pitch / 2 - root, depth), (middle + pitch / 2 + root, depth)]
    return tuple(points)


def _rule(top: float, size: float) -> tuple[Mark, ...]:
    """A rule with a mark each sixteenth, its lower edge on the crests."""
    ticks = (
        Line(INCH * sixteenth / 16, 0.0, INCH * sixteenth / 16, _tick(sixteenth) * top, Kind.THIN)
        for sixteenth in range(17)
    )
    figures = (
        *letter(Label("0"), 0.25 * size, 0.62 * top, size),
        *letter(Label("1"), INCH + 0.25 * size, 0.62 * top, size),
    )
    return (Rect(-3.0, top, INCH + 3.0 + 1.4 * size, -top, Kind.THIN), *ticks, *figures)


def _tick(sixteenth: int) -> float:
    """How high a mark of the rule reaches, as a share of the rule's width."""
    return next(
        share for step, share in ((16, 0.8), (8, 0.5), (4, 0.4), (2, 0.3), (1, 0.2)) if sixteenth % step == 0
    )
