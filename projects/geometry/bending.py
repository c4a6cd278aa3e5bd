"""The integral of dz / d⁴ along a piece, in 1/mm³.

For cylinders and cones it has a closed form. For arcs it is summed by Gauss-Legendre over panels of the
angle, each halved until the proved bound of its error is under 1e-13 of its value.
"""

from __future__ import annotations

from math import cos, cosh, pi, sinh, sqrt

from projects.geometry.gauss import ELLIPSE_HALF_HEIGHT, ELLIPSE_HALF_LENGTH, ERROR_PER_BOUND, panel
from projects.geometry.pieces import Arc, Piece

TOLERANCE = 1e-13


def compliance(piece: Piece, low: float, high: float) -> float:
    """The integral over that part of the piece which lies between these z; the wood there has thickness."""
    low, high = max(low, piece.z1), min(high, piece.z2)
    if low >= high:
        return 0.0
    if isinstance(piece, Arc):
        return _of_arc(piece, piece.angle_at(low), piece.angle_at(high))
    first, last = 2 * piece.span_at(low)[0], 2 * piece.span_at(high)[0]
    return (high - low) * (first**2 + first * last + last**2) / (3 * first**3 * last**3)


def _of_arc(arc: Arc, low: float, high: float) -> float:
    value = panel(lambda u: integrand(arc, u), low, high)
    if error_bound(arc, low, high) <= TOLERANCE * value:
        return value
    middle = (low + high) / 2
    return _of_arc(arc, low, middle) + _of_arc(arc, middle, high)


def integrand(arc: Arc, u: float) -> float:
    """dz/du over d⁴."""
    return arc.radius * cos(u - arc.tilt) / (2 * arc.at_angle(u)[1]) ** 4


def error_bound(arc: Arc, low: float, high: float) -> float:
    """The bound of `gauss.py`: the integrand's largest size on the ellipse round the panel, from below by r.

    With t = u - tilt, r = centre ± radius · cos t. At t = x + iy the real part of cos t is cos x cosh y, and
    |cos t|² is cos² x + sinh² y; the ellipse lies in the rectangle of its half axes.
    """
    half = (high - low) / 2
    reach, height = half * ELLIPSE_HALF_LENGTH, half * ELLIPSE_HALF_HEIGHT
    middle = (low + high) / 2 - arc.tilt
    least, most = _cosines(middle - reach, middle + reach)
    thinnest = _thinnest(arc, least, most, height)
    if thinnest <= 0:
        return float("inf")
    size = arc.radius * sqrt(max(least**2, most**2) + sinh(height) ** 2) / (2 * thinnest) ** 4
    return half * size * ERROR_PER_BOUND


def _cosines(low: float, high: float) -> tuple[float, float]:
    """Least and greatest cosine between these angles, which lie within a full turn of nought."""
    ends = (cos(low), cos(high))
    least = -1.0 if low < -pi or high > pi else min(ends)
    return least, 1.0 if low <= 0 <= high else max(ends)


def _thinnest(arc: Arc, least: float, most: float, height: float) -> float:
    """What the real part of r is never below, in the rectangle."""
    grown = cosh(height)
    cosine = max(most, most * grown) if arc.inwards else min(least, least * grown)
    return arc.centre[1] + arc.sign * arc.radius * cosine
