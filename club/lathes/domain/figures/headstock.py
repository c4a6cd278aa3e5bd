"""Section through a headstock on the spindle axis: where nose, bore, taper and S are measured.

A made-up but buildable headstock: nose 1 1/4-8 with its register, a Morse socket at its true taper, through
bore 1/2 in, S 15 3/4 in. Origin at the nose face on the axis, handwheel to the left, mm, y downwards.
"""

from __future__ import annotations

from dataclasses import dataclass

from club.base.drawing.dimensions import extension, leader, level
from club.base.drawing.hatch import hatched
from club.base.drawing.lettering import Label, Mark
from club.base.drawing.shapes import Fill, Kind, Line, Point, Polyline, Rect, mirrored
from club.lathes.domain.figures.breaks import break_gap
from club.lathes.domain.figures.socket import Socket

S = 400.05  # 15 3/4 in
S_BROKEN = 190.0  # drawn length when the middle is left out
BORE = 6.35  # half of 1/2 in
SPINDLE = 17.0
THREAD, ROOT = 15.875, 13.93  # 1 1/4-8 UN: half the major and half the root diameter (ASME B1.1)
THREAD_LENGTH = 22.0
REGISTER, REGISTER_LENGTH = 16.67, 8.0
COLLAR, COLLAR_WIDTH = 24.0, 8.0
HOUSING, HOUSING_WALL = 60.0, 10.0
WHEEL, HUB = 60.0, 26.0


@dataclass(frozen=True)
class HeadstockWords:
    """What is lettered, in the reader's language."""

    nose_to_handwheel: str
    through_bore: str
    nose_thread: str
    register: str
    taper: str
    washer_face: str


def headstock_section(
    words: HeadstockWords, socket: Socket, size: float, *, broken: bool
) -> tuple[Mark, ...]:
    """The section, whole or with its middle left out; `size` is the type size in mm."""
    length = S_BROKEN if broken else S
    parts = (*_housing(length), *_pulley(length), *_wheel(length), *_spindle(length, socket))
    gap = break_gap(-100.0, -81.0, HOUSING + 8.0) if broken else ()
    axis = Line(-length - 12.0, 0.0, 14.0, 0.0, Kind.AXIS)
    return (*parts, axis, *gap, *_lettering(words, length, size))


def _cut(points: tuple[Point, ...], pitch: float, *, falling: bool = False) -> tuple[Mark, ...]:
    """A cut face above the axis and its mirror image below, both hatched the same way."""
    marks: list[Mark] = []
    for face in (points, mirrored(points)):
        marks += hatched(face, pitch, falling=falling)
        marks.append(Polyline(face, closed=True))
    return tuple(marks)


def _spindle(length: float, socket: Socket) -> tuple[Mark, ...]:
    end, shoulder = -length + 20.0, -THREAD_LENGTH - REGISTER_LENGTH
    upper: tuple[Point, ...] = (
        (end, -BORE),
        (-socket.depth, -BORE),
        (-socket.depth, -socket.radius_at(socket.depth)),
        (0.0, -socket.mouth / 2),
        (0.0, -THREAD),
        (-THREAD_LENGTH, -THREAD),
        (-THREAD_LENGTH, -REGISTER),
        (shoulder, -REGISTER),
        (shoulder, -COLLAR),
        (shoulder - COLLAR_WIDTH, -COLLAR),
        (shoulder - COLLAR_WIDTH, -SPINDLE),
        (end, -SPINDLE),
    )
    roots = (Line(-THREAD_LENGTH, y, 0.0, y, Kind.THIN) for y in (-ROOT, ROOT))
    seen = (
        Line(0.0, -socket.mouth / 2, 0.0, socket.mouth / 2),
        Line(-socket.depth, -socket.radius_at(socket.depth), -socket.depth, socket.radius_at(socket.depth)),
    )
    return (*_cut(upper, 2.4), *roots, *seen)


