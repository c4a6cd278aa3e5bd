"""The circular segment: what lies between an arc and its chord, by the arc's half angle and a radius of one.

The closed forms follow from integrating over the arc. Each is a small difference of large terms when the arc
is flat, so below half a radian its power series is summed, which has no such difference: the relative error
is under 1e-13 for every half angle up to a right angle.
"""

from __future__ import annotations

from collections.abc import Callable
from math import cos, factorial, sin

_FLAT = 0.5
# The first term left out is below 1e-22 of the first one kept.
_TERMS = 13


def segment_area(half_angle: float) -> float:
    """Area: a - sin a cos a."""
    if half_angle < _FLAT:
        return _series(half_angle, lambda k: -(4**k))
    return half_angle - sin(half_angle) * cos(half_angle)


def segment_moment(half_angle: float) -> float:
    """First moment of the area about the chord: sin a - a cos a - (sin a)³ / 3."""
    if half_angle < _FLAT:
        return _series(half_angle, lambda k: (3 + 9**k) / 4 - (2 * k + 1))
    return _arc_rest(half_angle) - sin(half_angle) ** 3 / 3


def arc_moment(half_angle: float) -> float:
    """First moment of the line, the arc, about its chord: 2 (sin a - a cos a)."""
    if half_angle < _FLAT:
        return 2 * _series(half_angle, lambda k: -2 * k)
    return 2 * _arc_rest(half_angle)


def _arc_rest(half_angle: float) -> float:
    return sin(half_angle) - half_angle * cos(half_angle)


def _series(x: float, factor: Callable[[int], float]) -> float:
    """The sum of (-1)^k factor(k) x^(2k+1) / (2k+1)! from k = 1, smallest terms first."""
    terms = [factor(k) * x ** (2 * k + 1) / factorial(2 * k + 1) for k in range(1, _TERMS)]
    signed = [-term if k % 2 else term for k, term in enumerate(terms, 1)]
    return sum(reversed(signed))
