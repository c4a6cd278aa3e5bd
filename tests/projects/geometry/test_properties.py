"""What is true of every profile, on random ones."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from projects.geometry.marks import Bore, Mark, Profile, Shape, ShapeKind
from projects.geometry.outline import largest_mm, length_mm, smallest_mm
from projects.geometry.pieces import Arc, pieces
from projects.geometry.profile import check
from projects.geometry.slenderness import Stub, slenderness
from projects.geometry.solids import end_grain_mm2, surface_mm2, volume_mm3
from tests.projects.geometry.drawings import bored, piece, random_profile

EACH_SEED = pytest.mark.parametrize("seed", range(40))
STUB = Stub(4_000_000, 2_000_000)


def close(value):
    return pytest.approx(value, rel=1e-12)


def scaled(profile, k):
    def of(run):
        marks = tuple(Mark(k * mark.at, k * mark.diameter) for mark in run.marks)
        shapes = tuple(
            Shape(shape.kind, shape.radius and k * shape.radius, shape.depth and k * shape.depth)
            for shape in run.shapes
        )
        return replace(run, marks=marks, shapes=shapes)

    grown = of(profile)
    return grown if profile.bore is None else replace(grown, bore=of(profile.bore))


def turned_round(profile):
    def of(run):
        marks = tuple(Mark(-mark.at, mark.diameter) for mark in reversed(run.marks))
        return replace(run, marks=marks, shapes=tuple(reversed(run.shapes)))

    other = of(profile)
    return other if profile.bore is None else replace(other, bore=of(profile.bore))


def moved(profile, by):
    def of(run):
        return replace(run, marks=tuple(Mark(mark.at + by, mark.diameter) for mark in run.marks))

    other = of(profile)
    return other if profile.bore is None else replace(other, bore=of(profile.bore))


def facts(profile):
    """Everything that can be worked out, by name."""
    surface, along, across = (
        surface_mm2(profile),
        end_grain_mm2(profile, grain_across=False),
        end_grain_mm2(profile, grain_across=True),
    )
    areas = [area for three in (surface, along, across) for area in (three.outside, three.inside, three.ends)]
    bend = slenderness(profile, left=STUB, right=STUB)
    lengths = [length_mm(profile), largest_mm(profile), smallest_mm(profile), bend.bar_mm]
    return lengths, areas, volume_mm3(profile)


@EACH_SEED
@pytest.mark.parametrize("k", [2, 7])
def test_a_drawing_k_times_as_large_has_k_cubed_times_the_volume(seed, k):
    profile = random_profile(seed)
    lengths, areas, volume = facts(profile)
    large = scaled(profile, k)
    check(large)

    stub = Stub(k * STUB.diameter, k * STUB.length)
    large_lengths, large_areas, large_volume = facts(large)

    assert large_volume == close(k**3 * volume)
    assert large_areas == close([k**2 * area for area in areas])
    assert large_lengths[:3] == close([k * length for length in lengths[:3]])
    assert slenderness(large, left=stub, right=stub).bar_mm == close(k * lengths[3])


@EACH_SEED
def test_a_piece_turned_round_is_the_same_piece(seed):
    profile = random_profile(seed)
    other = turned_round(profile)
    check(other)

    for here, there in zip(facts(profile), facts(other), strict=True):
        assert there == close(here)


@EACH_SEED
def test_it_makes_no_difference_where_the_stick_begins(seed):
    profile = random_profile(seed)
    other = moved(profile, 123_456_789)
    check(other)

    for here, there in zip(facts(profile), facts(other), strict=True):
        assert there == pytest.approx(here, rel=1e-10)


@EACH_SEED
def test_a_further_mark_on_a_straight_changes_nothing(seed):
    """The straight is split at a third, which its ends are moved to make whole."""
    rng = Random(seed)
    a, b, wide = rng.randint(1, 9_000_000), rng.randint(1, 9_000_000), rng.randint(1, 9_000_000)
    ends = Mark(0, 3 * a), Mark(3 * wide, 3 * b)
    straight = Shape(ShapeKind.STRAIGHT)
    whole = Profile(ends, (straight,))
    split = Profile((ends[0], Mark(wide, 2 * a + b), ends[1]), (straight, straight))

    for here, there in zip(facts(whole), facts(split), strict=True):
        assert there == close(here)


@pytest.mark.parametrize("kind", [ShapeKind.BEAD, ShapeKind.COVE])
@pytest.mark.parametrize("inside", [False, True])
def test_a_further_mark_on_an_arc_changes_nothing(kind, inside):
    """A circle of 65 has whole points 16 and 63, 25 and 60, 39 and 52 off its centre."""
    away = (kind is ShapeKind.BEAD) is not inside
    offs = [(-39, 52), (-16, 63), (25, 60)]
    million = 1_000_000
    middle = 0 if away else 140
    sign = 1 if away else -1
    marks = [Mark((100 + z) * million, 2 * (middle + sign * r) * million) for z, r in offs]
    arc = Shape(kind, radius=65 * million)

    whole = ((marks[0], marks[2]), (arc,))
    split = (tuple(marks), (arc, arc))

    def drawn(run):
        if not inside:
            return Profile(*run)
        end = Mark(150 * million, run[0][-1].diameter)
        through = ((*run[0], end), (*run[1], Shape(ShapeKind.STRAIGHT)))
        return bored(piece((50, 400), (150, 400)), Bore(*through))

    check(drawn(whole))
    check(drawn(split))
    for here, there in zip(facts(drawn(whole)), facts(drawn(split)), strict=True):
        assert there == close(here)


@EACH_SEED
def test_at_its_ends_a_curve_has_the_very_radii_of_its_marks(seed):
    """So that two curves which share a mark never differ there by a rounding."""
    for drawn in pieces(random_profile(seed)):
        assert drawn.r1 in drawn.span_at(drawn.z1)
        assert drawn.r2 in drawn.span_at(drawn.z2)


@EACH_SEED
def test_every_point_of_an_arc_lies_on_its_circle_and_at_its_place(seed):
    arcs = [drawn for drawn in pieces(random_profile(seed)) if isinstance(drawn, Arc)]

    for arc in arcs:
        for share in (-1, -0.6, 0, 0.3, 1):
            z, r = arc.at_angle(share * arc.half_angle)
            from_centre = ((z - arc.centre[0]) ** 2 + (r - arc.centre[1]) ** 2) ** 0.5
            assert from_centre == close(arc.radius)
            assert arc.z1 - 1e-9 <= z <= arc.z2 + 1e-9
            back_z, back_r = arc.at_angle(arc.angle_at(z))
            assert back_z == pytest.approx(z, abs=1e-6)
            assert back_r == pytest.approx(r, abs=1e-4 if abs(share) == 1 else 1e-6)