def _wheel(length: float) -> tuple[Mark, ...]:
    left = -length
    upper: tuple[Point, ...] = (
        (left, -8.0),
        (left, -HUB),
        (left + 12.0, -HUB),
        (left + 12.0, -WHEEL + 12.0),
        (left + 4.0, -WHEEL + 12.0),
        (left + 4.0, -WHEEL),
        (left + 32.0, -WHEEL),
        (left + 32.0, -WHEEL + 12.0),
        (left + 24.0, -WHEEL + 12.0),
        (left + 24.0, -HUB),
        (left + 40.0, -HUB),
        (left + 40.0, -SPINDLE),
        (left + 20.0, -SPINDLE),
        (left + 20.0, -8.0),
    )
    return (
        *_cut(upper, 3.6, falling=True),
        Line(left, -8.0, left, 8.0),
        Line(left + 20.0, -8.0, left + 20.0, 8.0),
    )


def _housing(length: float) -> tuple[Mark, ...]:
    left, right, wall = -length + 62.0, -41.0, 22.0
    inner, foot = -HOUSING + HOUSING_WALL, -26.0
    upper: tuple[Point, ...] = (
        (left, -HOUSING),
        (right, -HOUSING),
        (right, foot),
        (right - wall, foot),
        (right - wall, inner),
        (left + wall, inner),
        (left + wall, foot),
        (left, foot),
    )
    bearings = (*_bearing(left, wall), *_bearing(right - wall, wall))
    return (*_cut(upper, 4.2, falling=True), *bearings)


def _bearing(left: float, width: float) -> tuple[Mark, ...]:
    """A bearing as the standard's plain sign: a square with a cross, above and below the shaft."""
    marks: list[Mark] = []
    for top, bottom in ((-26.0, -SPINDLE), (SPINDLE, 26.0)):
        marks += (
            Rect(left, top, width, bottom - top, Kind.HEAVY, Fill.SHEET),
            Line(left, top, left + width, bottom, Kind.THIN),
            Line(left, bottom, left + width, top, Kind.THIN),
        )
    return tuple(marks)


def _pulley(length: float) -> tuple[Mark, ...]:
    """The stepped pulley; it stands in the part that a broken view leaves out."""
    if length == S_BROKEN:
        return ()
    left, steps = -0.62 * length, (32.0, 38.0, 44.0)
    points: list[Point] = [(left, -SPINDLE)]
    for step, height in enumerate(steps):
        points += [(left + 25.0 * step, -height), (left + 25.0 * (step + 1), -height)]
    points.append((left + 25.0 * len(steps), -SPINDLE))
    return _cut(tuple(points), 3.2, falling=True)


def _lettering(words: HeadstockWords, length: float, size: float) -> tuple[Mark, ...]:
    top = -HOUSING - 2.4 * size
    low = [HOUSING + (0.6 + 1.6 * row) * size for row in (1, 2, 3)]
    shoulder_middle = -THREAD_LENGTH - REGISTER_LENGTH / 2
    return (
        extension(-length, -HUB, top, size),
        extension(0.0, -THREAD, top, size),
        *level(-length, 0.0, top, Label(words.nose_to_handwheel), size),
        *_below((shoulder_middle, REGISTER), -20.0, low[0], words.register, size),
        *_below((-8.0, THREAD), -4.0, low[1], words.nose_thread, size),
        *leader((-3.0, 4.0), (6.0, low[2]), Label(words.taper), size, leftwards=True, dot=True),
        *leader((-length, 17.0), (-length - 7.0, low[2]), Label(words.washer_face), size),
        *leader(
            (-0.72 * length, 2.5), (-0.72 * length + 8.0, low[1]), Label(words.through_bore), size, dot=True
        ),
    )


def _below(tip: Point, elbow_x: float, y: float, words: str, size: float) -> tuple[Mark, ...]:
    return leader(tip, (elbow_x, y), Label(words), size, leftwards=True)
