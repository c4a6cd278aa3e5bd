"""The same quantities by `scipy.integrate.quad`, from the marks alone and by other formulas.

Each arc is set out from its own centre, z = centre + R sin t and r = centre ± R cos t, and integrated over t.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import atan2, cos, hypot, pi, sin, sqrt

from scipy.integrate import quad

from projects.geometry.marks import Bore, Mark, Profile, ShapeKind

Whole = int | Fraction


@dataclass(frozen=True)
class Curve:
    """r, dz and dr along a parameter from low to high, which may be parted at `turn`."""

    low: float
    high: float
    turn: float
    r: Callable[[float], float]
    dz: Callable[[float], float]
    dr: Callable[[float], float]

    def integral(self, integrand: Callable[[float], float]) -> float:
        stops = sorted({self.low, self.high, *(t for t in [self.turn] if self.low < t < self.high)})
        parts = (quad(integrand, a, b, epsabs=0, epsrel=1e-11, limit=200)[0] for a, b in pairwise(stops))
        return float(sum(parts))

    def volume(self) -> float:
        return pi * self.integral(lambda t: self.r(t) ** 2 * self.dz(t))

    def surface(self) -> float:
        return 2 * pi * self.integral(lambda t: self.r(t) * hypot(self.dz(t), self.dr(t)))

    def seen_along(self) -> float:
        """n · axis is -dr/ds."""
        return 2 * pi * self.integral(lambda t: self.r(t) * abs(self.dr(t)))

    def seen_across(self) -> float:
        """|n · x| is |dz/ds| |cos f|; the round is integrated too."""
        quarter = float(quad(lambda f: abs(cos(f)), 0, pi / 2)[0])
        return 4 * quarter * self.integral(lambda t: self.r(t) * abs(self.dz(t)))

    def compliance(self) -> float:
        return self.integral(lambda t: self.dz(t) / (2 * self.r(t)) ** 4)


def straight(z1: Whole, r1: Whole, z2: Whole, r2: Whole) -> Curve:
    start, wide, high = r1 / 1e6, float(z2 - z1) / 1e6, float(r2 - r1) / 1e6
    return Curve(0.0, 1.0, 2.0, lambda t: start + t * high, lambda _t: wide, lambda _t: high)


def arc(z1: Whole, r1: Whole, z2: Whole, r2: Whole, radius: Whole, sign: int) -> Curve:
    """Bulging away from the axis for sign 1, towards it for -1. Whole nanometres or halves of them.

    How far the centre stands off the chord is a difference of squares, so it is taken before rounding.
    """
    square = (z2 - z1) ** 2 + (r2 - r1) ** 2
    off = sqrt(max(radius**2 - square / 4, 0)) / sqrt(square)
    middle, mean, arm = (z1 + z2) / 2e6, (r1 + r2) / 2e6, radius / 1e6
    centre_z = middle + sign * off * float(r2 - r1) / 1e6
    centre_r = mean - sign * off * float(z2 - z1) / 1e6
    low, high = (atan2(z / 1e6 - centre_z, sign * (r / 1e6 - centre_r)) for z, r in ((z1, r1), (z2, r2)))
    return Curve(
        low,
        high,
        0.0,
        lambda t: centre_r + sign * arm * cos(t),
        lambda t: arm * cos(t),
        lambda t: -sign * arm * sin(t),
    )


def curves(run: Profile | Bore) -> Iterator[Curve]:
    into_the_wood = 1 if isinstance(run, Bore) else -1
    for shape, start, end in zip(run.shapes, run.marks, run.marks[1:], strict=False):
        z1, r1, z2, r2 = start.at, Fraction(start.diameter, 2), end.at, Fraction(end.diameter, 2)
        middle = Fraction(z1 + z2, 2)
        match shape.kind:
            case ShapeKind.STRAIGHT:
                yield straight(z1, r1, z2, r2)
            case ShapeKind.V_CUT:
                floor = (r1 + r2) / 2 + into_the_wood * (shape.depth or 0)
                yield straight(z1, r1, middle, floor)
                yield straight(middle, floor, z2, r2)
            case _:
                sign = into_the_wood if shape.kind is ShapeKind.COVE else -into_the_wood
                radius = Fraction(z2 - z1, 2) if shape.radius is None else shape.radius
                yield arc(z1, r1, z2, r2, radius, sign)


def disc(mark: Mark) -> float:
    return pi * (mark.diameter / 2e6) ** 2
