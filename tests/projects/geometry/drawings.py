"""Profiles for tests: written by hand in millimetres, or drawn at random from a seed."""

from __future__ import annotations

from itertools import pairwise
from random import Random

from projects.geometry.arc_fit import chord
from projects.geometry.marks import Bore, Mark, Profile, ProfileError, Shape, ShapeKind
from projects.geometry.profile import check

STRAIGHT = Shape(ShapeKind.STRAIGHT)
GRID = 10_000  # random lengths are hundredths of a millimetre


def nm(mm: float) -> int:
    return round(mm * 1_000_000)


def bead(radius: float | None = None) -> Shape:
    return Shape(ShapeKind.BEAD, radius=None if radius is None else nm(radius))


def cove(radius: float | None = None) -> Shape:
    return Shape(ShapeKind.COVE, radius=None if radius is None else nm(radius))


def v_cut(depth: float) -> Shape:
    return Shape(ShapeKind.V_CUT, depth=nm(depth))


def run(*steps: tuple[float, float] | Shape) -> tuple[tuple[Mark, ...], tuple[Shape, ...]]:
    """Marks (at, diameter) in mm; a shape stands before the mark it runs to, a straight is left out."""
    marks: list[Mark] = []
    shapes: list[Shape] = []
    coming = STRAIGHT
    for step in steps:
        if isinstance(step, Shape):
            coming = step
            continue
        if marks:
            shapes.append(coming)
        marks.append(Mark(nm(step[0]), nm(step[1])))
        coming = STRAIGHT
    return tuple(marks), tuple(shapes)


def piece(*steps: tuple[float, float] | Shape, bore: Bore | None = None) -> Profile:
    return Profile(*run(*steps), bore)


def hole(*steps: tuple[float, float] | Shape) -> Bore:
    return Bore(*run(*steps))


def bored(outside: Profile, bore: Bore) -> Profile:
    return Profile(outside.marks, outside.shapes, bore)


def random_profile(seed: int) -> Profile:
    """A checked profile of two to nine marks with every shape, every other one with a bore."""
    rng = Random(seed)
    while True:
        profile = Profile(*_random_run(rng, rng.randint(2, 9), 0, 4_000))
        if seed % 2:
            profile = bored(profile, _random_bore(rng, profile))
        try:
            check(profile)
        except ProfileError:
            continue
        return profile


def _random_run(
    rng: Random, count: int, start: int, widest: int
) -> tuple[tuple[Mark, ...], tuple[Shape, ...]]:
    marks = [Mark(start, _diameter(rng, widest))]
    for number in range(1, count):
        same = rng.random() < 0.3
        is_step = 1 < number < count - 1 and rng.random() < 0.15
        at = marks[-1].at + (0 if is_step else GRID * rng.randint(50, 3_000))
        marks.append(Mark(at, marks[-1].diameter if same and not is_step else _diameter(rng, widest)))
    return tuple(marks), tuple(_random_shape(rng, *pair) for pair in pairwise(marks))


def _diameter(rng: Random, widest: int) -> int:
    return GRID * rng.choice([0, rng.randint(1, widest), rng.randint(1, widest), rng.randint(1, widest)])


def _random_shape(rng: Random, start: Mark, end: Mark) -> Shape:
    kind = rng.choice(list(ShapeKind))
    if start.at == end.at or kind is ShapeKind.STRAIGHT:
        return STRAIGHT
    if kind is ShapeKind.V_CUT:
        least = abs(start.diameter - end.diameter) // 4 + 1
        return Shape(kind, depth=rng.randint(least, least + (start.diameter + end.diameter) // 5))
    if start.diameter == end.diameter and rng.random() < 0.5:
        return Shape(kind)
    least = chord(start, end).least_radius_nm
    return Shape(kind, radius=rng.choice([least, rng.randint(least, 3 * least), 40 * least]))


def _random_bore(rng: Random, outside: Profile) -> Bore:
    """A bore from the left end to somewhere, or right through."""
    length = outside.marks[-1].at - outside.marks[0].at
    marks, shapes = _random_run(rng, rng.randint(2, 4), 0, 800)
    span = marks[-1].at
    through = rng.random() < 0.5
    scale = 1.0 if through else rng.uniform(0.2, 0.9)
    moved = [
        Mark(outside.marks[0].at + round(mark.at / span * length * scale), mark.diameter) for mark in marks
    ]
    return Bore(tuple(moved), shapes)
