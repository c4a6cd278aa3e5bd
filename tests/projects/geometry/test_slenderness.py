"""Slenderness: the plain bar that bends as much, by d⁴, as the second moment of area goes.

The stiffness of a round bar, pi d⁴ / 64 times the modulus, is in every handbook of strength of materials.
That overhung work counts double is common practice.
"""

from __future__ import annotations

from math import pi

import pytest
from scipy.special import roots_legendre

from projects.geometry.bending import compliance, error_bound, integrand
from projects.geometry.gauss import POINTS, nodes_and_weights, panel
from projects.geometry.marks import ProfileError
from projects.geometry.pieces import Arc, Straight
from projects.geometry.profile import check
from projects.geometry.slenderness import Grip, Stub, slenderness
from tests.projects.geometry.drawings import bead, cove, nm, piece, random_profile, v_cut
from tests.projects.geometry.quadrature import arc as arc_by_quadrature
from tests.projects.geometry.quadrature import curves, straight

BAR = piece((0, 10), (100, 10))


def close(value):
    return pytest.approx(value, rel=1e-12)


def stub(diameter, length=0.0):
    return Stub(nm(diameter), nm(length))


class TestTheBar:
    def test_a_bar_of_ten_that_is_a_hundred_long_has_ten(self):
        found = slenderness(BAR)

        assert (found.unsupported_mm, found.bar_mm, found.ratio) == (100, close(10), close(10))

    def test_overhung_it_has_twenty(self):
        found = slenderness(BAR, overhung=True)

        assert (found.unsupported_mm, found.counted_mm, found.ratio) == (100, 200, close(20))

    def test_two_cylinders_bend_one_after_the_other(self):
        """60 of 20 and 40 of 10: 60/20⁴ + 40/10⁴ is 0.004375, so d is (100 / 0.004375)^¼."""
        stepped = piece((0, 20), (60, 20), (60, 10), (100, 10))

        assert slenderness(stepped).bar_mm == close((100 / 0.004375) ** 0.25)

    def test_a_cone_has_its_closed_form(self):
        """The integral of dz / (a + b z)⁴ is (1/a³ - 1/c³) / 3b."""
        cone = piece((0, 8), (80, 24))

        integral = (1 / 8**3 - 1 / 24**3) / (3 * (24 - 8) / 80)
        assert slenderness(cone).bar_mm == close((80 / integral) ** 0.25)

    def test_a_v_cut_is_two_cones(self):
        cut, cones = piece((0, 20), v_cut(6), (30, 20)), piece((0, 20), (15, 8), (30, 20))

        assert slenderness(cut) == slenderness(cones)

    @pytest.mark.parametrize("seed", range(0, 200, 2))
    def test_a_random_profile_bends_as_scipy_says(self, seed):
        profile = random_profile(seed)
        ends = {mark.diameter for mark in (profile.marks[0], profile.marks[-1])}
        if 0 in ends:
            assert refusal(profile)[0] == "nothing_left_at_end"
            return

        found = slenderness(profile)

        integral = sum(curve.compliance() for curve in curves(profile))
        assert found.bar_mm == pytest.approx((found.unsupported_mm / integral) ** 0.25, rel=1e-9)


def refusal(profile, **ends):
    with pytest.raises(ProfileError) as caught:
        slenderness(profile, **ends)
    return caught.value.code, caught.value.mark


