"""The closed forms against `scipy.integrate` on two hundred random profiles, with 1e-9 allowed."""

from __future__ import annotations

from math import cos, hypot, pi

import pytest
from scipy.integrate import dblquad

from projects.geometry.solids import end_grain_mm2, surface_mm2, volume_mm3
from tests.projects.geometry.drawings import nm, random_profile
from tests.projects.geometry.quadrature import arc, curves, disc, straight

EACH_SEED = pytest.mark.parametrize("seed", range(200))
CLOSE = 1e-9


def close(value):
    return pytest.approx(value, rel=CLOSE, abs=0)


def faces(profile):
    """Areas of both ends less what of the bore opens there, and of the bore's flat bottoms."""
    ends = disc(profile.marks[0]) + disc(profile.marks[-1])
    if profile.bore is None:
        return ends, 0.0
    pairs = [(profile.bore.marks[0], profile.marks[0]), (profile.bore.marks[-1], profile.marks[-1])]
    opened = sum(disc(mark) for mark, end in pairs if mark.at == end.at)
    return ends - opened, sum(disc(mark) for mark, end in pairs if mark.at != end.at)


def inside(profile):
    return () if profile.bore is None else tuple(curves(profile.bore))


@EACH_SEED
def test_the_volume_of_a_random_profile(seed):
    profile = random_profile(seed)

    bore = sum(curve.volume() for curve in inside(profile))

    assert volume_mm3(profile) == close(sum(curve.volume() for curve in curves(profile)) - bore)


@EACH_SEED
def test_the_surface_of_a_random_profile(seed):
    profile = random_profile(seed)
    ends, bottom = faces(profile)

    areas = surface_mm2(profile)

    assert areas.outside == close(sum(curve.surface() for curve in curves(profile)))
    assert areas.inside == close(sum(curve.surface() for curve in inside(profile)) + bottom)
    assert areas.ends == close(ends)
    assert areas.total == areas.outside + areas.inside + areas.ends


@EACH_SEED
def test_the_end_grain_of_a_random_profile_with_the_grain_along_it(seed):
    profile = random_profile(seed)
    ends, bottom = faces(profile)

    areas = end_grain_mm2(profile, grain_across=False)

    assert areas.outside == close(sum(curve.seen_along() for curve in curves(profile)))
    assert areas.inside == close(sum(curve.seen_along() for curve in inside(profile)) + bottom)
    assert areas.ends == close(ends)


@EACH_SEED
def test_the_end_grain_of_a_random_profile_with_the_grain_across_it(seed):
    profile = random_profile(seed)

    areas = end_grain_mm2(profile, grain_across=True)

    assert areas.outside == close(sum(curve.seen_across() for curve in curves(profile)))
    assert areas.inside == close(sum(curve.seen_across() for curve in inside(profile)))
    assert areas.ends == 0


def test_the_random_profiles_have_every_shape_inside_and_outside():
    profiles = [random_profile(seed) for seed in range(200)]

    outside = {shape.kind for profile in profiles for shape in profile.shapes}
    within = {shape.kind for profile in profiles if profile.bore for shape in profile.bore.shapes}

    assert len(outside) == len(within) == 4
    assert sum(profile.bore is not None for profile in profiles) == 100


@pytest.mark.parametrize(
    "curve",
    [
        straight(0, nm(3), nm(10), nm(8)),
        arc(0, nm(5), nm(8), nm(7), nm(6), 1),
        arc(0, nm(5), nm(8), nm(7), nm(6), -1),
    ],
    ids=["cone", "bead", "cove"],
)
def test_the_whole_surface_integral_of_grain_across_needs_no_splitting(curve):
    """The integral of |n · x| over angle and length at once, with x square to the axis."""

    def density(f, t):
        slope = curve.dz(t) / hypot(curve.dz(t), curve.dr(t))
        return abs(slope * cos(f)) * curve.r(t) * hypot(curve.dz(t), curve.dr(t))

    quarter = dblquad(density, curve.low, curve.high, 0, pi / 2)[0]

    assert 4 * quarter == close(curve.seen_across())
