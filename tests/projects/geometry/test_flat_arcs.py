"""Arcs so flat that their centre lies a hundred metres off cost no digits."""

from __future__ import annotations

from decimal import Decimal, localcontext
from math import cos, pi, sin

import pytest
from scipy.special import roots_legendre

from projects.geometry.profile import check
from projects.geometry.segments import arc_moment, segment_area, segment_moment
from projects.geometry.slenderness import slenderness
from projects.geometry.solids import end_grain_mm2, surface_mm2, volume_mm3
from tests.projects.geometry.drawings import bead, cove, piece

CHORD, FIRST, LAST = 80, 10, 13
RADII = [90, 500, 5_000, 100_000]
SHAPES = [(bead, 1), (cove, -1)]


def close(value):
    return pytest.approx(value, rel=1e-12)


def along(radius, sign):
    """Places of eighty Gauss points with their weights, r and dr/dz there: by decimals with 50 digits."""
    with localcontext() as context:
        context.prec = 50
        wide, high = Decimal(CHORD), Decimal(LAST - FIRST)
        length = (wide**2 + high**2).sqrt()
        off = (Decimal(radius) ** 2 - length**2 / 4).sqrt() / length
        centre_z, centre_r = wide / 2 + sign * off * high, Decimal(FIRST + LAST) / 2 - sign * off * wide
        for x, weight in zip(*roots_legendre(80), strict=True):
            reach = wide / 2 * (1 + Decimal(float(x))) - centre_z
            height = (Decimal(radius) ** 2 - reach**2).sqrt()
            yield float(weight) * CHORD / 2, float(centre_r + sign * height), float(-sign * reach / height)


@pytest.mark.parametrize("radius", RADII)
@pytest.mark.parametrize(("shape", "sign"), SHAPES, ids=["bead", "cove"])
def test_an_arc_of_any_radius_has_its_twelve_digits(radius, shape, sign):
    arc = piece((0, 2 * FIRST), shape(radius), (CHORD, 2 * LAST))
    check(arc)
    points = list(along(radius, sign))

    compliance = sum(weight / (2 * r) ** 4 for weight, r, _slope in points)

    assert volume_mm3(arc) == close(pi * sum(weight * r**2 for weight, r, _slope in points))
    assert surface_mm2(arc).outside == close(
        2 * pi * sum(weight * r * (1 + slope**2) ** 0.5 for weight, r, slope in points)
    )
    across = end_grain_mm2(arc, grain_across=True).outside
    assert across == close(4 * sum(weight * r for weight, r, _slope in points))
    assert slenderness(arc).bar_mm == close((CHORD / compliance) ** 0.25)


@pytest.mark.parametrize("function", [segment_area, segment_moment, arc_moment])
def test_series_and_closed_form_meet(function):
    """Where the one takes over from the other, nothing jumps by more than a last digit or so."""
    below, above = 0.4999999999999, 0.5000000000001

    assert function(below) == pytest.approx(function(above), rel=3e-12)


def test_the_segment_of_a_half_circle_is_the_textbook_s():
    """Area pi/2, centroid 4 / 3 pi; of the line 2 / pi off, of length pi."""
    assert segment_area(pi / 2) == close(pi / 2)
    assert segment_moment(pi / 2) == close(pi / 2 * 4 / (3 * pi))
    assert arc_moment(pi / 2) == close(pi * 2 / pi)


@pytest.mark.parametrize("a", [0.3, 0.49, 0.51, 1.2])
def test_the_segment_is_sector_less_triangle(a):
    """Sector a with its centroid 2 sin a / 3 a from the centre, triangle sin a cos a with 2/3 cos a."""
    sector, triangle = a, sin(a) * cos(a)
    from_centre = sector * 2 * sin(a) / (3 * a) - triangle * 2 / 3 * cos(a)

    assert segment_area(a) == pytest.approx(sector - triangle, rel=1e-12)
    assert segment_moment(a) == pytest.approx(from_centre - cos(a) * (sector - triangle), rel=1e-10)
