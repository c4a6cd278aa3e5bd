"""How thin the wall between the outside and a bore gets, found exactly along every two curves that overlap.

The wall is the difference of two radii at one place. Between two straights it is thinnest at an end of what
they share; with an arc also where both run in one direction, and that place has a closed form.
"""

from __future__ import annotations

from itertools import product
from math import atan, sin

from projects.geometry.marks import Profile, ProfileError
from projects.geometry.pieces import NM_PER_MM, Arc, Piece, Straight, pieces_by_mark

# A wall under one nanometre is none.
THINNEST_MM = 1 / NM_PER_MM


def check_walls(profile: Profile) -> None:
    """Raise ProfileError where the bore meets the outside; for lengths both have been checked."""
    bore = () if profile.bore is None else pieces_by_mark(profile.bore)
    for (number, inner), (outside_mark, outer) in product(bore, pieces_by_mark(profile)):
        wall, z = thinnest(outer, inner)
        if wall < THINNEST_MM:
            values = {"at": round(z * NM_PER_MM), "outside_mark": outside_mark}
            raise ProfileError("wall_gone", mark=number, inside=True, **values)


def thinnest(outer: Piece, inner: Piece) -> tuple[float, float]:
    """The least wall of these two curves and its z, in mm; infinite where they share no place."""
    low, high = max(outer.z1, inner.z1), min(outer.z2, inner.z2)
    if low > high:
        return (float("inf"), low)
    places = {low, high, *(z for z in _same_direction(outer, inner) if low < z < high)}
    return min((outer.span_at(z)[0] - inner.span_at(z)[1], z) for z in places)


def _same_direction(one: Piece, other: Piece) -> tuple[float, ...]:
    """The places where the two curves run in one direction, also beyond their ends."""
    match one, other:
        case Arc(), Arc():
            return _two_arcs(one, other)
        case Arc(), Straight():
            return _arc_and_straight(one, other)
        case Straight(), Arc():
            return _arc_and_straight(other, one)
    return ()


def _arc_and_straight(arc: Arc, line: Straight) -> tuple[float, ...]:
    """A circle has the slope m at z = centre -+ radius · sin(atan m)."""
    if line.width == 0:
        return ()
    slope = (line.r2 - line.r1) / line.width
    return (arc.centre[0] - arc.sign * arc.radius * sin(atan(slope)),)


def _two_arcs(one: Arc, other: Arc) -> tuple[float, ...]:
    """Two circles run in one direction where (z - centre) / radius agree, or are opposite if one bends in."""
    other_radius = one.sign * other.sign * other.radius
    if one.radius == other_radius:
        return ()
    weighted = other.centre[0] * one.radius - one.centre[0] * other_radius
    return (weighted / (one.radius - other_radius),)
