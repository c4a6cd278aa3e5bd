"""A checked profile as lines to draw: strokes with true arcs, polylines, and the points that stand out.

Millimetres: z along the axis, growing to the right, r the distance from it. A drawing whose y grows downwards
has the upper line at y = -r and the lower one at y = r.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import asin, ceil, sqrt

from projects.geometry.marks import Bore, Profile
from projects.geometry.pieces import Piece, Point, Straight, mm, pieces, pieces_by_mark, radius_mm

# A hair is some 0.05 mm thick.
FINE = 0.005


@dataclass(frozen=True)
class Stroke:
    """A straight, or an arc of this radius less than half round that bulges away from the axis or towards it.

    `mark` is the number of the mark where it ends, also for both halves of a V-cut.
    """

    start: Point
    end: Point
    mark: int
    radius: float | None = None
    away: bool = False


@dataclass(frozen=True)
class Place:
    """A point of the outline; `mark` is its mark, or for a turn the mark where its shape ends."""

    z: float
    r: float
    mark: int

    @property
    def diameter(self) -> float:
        return 2 * self.r


@dataclass(frozen=True)
class Extremes:
    """Where the piece begins and ends and where it is thickest and thinnest; of equals the leftmost.

    A point at an end, where the diameter is nought, is never the thinnest place.
    """

    left: Place
    right: Place
    thickest: Place
    thinnest: Place


def strokes(run: Profile | Bore) -> tuple[Stroke, ...]:
    """The line of the outside of a profile, or of a bore, from left to right."""
    return tuple(_stroke(number, piece) for number, piece in pieces_by_mark(run))


def _stroke(number: int, piece: Piece) -> Stroke:
    start, end = (piece.z1, piece.r1), (piece.z2, piece.r2)
    if isinstance(piece, Straight):
        return Stroke(start, end, number)
    return Stroke(start, end, number, piece.radius, not piece.inwards)


def polyline(run: Profile | Bore, within: float = FINE) -> tuple[Point, ...]:
    """The same line by points on it; nowhere does the curve lie farther than `within` mm off."""
    drawn = pieces(run)
    first = (drawn[0].z1, drawn[0].r1)
    return (first, *(point for piece in drawn for point in _points(piece, within)))


def _points(piece: Piece, within: float) -> tuple[Point, ...]:
    """The points after the first. An angle of 4 asin sqrt(s / 2R) at the centre makes a rise of s."""
    end = (piece.z2, piece.r2)
    if isinstance(piece, Straight):
        return (end,)
    half = piece.half_angle
    widest = 4 * asin(sqrt(min(within / (2 * piece.radius), 0.5)))
    parts = max(ceil(2 * half / widest), 1)
    between = (piece.at_angle(half * (2 * part / parts - 1)) for part in range(1, parts))
    return (*between, end)


def section(profile: Profile, within: float = FINE) -> tuple[Point, ...]:
    """The wood above the axis as one closed polygon, the last point joined to the first: what is hatched."""
    outside = polyline(profile, within)
    left, right = outside[0][0], outside[-1][0]
    if profile.bore is None:
        return (*outside, (right, 0.0), (left, 0.0))
    inside = polyline(profile.bore, within)
    first, last = inside[0][0], inside[-1][0]
    on_the_right = () if last == right else ((right, 0.0), (last, 0.0))
    on_the_left = () if first == left else ((first, 0.0), (left, 0.0))
    return (*outside, *on_the_right, *reversed(inside), *on_the_left)


def turns(run: Profile | Bore) -> tuple[Place, ...]:
    """The highest point of a bead, the lowest of a cove and the floor of a V-cut, where no mark lies."""
    numbered = pieces_by_mark(run)
    of_arcs = [Place(*piece.turn, number) for number, piece in numbered if piece.turn is not None]
    floors = [Place(two.z1, two.r1, mark) for (mark, _), (same, two) in pairwise(numbered) if mark == same]
    return tuple(sorted([*of_arcs, *floors], key=lambda place: place.z))


def extremes(run: Profile | Bore) -> Extremes:
    """The points that stand out, those between marks included."""
    at_marks = [Place(mm(mark.at), radius_mm(mark), number) for number, mark in enumerate(run.marks, 1)]
    places = sorted([*at_marks, *turns(run)], key=lambda place: place.z)
    thick = [place for place in places if place.r > 0]
    return Extremes(
        left=at_marks[0],
        right=at_marks[-1],
        thickest=max(thick, key=lambda place: place.r),
        thinnest=min(thick, key=lambda place: place.r),
    )


def length_mm(profile: Profile) -> float:
    return mm(profile.marks[-1].at - profile.marks[0].at)


def largest_mm(profile: Profile) -> float:
    """The largest diameter, also between marks; relative error under 1e-14."""
    return extremes(profile).thickest.diameter


def smallest_mm(profile: Profile) -> float:
    """The smallest diameter, also between marks, points at the ends aside; relative error under 1e-12."""
    return extremes(profile).thinnest.diameter
