"""The curves of a checked drawing in millimetres, with their integrals along the axis in closed form.

z runs along the axis, r away from it. A V-cut is two straights. Every integral is that of the chord plus that
of the circular segment over it, never a difference of two things as large as the circle, so that a nearly
flat arc costs no digits: the relative error of each is some 1e-15.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import atan, atan2, hypot, sin, sqrt

from projects.geometry.arc_fit import bends_inwards, chord, four_apothems_squared, radius_of
from projects.geometry.marks import Bore, Mark, Profile, Shape, ShapeKind
from projects.geometry.segments import arc_moment, segment_area, segment_moment

NM_PER_MM = 1_000_000
# A share of the half angle. So near an end the arc is level with it to a part in 10^18 of its radius.
AT_AN_END = 1e-9

Point = tuple[float, float]


def mm(nm: int) -> float:
    return nm / NM_PER_MM


def radius_mm(mark: Mark) -> float:
    return mark.diameter / (2 * NM_PER_MM)


@dataclass(frozen=True)
class Straight:
    """From (z1, r1) to (z2, r2): cylinder, cone, or a step where both z are one."""

    z1: float
    r1: float
    z2: float
    r2: float

    @property
    def width(self) -> float:
        return self.z2 - self.z1

    @property
    def mean(self) -> float:
        return (self.r1 + self.r2) / 2

    @property
    def length(self) -> float:
        """Along the surface."""
        return hypot(self.width, self.r2 - self.r1)

    @property
    def turn(self) -> Point | None:
        """A straight has no highest or lowest point between its ends."""
        return None

    def area_under(self) -> float:
        """Integral of r dz, mm²."""
        return self.width * self.mean

    def square_under(self) -> float:
        """Integral of r² dz, mm³: the frustum of a cone."""
        return self.width * (self.r1**2 + self.r1 * self.r2 + self.r2**2) / 3

    def moment(self) -> float:
        """Integral of r ds, mm²."""
        return self.length * self.mean

    def span_at(self, z: float) -> tuple[float, float]:
        """Least and greatest r at this z; they differ on a step alone."""
        if self.width == 0:
            return (min(self.r1, self.r2), max(self.r1, self.r2))
        if z == self.z2:
            return (self.r2, self.r2)
        r = self.r1 + (self.r2 - self.r1) * (z - self.z1) / self.width
        return (r, r)


@dataclass(frozen=True)
class Arc:
    """The shorter arc between two points whose centre lies `apothem` off their chord.

    It bulges away from the axis, or towards it where `inwards` says so. `u` is the angle at the centre, from
    the middle of the arc, growing with z.
    """

    z1: float
    r1: float
    z2: float
    r2: float
    apothem: float
    inwards: bool

    @property
    def sign(self) -> int:
        return -1 if self.inwards else 1

    @property
    def chord(self) -> Straight:
        return Straight(self.z1, self.r1, self.z2, self.r2)

    @property
    def width(self) -> float:
        return self.z2 - self.z1

    @property
    def rise(self) -> float:
        return self.r2 - self.r1

    @property
    def half_angle(self) -> float:
        return atan2(self.chord.length / 2, self.apothem)

    @property
    def radius(self) -> float:
        return hypot(self.chord.length / 2, self.apothem)

    @property
    def centre(self) -> Point:
        """Far off and with fewer digits for a nearly flat arc; no integral uses it."""
        across = self.sign * self.apothem / self.chord.length
        return (
            (self.z1 + self.z2) / 2 + across * self.rise,
            (self.r1 + self.r2) / 2 - across * self.width,
        )

    @property
    def length(self) -> float:
        return 2 * self.half_angle * self.radius

    @property
    def tilt(self) -> float:
        """The `u` at which the arc runs level with the axis, whether it lies on the arc or not."""
        return self.sign * atan(self.rise / self.width)

    @property
    def turn(self) -> Point | None:
        """The highest point of an arc away from the axis, the lowest of one towards it, if not at an end."""
        within = self.half_angle * (1 - AT_AN_END)
        return self.at_angle(self.tilt) if abs(self.tilt) < within else None

    def at_angle(self, u: float) -> Point:
        """The point at this angle, reckoned from the chord so that a far centre costs no digits."""
        half = self.half_angle
        along = self.radius * sin(u) / self.chord.length
        above = self.sign * self.radius * 2 * sin((half + u) / 2) * sin((half - u) / 2) / self.chord.length
        return (
            (self.z1 + self.z2) / 2 + along * self.width - above * self.rise,
            (self.r1 + self.r2) / 2 + along * self.rise + above * self.width,
        )

    def angle_at(self, z: float) -> float:
        """The `u` of the point at this z, which lies between the ends."""
        if z == self.z1 or z == self.z2:
            return self.half_angle if z == self.z2 else -self.half_angle
        centre_z, centre_r = self.centre
        return atan2(z - centre_z, self.sign * (self.span_at(z)[0] - centre_r)) + self.tilt

    def area_under(self) -> float:
        """Integral of r dz, mm²."""
        return self.chord.area_under() + self.sign * self._segment

    def square_under(self) -> float:
        """Integral of r² dz, mm³: the frustum and, by Pappus, the ring that the segment sweeps."""
        across = self.sign * self.width / self.chord.length
        swept = self.chord.mean * self._segment + across * self.radius**3 * segment_moment(self.half_angle)
        return self.chord.square_under() + self.sign * 2 * swept

    def moment(self) -> float:
        """Integral of r ds, mm²; Pappus' theorem of the surface."""
        across = self.sign * self.width / self.chord.length
        return self.chord.mean * self.length + across * self.radius**2 * arc_moment(self.half_angle)

    @property
    def _segment(self) -> float:
        return self.radius**2 * segment_area(self.half_angle)

    def span_at(self, z: float) -> tuple[float, float]:
        """r at this z, twice; reckoned from the nearer end."""
        centre_z, centre_r = self.centre
        z0, r0 = (self.z1, self.r1) if z - self.z1 <= self.z2 - z else (self.z2, self.r2)
        before, here = z0 - centre_z, z - centre_z
        height_before = max(self.sign * (r0 - centre_r), 0.0)
        height = sqrt(max((self.radius - here) * (self.radius + here), 0.0))
        fall = (here - before) * (here + before)
        both = height + height_before
        r = r0 - self.sign * fall / both if both else r0
        return (r, r)


