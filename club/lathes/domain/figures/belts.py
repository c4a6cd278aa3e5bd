"""Stepped pulleys seen from the belt side: which belt position is slow and which is fast. mm."""

from __future__ import annotations

from dataclasses import dataclass

from club.base.drawing.lettering import Anchor, Label, Mark, letter
from club.base.drawing.shapes import Fill, Kind, Line, Rect

STEP_WIDTH = 34.0
# Diameters of the spindle's pulley, slow to fast; the motor's are turned round, so one belt fits all.
STEPS = (100.0, 80.0, 60.0, 40.0)
APART = 136.0
BELT_WIDTH = 14.0


@dataclass(frozen=True)
class BeltWords:
    spindle: str
    motor: str
    slowest: str
    fastest: str


def belts(words: BeltWords, size: float) -> tuple[Mark, ...]:
    """Spindle pulley above, motor pulley below, the belt on position 1, positions numbered between them."""
    marks: list[Mark] = []
    for step, (upper, lower) in enumerate(zip(STEPS, reversed(STEPS), strict=True)):
        left = step * STEP_WIDTH
        marks += (
            Rect(left, -upper / 2, STEP_WIDTH, upper),
            Rect(left, APART - lower / 2, STEP_WIDTH, lower),
        )
    return (*marks, *_shafts(), _belt(), *_lettering(words, size))


def _belt() -> Rect:
    """The run of the belt on the near side, from the top of one pulley to the bottom of the other."""
    top, bottom = -STEPS[0] / 2, APART + STEPS[-1] / 2
    return Rect((STEP_WIDTH - BELT_WIDTH) / 2, top, BELT_WIDTH, bottom - top, Kind.HEAVY, Fill.SHEET)


def _shafts() -> tuple[Mark, ...]:
    """Spindle and motor shaft, each a stub to the right, on their axes."""
    end = len(STEPS) * STEP_WIDTH
    stubs = (Rect(end, y - 7.0, 16.0, 14.0) for y in (0.0, APART))
    return (*stubs, *(Line(-10.0, y, end + 26.0, y, Kind.AXIS) for y in (0.0, APART)))


def _lettering(words: BeltWords, size: float) -> tuple[Mark, ...]:
    end = len(STEPS) * STEP_WIDTH
    middles = [(step + 0.5) * STEP_WIDTH for step in range(len(STEPS))]
    numbers = [
        mark
        for step, middle in enumerate(middles, start=1)
        for mark in letter(Label(str(step)), middle, APART / 2 + 0.3 * size, size, Anchor.MIDDLE)
    ]
    foot = APART + STEPS[0] / 2 + 1.2 * size
    return (
        *numbers,
        *letter(Label(words.spindle), end + 1.0 * size, -0.6 * size - 7.0, size),
        *letter(Label(words.motor), end + 1.0 * size, APART - 0.6 * size - 7.0, size),
        *letter(Label(words.slowest), 0.0, foot, size),
        *letter(Label(words.fastest), end, foot, size, Anchor.END),
    )
