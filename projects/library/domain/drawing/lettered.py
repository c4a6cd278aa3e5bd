"""The whole drawing of a piece: its body, with words above and below it that touch nothing.

Words stand upright in two rows, diameters above and places below, each on a line that leads straight out of
the wood, bends where the words had to make room, and ends under them. Lines keep their order, so none cross;
words stand beyond every line, so none are touched. However dense the marks are, that stays so.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from club.base.drawing.dimensions import OFF_THE_OBJECT, arrow
from club.base.drawing.lettering import Anchor, Mark, letter_turned
from club.base.drawing.shapes import Box, Circle, Kind, Line, box_round
from projects.library.domain.drawing.body import axis, blank, body, ends
from projects.library.domain.drawing.callouts import (
    Callout,
    PieceWords,
    bores,
    diameters,
    numbers,
    places,
)
from projects.library.domain.drawing.spread import spread
from projects.library.domain.recipe import Recipe

# In type sizes.
HATCH = 0.65  # from one hatch line to the next
CLOSEST_HATCH = 0.5  # mm, however small the type
PITCH = 1.25  # from one upright text to the next
CLEAR = 0.9  # from the body to where lines may bend, or to the dimension line
LEAST_BEND = 0.6
GAP = 0.35  # from the end of a line to its words
ROOM_FOR_AN_ARROW = 1.3
DOT = 0.14
RING = 0.3  # radius of the ring at the origin
BASE = 0.25  # how far the base line of upright words lies right of the middle of their line


@dataclass(frozen=True)
class Row:
    """Words above (way -1) or below (way 1) the body, which begin beyond `edge`."""

    callouts: Sequence[Callout]
    edge: float
    way: int


def piece(recipe: Recipe, words: PieceWords, size: float, *, half: bool = False) -> tuple[Mark, ...]:
    """Everything on a drawing that has room: diameters above, running dimensions and the bore below, mm.

    `size` is the type size in mm. `half` draws the upper half alone, for a piece too thick for the sheet.
    """
    return _drawing(recipe, diameters(recipe.profile, words, size), _below(recipe, words), size, half)


def numbered_piece(recipe: Recipe, words: PieceWords, size: float) -> tuple[Mark, ...]:
    """A plainer drawing for a narrow page: marks by their numbers, below only where the piece ends."""
    places_of_ends = places(recipe.profile, words.show)
    return _drawing(
        recipe, numbers(recipe.profile), [places_of_ends[0], places_of_ends[-1]], size, half=False
    )


def _below(recipe: Recipe, words: PieceWords) -> list[Callout]:
    found = [*places(recipe.profile, words.show), *bores(recipe.profile, words)]
    return sorted(found, key=lambda callout: callout.x)


def _drawing(
    recipe: Recipe, above: Sequence[Callout], below: Sequence[Callout], size: float, half: bool
) -> tuple[Mark, ...]:
    profile = recipe.profile.profile()
    wood = (*body(profile, max(HATCH * size, CLOSEST_HATCH), half=half), *ends(recipe, profile, half=half))
    round_it = None if half else blank(recipe, profile)
    frame = box_round(mark.box for mark in (*wood, *((round_it,) if round_it else ())))
    top = Row(above, frame.top - CLEAR * size, -1)
    bottom = Row(below, frame.bottom + 2 * CLEAR * size, 1)
    return (
        *((round_it,) if round_it else ()),
        *wood,
        *axis(profile, half=half),
        *_leaders(top, size),
        *_running(below, frame, size, half),
        *_outlets(bottom, size),
    )


def _leaders(row: Row, size: float) -> Iterator[Mark]:
    """From each point of the wood, an arrow on it, up to its words."""
    for callout in row.callouts:
        tip = (callout.x, row.way * callout.r)
        yield arrow(tip, (tip[0], tip[1] + row.way), size)
        yield Line(*tip, callout.x, row.edge, Kind.THIN)
    yield from _outlets(row, size)


def _outlets(row: Row, size: float) -> Iterator[Mark]:
    """From the row's edge, with a bend where it has to be, to the words."""
    at = spread([callout.x for callout in row.callouts], PITCH * size)
    shifts = [abs(x - callout.x) for x, callout in zip(at, row.callouts, strict=True)]
    bend = max([LEAST_BEND * size, *(shift / 2 for shift in shifts)])
    foot = row.edge + row.way * bend
    anchor = Anchor.START if row.way < 0 else Anchor.END
    for x, callout in zip(at, row.callouts, strict=True):
        yield Line(callout.x, row.edge, x, foot, Kind.THIN)
        yield from letter_turned(callout.label, x + BASE * size, foot + row.way * GAP * size, size, anchor)


def _running(below: Sequence[Callout], frame: Box, size: float, half: bool) -> Iterator[Mark]:
    """One line from an origin ring with an arrow at each place (ISO 129-1), and the lines down to it."""
    y, edge = frame.bottom + CLEAR * size, frame.bottom + 2 * CLEAR * size
    at = [callout.x for callout in below if callout.is_place]
    yield Circle(at[0], y, RING * size, Kind.THIN)
    yield Line(at[0] + RING * size, y, at[-1], y, Kind.THIN)
    for callout in below:
        if callout.is_place:
            start = 0.0 if half else callout.r
            yield Line(callout.x, start + OFF_THE_OBJECT * size, callout.x, edge, Kind.THIN)
        else:
            tip = (callout.x, -callout.r if half else callout.r)
            yield arrow(tip, (tip[0], tip[1] + 1), size)
            yield Line(*tip, callout.x, edge, Kind.THIN)
    for before, x in pairwise(at):
        # Where no arrow has room a dot stands for it (ISO 129-1).
        has_room = x - before > ROOM_FOR_AN_ARROW * size
        yield arrow((x, y), (before, y), size) if has_room else Circle(x, y, DOT * size, Kind.SOLID)