Piece = Straight | Arc


def pieces_between(shape: Shape, start: Mark, end: Mark, *, inside: bool) -> tuple[Piece, ...]:
    """The curves of one shape."""
    ends = (mm(start.at), radius_mm(start), mm(end.at), radius_mm(end))
    if shape.kind is ShapeKind.STRAIGHT:
        return (Straight(*ends),)
    if shape.kind is ShapeKind.V_CUT:
        return _v_cut(Straight(*ends), mm(shape.depth or 0) * (1 if inside else -1))
    line = chord(start, end)
    apothem = sqrt(four_apothems_squared(radius_of(shape, line), line)) / (4 * NM_PER_MM)
    return (Arc(*ends, apothem, bends_inwards(shape.kind, inside)),)


def _v_cut(line: Straight, outwards: float) -> tuple[Piece, ...]:
    floor = ((line.z1 + line.z2) / 2, line.mean + outwards)
    return (Straight(line.z1, line.r1, *floor), Straight(*floor, line.z2, line.r2))


def pieces_by_mark(run: Profile | Bore) -> tuple[tuple[int, Piece], ...]:
    """Every curve of the outside of a profile, or of a bore, with the number of the mark it ends at."""
    inside = isinstance(run, Bore)
    joined = zip(run.shapes, pairwise(run.marks), strict=True)
    return tuple(
        (number, piece)
        for number, (shape, (start, end)) in enumerate(joined, 2)
        for piece in pieces_between(shape, start, end, inside=inside)
    )


def pieces(run: Profile | Bore | None) -> tuple[Piece, ...]:
    """Every curve from left to right; none for a bore that isn't there."""
    return () if run is None else tuple(piece for _number, piece in pieces_by_mark(run))