class TestWhatIsLeftAtTheEnds:
    def test_a_stub_stands_free_and_bends_too(self):
        found = slenderness(BAR, left=stub(10, 20), right=stub(5, 2))

        assert found.unsupported_mm == close(122)
        assert found.bar_mm == close((122 / (120 / 10**4 + 2 / 5**4)) ** 0.25)

    def test_a_cone_to_a_point_is_as_thick_as_its_nub_until_it_outgrows_it(self):
        """From nought to 20 over 100 it reaches a nub of 5 at 25."""
        cone, rest = piece((0, 0), (100, 20)), piece((25, 5), (100, 20))

        found = slenderness(cone, left=stub(5))

        rest_integral = 75 / slenderness(rest).bar_mm ** 4
        assert found.bar_mm == close((100 / (25 / 5**4 + rest_integral)) ** 0.25)

    def test_a_round_end_is_as_thick_as_its_nub_until_it_outgrows_it(self):
        """A ball of 50: it is 14 thick one millimetre from its pole (24² + 7² = 25²)."""
        ball = piece((0, 0), bead(), (50, 0))
        zone = piece((1, 14), bead(25), (49, 14))

        found = slenderness(ball, left=stub(14), right=stub(14))

        zone_integral = 48 / slenderness(zone).bar_mm ** 4
        assert found.bar_mm == close((50 / (2 / 14**4 + zone_integral)) ** 0.25)

    def test_a_nub_is_outgrown_before_the_top_of_a_lopsided_bead(self):
        """On a circle of 25 round (25, 0): 24 off the axis at 18, then over the top and down to 15 at 45."""
        lopsided, rest = piece((0, 0), bead(25), (45, 30)), piece((18, 48), bead(25), (45, 30))

        found = slenderness(lopsided, left=stub(48))

        assert found.bar_mm == close((45 / (18 / 48**4 + 27 / slenderness(rest).bar_mm ** 4)) ** 0.25)

    def test_it_holds_across_marks_and_steps_as_long_as_the_piece_grows(self):
        grown = piece((0, 0), (10, 4), cove(30), (20, 10), (20, 16), (60, 16))

        found = slenderness(grown, left=stub(12))

        assert found.bar_mm == close((60 / (20 / 12**4 + 40 / 16**4)) ** 0.25)

    def test_a_neck_farther_in_is_as_thin_as_it_is_drawn(self):
        """A thick tenon left at an end doesn't stiffen what is beyond the first place that grows no more."""
        necked = piece((0, 10), (20, 20), (30, 20), (60, 6), (90, 20))

        thick, thin = slenderness(necked, left=stub(40)), slenderness(necked, left=stub(20))

        rest = 70 / slenderness(piece((20, 20), (30, 20), (60, 6), (90, 20))).bar_mm ** 4
        assert thick.bar_mm == close((90 / (20 / 40**4 + rest)) ** 0.25)
        assert thin.bar_mm == close((90 / (20 / 20**4 + rest)) ** 0.25)

    def test_a_cylinder_beside_a_thick_tenon_is_as_thin_as_it_is_drawn(self):
        assert slenderness(BAR, left=stub(40), right=stub(40)).bar_mm == close(10)

    def test_a_bead_grows_up_to_its_top_only(self):
        """Its top of 40 lies half-way; a tenon of 50 stands round the first half."""
        round_bead = piece((0, 0), bead(), (40, 0))

        found = slenderness(round_bead, left=stub(50), right=stub(10))

        other_half = slenderness(piece((0, 40), bead(20), (20, 0)), right=stub(10))
        assert found.bar_mm == close((40 / (20 / 50**4 + 20 / other_half.bar_mm**4)) ** 0.25)

    def test_an_end_that_runs_out_to_a_point_needs_a_stub(self):
        pointed = piece((0, 0), (50, 20), (80, 0))

        assert refusal(pointed, right=stub(3)) == ("nothing_left_at_end", 1)
        assert refusal(pointed, left=stub(3)) == ("nothing_left_at_end", 3)

    def test_a_grip_on_the_piece_itself_shortens_it(self):
        found = slenderness(BAR, left=Grip(nm(30)))

        assert (found.unsupported_mm, found.bar_mm) == (close(70), close(10))

    def test_a_grip_over_a_pointed_end_needs_no_stub(self):
        cone = piece((0, 0), (100, 20))

        assert slenderness(cone, left=Grip(nm(25))).bar_mm == slenderness(piece((25, 5), (100, 20))).bar_mm

    def test_a_grip_ends_what_the_other_end_s_stub_stands_round(self):
        """From the right a nub of 16 would stand round the cone as far as 20, but 30 are held."""
        there = slenderness(piece((0, 20), (100, 0)), left=Grip(nm(30)), right=stub(16))
        here = slenderness(piece((0, 0), (100, 20)), right=Grip(nm(30)), left=stub(16))

        assert (there.unsupported_mm, there.bar_mm) == (close(70), close(16))
        assert here == there

    @pytest.mark.parametrize("right", [70, 70.1])
    def test_grips_leave_something_free(self, right):
        assert refusal(BAR, left=Grip(nm(30)), right=Grip(nm(right))) == ("nothing_unsupported", 2)


