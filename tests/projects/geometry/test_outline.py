from __future__ import annotations

from itertools import pairwise
from math import hypot, pi

import pytest

from projects.geometry.outline import (
    Place,
    Stroke,
    extremes,
    largest_mm,
    length_mm,
    polyline,
    section,
    smallest_mm,
    strokes,
    turns,
)
from projects.geometry.solids import volume_mm3
from tests.projects.geometry.drawings import bead, bored, cove, hole, piece, random_profile, v_cut

TURNED = piece(
    *((2, 10), (22, 30), bead(), (42, 30), cove(), (52, 30), v_cut(6), (60, 30), (60, 24), (80, 0))
)
EACH_SEED = pytest.mark.parametrize("seed", range(60))


def close(value):
    return pytest.approx(value, abs=1e-9)


class TestStrokes:
    def test_they_run_from_mark_to_mark_with_true_arcs(self):
        assert strokes(TURNED) == (
            Stroke((2, 5), (22, 15), 2),
            Stroke((22, 15), (42, 15), 3, radius=10, away=True),
            Stroke((42, 15), (52, 15), 4, radius=5, away=False),
            Stroke((52, 15), (56, 9), 5),
            Stroke((56, 9), (60, 15), 5),
            Stroke((60, 15), (60, 12), 6),
            Stroke((60, 12), (80, 0), 7),
        )

    def test_inside_a_bore_a_cove_bends_away_and_a_bead_towards_the_axis(self):
        bore = hole((0, 20), cove(20), (10, 20), bead(20), (20, 20))

        assert [stroke.away for stroke in strokes(bore)] == [True, False]

    @EACH_SEED
    def test_each_begins_where_the_one_before_it_ended(self, seed):
        drawn = strokes(random_profile(seed))

        assert all(before.end == after.start for before, after in pairwise(drawn))


class TestPolylines:
    @EACH_SEED
    @pytest.mark.parametrize("within", [0.5, 0.01])
    def test_none_lies_farther_from_its_curve_than_allowed_and_its_points_on_it(self, seed, within):
        """The frusta between the points have the volume of the piece, to what the allowance makes up."""
        profile = random_profile(seed)
        points = polyline(profile, within)

        frusta = sum(
            pi / 3 * (z2 - z1) * (r1 * r1 + r1 * r2 + r2 * r2) for (z1, r1), (z2, r2) in pairwise(points)
        )
        solid = volume_mm3(piece_without_bore(profile))
        length = sum(hypot(z2 - z1, r2 - r1) for (z1, r1), (z2, r2) in pairwise(points))
        thickest = extremes(profile).thickest.r
        assert abs(frusta - solid) <= 2 * pi * (thickest + within) * length * within

    @pytest.mark.parametrize("within", [1, 0.1, 0.005])
    def test_a_circle_is_cut_as_finely_as_asked_and_no_finer(self, within):
        points = polyline(piece((0, 0), bead(), (40, 0)), within)

        off = [20 - hypot((a[0] + b[0]) / 2 - 20, (a[1] + b[1]) / 2) for a, b in pairwise(points)]

        assert within / 4 < max(off) <= within * (1 + 1e-9)
        assert all(hypot(z - 20, r) == close(20) for z, r in points)

    def test_a_straight_has_its_two_ends(self):
        assert polyline(piece((0, 20), (50, 30))) == ((0, 10), (50, 15))

    def test_a_circle_smaller_than_the_allowance_is_its_chord(self):
        assert polyline(piece((0, 9), bead(), (1, 9)), within=3) == ((0, 4.5), (1, 4.5))


class TestSections:
    def test_a_solid_piece_is_closed_along_its_axis(self):
        assert section(piece((0, 20), (50, 30))) == ((0, 10), (50, 15), (50, 0), (0, 0))

    def test_a_tube_is_its_wall(self):
        tube = bored(piece((0, 20), (50, 30)), hole((0, 6), (50, 8)))

        assert section(tube) == ((0, 10), (50, 15), (50, 4), (0, 3))

    def test_a_blind_hole_from_the_left_is_closed_round_its_bottom(self):
        drilled = bored(piece((0, 20), (50, 20)), hole((0, 6), (30, 8)))

        assert section(drilled) == ((0, 10), (50, 10), (50, 0), (30, 0), (30, 4), (0, 3))

    def test_a_blind_hole_from_the_right_is_closed_round_its_bottom(self):
        drilled = bored(piece((0, 20), (50, 20)), hole((20, 6), (50, 8)))

        assert section(drilled) == ((0, 10), (50, 10), (50, 4), (20, 3), (20, 0), (0, 0))

    @EACH_SEED
    def test_swept_round_the_axis_it_is_the_volume(self, seed):
        """Pappus, edge by edge (Green): a polygon sweeps pi/3 · sum of dz (r1² + r1 r2 + r2²)."""
        profile = random_profile(seed)
        points = section(profile, within=1e-5)

        edges = pairwise([*points, points[0]])
        swept = sum(pi / 3 * (z2 - z1) * (r1 * r1 + r1 * r2 + r2 * r2) for (z1, r1), (z2, r2) in edges)

        assert swept == pytest.approx(volume_mm3(profile), rel=1e-4)


class TestPlaces:
    def test_turns_are_the_tops_and_floors_between_marks(self):
        """A bead of 10 on 15 stands out to 25, a cove of 5 in 15 goes down to 10, the V-cut to 9."""
        assert [(place.z, place.r, place.mark) for place in turns(TURNED)] == [
            (32, close(25), 3),
            (47, close(10), 4),
            (56, close(9), 5),
        ]

    def test_an_arc_whose_top_is_a_mark_has_no_turn(self):
        """A quarter round runs level with the axis at its upper mark."""
        assert turns(piece((0, 20), bead(10), (10, 40))) == ()

    def test_extremes_are_the_points_that_stand_out(self):
        found = extremes(TURNED)

        assert found.left == Place(2, 5, 1)
        assert found.right == Place(80, 0, 7)
        assert (found.thickest.z, found.thickest.diameter) == (32, close(50))
        assert (found.thinnest.z, found.thinnest.diameter) == (2, 10)

    def test_a_point_at_an_end_is_not_the_thinnest_place(self):
        assert smallest_mm(piece((0, 0), (20, 30), cove(), (30, 30), (50, 0))) == close(20)

    def test_a_ball_is_everywhere_as_thick_as_its_middle(self):
        ball = piece((0, 0), bead(), (30, 0))

        assert (largest_mm(ball), smallest_mm(ball), length_mm(ball)) == (close(30), close(30), 30)

    def test_the_length_is_from_the_first_mark_to_the_last(self):
        assert length_mm(TURNED) == 78

    @EACH_SEED
    def test_no_point_of_a_random_outline_lies_beyond_its_extremes(self, seed):
        profile = random_profile(seed)
        found = extremes(profile)

        points = polyline(profile, 0.001)

        assert max(r for _z, r in points) == pytest.approx(found.thickest.r, abs=0.001)
        assert (points[0], points[-1]) == ((found.left.z, found.left.r), (found.right.z, found.right.r))
        if profile.marks[0].diameter and profile.marks[-1].diameter:
            assert min(r for _z, r in points) == pytest.approx(found.thinnest.r, abs=0.001)


def piece_without_bore(profile):
    return type(profile)(profile.marks, profile.shapes)
