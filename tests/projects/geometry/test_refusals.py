"""Drawings that no piece of wood can have, each with the mark it fails at."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest
from django.conf import settings

from projects.geometry.marks import ProfileError, Shape, ShapeKind
from projects.geometry.profile import Profile, check
from tests.projects.geometry.drawings import bead, bored, cove, hole, nm, piece, v_cut

CYLINDER = piece((0, 20), (50, 20))


def refusal(profile):
    with pytest.raises(ProfileError) as caught:
        check(profile)
    error = caught.value
    return error.code, error.mark, error.inside, error.values


def test_a_drawing_that_a_turner_would_make_is_let_pass():
    """A dipper with beads, a long cone, a cove, steps and a slender bead; from our own example page."""
    dipper = piece(
        *((0, 4), bead(7), (7, 12), (12, 8), (92, 12), cove(8), (102, 18), bead(4), (108, 18), (108, 12)),
        *((114, 12), (114, 28), bead(82), (158, 28), bead(14), (164, 8)),
    )

    check(dipper)


class TestMarks:
    @pytest.mark.parametrize(("profile", "missing"), [(Profile((), ()), 1), (piece((0, 20)), 2)])
    def test_a_piece_has_two(self, profile, missing):
        assert refusal(profile) == ("too_few_marks", missing, False, {})

    @pytest.mark.parametrize(("shapes", "mark"), [(1, 3), (3, 3)])
    def test_each_but_the_first_has_a_shape_before_it(self, shapes, mark):
        profile = Profile(piece((0, 9), (5, 9), (9, 9)).marks, (Shape(ShapeKind.STRAIGHT),) * shapes)

        assert refusal(profile) == ("shapes_miscounted", mark, False, {"marks": 3, "shapes": shapes})

    def test_they_stand_in_order(self):
        profile = piece((0, 20), (30, 20), (29.999, 18), (50, 18))

        assert refusal(profile) == ("not_in_order", 3, False, {"at": nm(29.999), "previous": nm(30)})

    def test_two_at_one_place_are_a_step(self):
        check(piece((0, 20), (30, 20), (30, 18), (50, 18)))

    def test_three_at_one_place_are_one_too_many(self):
        profile = piece((0, 20), (30, 20), (30, 25), (30, 18), (50, 18))

        assert refusal(profile) == ("three_in_one_place", 4, False, {})

    @pytest.mark.parametrize(
        ("profile", "mark"), [(piece((0, 5), (0, 20), (9, 20)), 2), (piece((0, 9), (9, 9), (9, 2)), 3)]
    )
    def test_the_first_and_last_say_the_faces_so_that_no_step_stands_there(self, profile, mark):
        assert refusal(profile) == ("step_at_end", mark, False, {})

    def test_a_piece_has_length(self):
        assert refusal(piece((7, 20), (7, 10))) == ("zero_length", 2, False, {"kind": ShapeKind.STRAIGHT})

    def test_a_step_has_height(self):
        profile = piece((0, 20), (30, 20), (30, 20), (50, 20))

        assert refusal(profile) == ("zero_length", 3, False, {"kind": ShapeKind.STRAIGHT})

    @pytest.mark.parametrize("shape", [bead(5), cove(5), v_cut(3)], ids=["bead", "cove", "v_cut"])
    def test_only_a_straight_may_have_no_length(self, shape):
        profile = piece((0, 20), (30, 20), shape, (30, 18), (50, 18))

        assert refusal(profile) == ("zero_length", 3, False, {"kind": shape.kind})


class TestDiameters:
    def test_none_is_negative(self):
        profile = piece((0, 20), (50, -0.001))

        assert refusal(profile) == ("negative_diameter", 2, False, {"diameter": -1000})

    def test_nought_is_for_an_end(self):
        check(piece((0, 0), (30, 20), (50, 0)))

        assert refusal(piece((0, 20), (30, 0), (50, 20))) == ("nought_diameter", 2, False, {})

    @pytest.mark.parametrize("shape", [None, cove(40), v_cut(3)], ids=["straight", "cove", "v_cut"])
    def test_nought_at_both_ends_of_a_shape_leaves_no_wood(self, shape):
        profile = piece((0, 0), *([] if shape is None else [shape]), (50, 0))

        assert refusal(profile)[:2] == ("nought_diameter", 2)

    def test_a_ball_begins_and_ends_in_a_point(self):
        check(piece((0, 0), bead(), (50, 0)))


class TestMeasuresOfShapes:
    @pytest.mark.parametrize("kind", [ShapeKind.STRAIGHT, ShapeKind.V_CUT])
    def test_a_radius_belongs_to_an_arc(self, kind):
        profile = piece((0, 20), Shape(kind, radius=nm(40), depth=None), (50, 20))

        assert refusal(profile) == ("radius_unused", 2, False, {"kind": kind})

    @pytest.mark.parametrize("kind", [ShapeKind.STRAIGHT, ShapeKind.BEAD, ShapeKind.COVE])
    def test_a_depth_belongs_to_a_v_cut(self, kind):
        profile = piece((0, 20), Shape(kind, depth=nm(4)), (50, 20))

        assert refusal(profile) == ("depth_unused", 2, False, {"kind": kind})

    @pytest.mark.parametrize("shape", [bead(), cove()], ids=["bead", "cove"])
    def test_a_radius_may_be_left_out_where_both_diameters_are_one(self, shape):
        check(piece((0, 90), shape, (50, 90)))

        profile = piece((0, 90), shape, (50, 90.000001))
        assert refusal(profile) == ("radius_missing", 2, False, {"kind": shape.kind})

    @pytest.mark.parametrize("shape", [bead, cove])
    def test_a_radius_of_half_the_chord_joins_its_marks_and_a_shorter_one_does_not(self, shape):
        check(piece((0, 90), shape(25), (50, 90)))

        profile = piece((0, 90), shape(24.999999), (50, 90))
        values = {"radius": nm(25) - 1, "least": nm(25)}
        assert refusal(profile) == ("radius_too_short", 2, False, values)

    @pytest.mark.parametrize("radius", [0, -30])
    def test_a_radius_is_above_nought(self, radius):
        assert refusal(piece((0, 90), bead(radius), (50, 90)))[:2] == ("radius_too_short", 2)

    def test_a_radius_that_was_rounded_to_whole_nanometres_still_joins_its_marks(self):
        """Half of 3/64 in is 595 312.5 nm, which nobody can type to the half nanometre."""
        wide = 1_190_625
        marks = piece((0, 20), (wide / 1e6, 20)).marks

        for radius in (595_312, 595_313):
            check(Profile(marks, (Shape(ShapeKind.BEAD, radius=radius),)))

    @pytest.mark.parametrize("shape", [bead, cove])
    def test_a_quarter_round_stands_between_its_marks_and_less_would_overhang(self, shape):
        check(piece((0, 40), shape(10), (10, 60)))

        profile = piece((0, 40), shape(9.999999), (10, 60))
        assert refusal(profile) == ("overhang", 2, False, {"radius": nm(10) - 1, "least": nm(10)})

    @pytest.mark.parametrize(("wide", "high"), [(3, 40), (30, 4), (7.000001, 0.3), (11, 11.5)])
    def test_the_least_radius_of_a_refusal_cures_it_and_one_nanometre_less_does_not(self, wide, high):
        def with_radius(radius):
            marks = piece((0, 100), (wide, 100 + 2 * high)).marks
            return Profile(marks, (Shape(ShapeKind.BEAD, radius=radius),))

        least = refusal(with_radius(1))[3]["least"]

        check(with_radius(least))
        assert refusal(with_radius(least - 2))[0] in {"overhang", "radius_too_short"}

    def test_a_v_cut_has_a_depth(self):
        profile = piece((0, 20), Shape(ShapeKind.V_CUT), (50, 20))

        assert refusal(profile) == ("depth_missing", 2, False, {})

    @pytest.mark.parametrize(("end", "depth", "least"), [(20, 0, 1), (20, -3, 1), (24, 1, 1_000_001)])
    def test_a_v_cut_goes_below_both_its_marks(self, end, depth, least):
        check(Profile(piece((0, 20), (50, end)).marks, (Shape(ShapeKind.V_CUT, depth=least),)))

        values = {"depth": nm(depth), "least": least}
        assert refusal(piece((0, 20), v_cut(depth), (50, end))) == ("v_cut_too_shallow", 2, False, values)


class TestTheAxis:
    def test_a_v_cut_stays_off_it(self):
        check(Profile(CYLINDER.marks, (Shape(ShapeKind.V_CUT, depth=nm(10) - 1),)))

        values = {"depth": nm(10), "most": nm(10) - 1}
        assert refusal(piece((0, 20), v_cut(10), (50, 20))) == ("v_cut_through_axis", 2, False, values)

    @pytest.mark.parametrize("wide", [20, 20.000002, 30])
    def test_a_cove_that_meets_or_crosses_it_is_refused(self, wide):
        assert refusal(piece((0, 20), cove(), (wide, 20))) == ("cove_through_axis", 2, False, {})

    def test_a_cove_that_leaves_a_neck_of_two_nanometres_does_not_meet_it(self):
        check(piece((0, 20), cove(), (19.999998, 20)))

    def test_a_sloping_cove_is_judged_by_its_lowest_point(self):
        """On a circle of 25 its marks lie 7 left and 24 below the centre, and 24 right and 7 below."""
        neck = 0.0000005
        check(piece((0, 2 * neck + 2), cove(25), (31, 2 * neck + 36)))

        assert refusal(piece((0, 2), cove(25), (31, 36))) == ("cove_through_axis", 2, False, {})

    def test_a_cove_may_run_out_to_the_point_at_an_end(self):
        check(piece((0, 0), cove(40), (20, 20)))

    def test_a_bead_inside_a_bore_stays_off_it(self):
        outside = piece((0, 80), (60, 80))
        check(bored(outside, hole((0, 20), bead(), (19.999998, 20), (30, 20))))

        profile = bored(outside, hole((0, 20), bead(), (20, 20), (30, 20)))
        assert refusal(profile) == ("bead_through_axis", 2, True, {})

    def test_inside_a_bore_cove_and_v_cut_go_away_from_it(self):
        check(bored(piece((0, 80), (60, 80)), hole((0, 20), cove(), (30, 20), v_cut(12), (50, 20))))


class TestBores:
    def test_a_fault_inside_says_that_it_is_inside(self):
        profile = bored(CYLINDER, hole((0, 8), (20, 8), (10, 8)))

        assert refusal(profile) == ("not_in_order", 3, True, {"at": nm(10), "previous": nm(20)})

    def test_the_outside_is_looked_at_first(self):
        profile = bored(piece((0, 20), (50, -1)), hole((0, 8)))

        assert refusal(profile)[:3] == ("negative_diameter", 2, False)

    @pytest.mark.parametrize(
        ("bore", "mark"), [(hole((-1, 8), (20, 8)), 1), (hole((20, 8), (50.000001, 8)), 2)]
    )
    def test_a_bore_lies_within_the_piece(self, bore, mark):
        assert refusal(bored(CYLINDER, bore)) == ("bore_outside", mark, True, {})

    def test_a_bore_is_open_at_an_end(self):
        for bore in (hole((0, 8), (20, 8)), hole((20, 8), (50, 8)), hole((0, 8), (50, 8))):
            check(bored(CYLINDER, bore))

        assert refusal(bored(CYLINDER, hole((1, 8), (49, 8)))) == ("bore_opens_nowhere", 1, True, {})

    @pytest.mark.parametrize(
        ("bore", "mark"), [(hole((0, 0), (20, 8)), 1), (hole((20, 8), (50, 0)), 2)], ids=["left", "right"]
    )
    def test_a_bore_opens_wider_than_a_point(self, bore, mark):
        assert refusal(bored(CYLINDER, bore)) == ("nought_diameter", mark, True, {})

    def test_a_drill_point_ends_in_one(self):
        check(bored(CYLINDER, hole((0, 8), (20, 8), (23, 0))))


def test_every_code_that_is_raised_stands_in_the_docstring_of_the_error():
    sources = Path(settings.BASE_DIR, "projects", "geometry").glob("*.py")
    raised = {
        node.args[0].value
        for path in sources
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id == "ProfileError"
        and isinstance(node.args[0], ast.Constant)
    }
    listed = set(re.findall(r"\w+", ProfileError.__doc__ or ""))

    assert len(raised) > 15
    assert (raised | {"bead_through_axis", "cove_through_axis"}) - listed == set()