class TestTheQuadrature:
    def test_its_points_and_weights_are_those_of_scipy(self):
        points, weights = roots_legendre(POINTS)

        ours = sorted(nodes_and_weights())

        assert [x for x, _weight in ours] == pytest.approx(list(points), abs=1e-15)
        assert [weight for _x, weight in ours] == pytest.approx(list(weights), rel=1e-13)

    @pytest.mark.parametrize("neck", [2, 0.2, 0.01])
    def test_a_cove_with_a_neck_of_almost_nothing_keeps_its_digits(self, neck):
        """The textbook integral of dz / r⁴ through t: R cos t / (a - R cos t)⁴, by scipy in halves."""
        core = 10 + neck / 2
        cove_ = Arc(0.0, core, 20.0, core, 0.0, inwards=True)

        by_scipy = arc_by_quadrature(0, nm(core), nm(20), nm(core), nm(10), -1).compliance()

        assert compliance(cove_, 0, 20) == pytest.approx(by_scipy, rel=1e-10)

    @pytest.mark.parametrize("apothem", [0, 2, 5, 20])
    @pytest.mark.parametrize("core", [12, 16, 25, 40])
    @pytest.mark.parametrize("inwards", [False, True])
    def test_its_bound_is_never_below_its_error(self, apothem, core, inwards):
        arc = Arc(0.0, core, 20.0, core + 1, apothem, inwards)
        half = arc.half_angle

        once = panel(lambda u: integrand(arc, u), -half, half)

        error = abs(once - compliance(arc, 0, 20))
        assert error_bound(arc, -half, half) > 0
        assert error <= error_bound(arc, -half, half) + 1e-14 * once

    @pytest.mark.parametrize(("low", "high"), [(3, 17), (0, 9), (12, 40), (-5, 4)])
    def test_a_part_of_an_arc_is_that_part(self, low, high):
        """Three parts make the whole, whichever way it bends."""
        for inwards in (False, True):
            arc = Arc(0.0, 14.0, 20.0, 18.0, 5.0, inwards)

            parts = [compliance(arc, *part) for part in ((-9, low), (low, high), (high, 99))]

            assert sum(parts) == close(compliance(arc, 0, 20))

    def test_a_part_of_a_cone_is_that_part(self):
        cone = Straight(10.0, 4.0, 30.0, 14.0)

        by_scipy = straight(nm(14), nm(6), nm(24), nm(11)).compliance()

        assert compliance(cone, 14, 24) == pytest.approx(by_scipy, rel=1e-10)
        assert compliance(cone, 40, 50) == 0


def test_the_equal_bar_sags_as_much_as_the_piece_under_one_bending_moment():
    """Slope under a constant moment M is the integral of M / E I; with I = pi d⁴ / 64 both give the same."""
    turned = piece((0, 12), cove(90), (50, 20), bead(30), (80, 16))
    check(turned)

    found = slenderness(turned)

    of_piece = sum(curve.compliance() for curve in curves(turned)) * 64 / pi
    assert of_piece == pytest.approx(80 * 64 / (pi * found.bar_mm**4), rel=1e-9)
