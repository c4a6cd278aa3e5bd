"""Volumes, surfaces and end grain of bodies that handbooks give a formula for.

The formulas of sphere, zone, cap, cone, frustum, torus and barrel are those of I. N. Bronshtein, K. A.
Semendyayev and others, Handbook of Mathematics, geometry of solids; Pappus' theorems as in G. B. Thomas,
Calculus and Analytic Geometry, moments and centres of mass. Both from memory.
"""

from __future__ import annotations

from math import hypot, pi

import pytest

from projects.geometry.profile import check
from projects.geometry.solids import end_grain_mm2, end_grain_share, mass_g, surface_mm2, volume_mm3
from tests.projects.geometry.drawings import bead, bored, cove, hole, piece, v_cut


def exactly(value):
    return pytest.approx(value, rel=1e-13)


def checked(profile):
    check(profile)
    return profile


CYLINDER = piece((0, 20), (60, 20))
BALL = piece((0, 0), bead(), (30, 0))
CONE = piece((0, 0), (40, 60))
FRUSTUM = piece((0, 80), (120, 40))


class TestBodiesOfTheHandbook:
    def test_a_cylinder(self):
        assert volume_mm3(CYLINDER) == exactly(pi * 10**2 * 60)
        assert surface_mm2(CYLINDER).outside == exactly(2 * pi * 10 * 60)
        assert surface_mm2(CYLINDER).ends == exactly(2 * pi * 10**2)

    def test_a_ball(self):
        assert volume_mm3(BALL) == exactly(4 / 3 * pi * 15**3)
        assert surface_mm2(BALL).total == exactly(4 * pi * 15**2)

    def test_a_cone(self):
        assert volume_mm3(CONE) == exactly(pi * 30**2 * 40 / 3)
        assert surface_mm2(CONE).outside == exactly(pi * 30 * 50)
        assert surface_mm2(CONE).ends == exactly(pi * 30**2)

    def test_a_frustum(self):
        slant = hypot(120, 20)

        assert volume_mm3(FRUSTUM) == exactly(pi * 120 / 3 * (40**2 + 40 * 20 + 20**2))
        assert surface_mm2(FRUSTUM).outside == exactly(pi * slant * (40 + 20))

    def test_a_cap_of_a_ball(self):
        """Height 10 of a ball of radius 50: base radius 30."""
        cap = checked(piece((0, 0), bead(50), (10, 60)))

        assert volume_mm3(cap) == exactly(pi * 10**2 * (3 * 50 - 10) / 3)
        assert surface_mm2(cap).outside == exactly(2 * pi * 50 * 10)

    def test_a_zone_of_a_ball(self):
        """Radius 25, cut at 7 and 24 left and right of its centre: radii 24 and 7."""
        zone = checked(piece((0, 48), bead(25), (31, 14)))

        assert volume_mm3(zone) == exactly(pi * 31 / 6 * (3 * 24**2 + 3 * 7**2 + 31**2))
        assert surface_mm2(zone).outside == exactly(2 * pi * 25 * 31)

    def test_a_torus_is_what_a_half_round_bead_has_more_than_a_half_round_cove(self):
        """Ring of radius 50 to the centre of a circle of 10: 2 pi² R r² and 4 pi² R r."""
        outer, inner = piece((0, 100), bead(), (20, 100)), piece((0, 100), cove(), (20, 100))

        assert volume_mm3(outer) - volume_mm3(inner) == exactly(2 * pi**2 * 50 * 10**2)
        both = surface_mm2(outer).outside + surface_mm2(inner).outside
        assert both == exactly(4 * pi**2 * 50 * 10)

    def test_a_hemispherical_bowl(self):
        outside = piece((0, 0), bead(100), (100, 200))
        bowl = checked(bored(outside, hole((10, 0), cove(90), (100, 180))))

        assert volume_mm3(bowl) == exactly(2 / 3 * pi * (100**3 - 90**3))
        assert surface_mm2(bowl).outside == exactly(2 * pi * 100**2)
        assert surface_mm2(bowl).inside == exactly(2 * pi * 90**2)
        assert surface_mm2(bowl).ends == exactly(pi * (100**2 - 90**2))

    @pytest.mark.parametrize(("hole_wide", "ball_wide"), [(80, 100), (32, 68)])
    def test_a_ball_drilled_through_keeps_a_volume_that_only_its_height_decides(self, hole_wide, ball_wide):
        """The napkin ring of height 60: pi h³ / 6. Its rims are sharp, so no bore is drawn."""
        ball = checked(piece((0, hole_wide), bead(ball_wide / 2), (60, hole_wide)))

        assert volume_mm3(ball) - pi * (hole_wide / 2) ** 2 * 60 == exactly(pi * 60**3 / 6)

    def test_a_step_is_a_ring(self):
        stepped = piece((0, 20), (30, 20), (30, 50), (60, 50))

        assert volume_mm3(stepped) == exactly(pi * 30 * (10**2 + 25**2))
        lateral = 2 * pi * 30 * (10 + 25)
        assert surface_mm2(stepped).outside == exactly(lateral + pi * (25**2 - 10**2))

    def test_a_v_cut_is_two_frusta(self):
        cut = piece((0, 40), v_cut(8), (12, 40))
        halves = piece((0, 40), (6, 24), (12, 40))

        assert volume_mm3(cut) == exactly(volume_mm3(halves)) == exactly(2 * pi * 6 / 3 * (400 + 240 + 144))
        assert surface_mm2(cut) == surface_mm2(halves)


class TestPappus:
    """Volume and surface of a ring are area and length times the way of their centroids.

    Centroid of a half disc 4 r / 3 pi from its diameter, of a half circle 2 r / pi.
    """

    @pytest.mark.parametrize(("shape", "sign"), [(bead(), 1), (cove(), -1)], ids=["bead", "cove"])
    def test_a_half_round_on_a_cylinder(self, shape, sign):
        core, r = 50, 10
        turned = checked(piece((0, 2 * core), shape, (2 * r, 2 * core)))

        ring = pi * r**2 / 2 * 2 * pi * (core + sign * 4 * r / (3 * pi))
        assert volume_mm3(turned) == exactly(pi * core**2 * 2 * r + sign * ring)
        assert surface_mm2(turned).outside == exactly(pi * r * 2 * pi * (core + sign * 2 * r / pi))

    @pytest.mark.parametrize(("shape", "sign"), [(bead(20), 1), (cove(20), -1)], ids=["bead", "cove"])
    def test_a_quarter_round_in_a_corner(self, shape, sign):
        """Centroid of a quarter disc 4 r / 3 pi off both its radii, of a quarter circle 2 r / pi."""
        r, foot = 20, 30
        turned = checked(piece((0, 2 * foot), shape, (r, 2 * (foot + r))))

        from_axis = foot + 4 * r / (3 * pi) if sign == 1 else foot + r - 4 * r / (3 * pi)
        quarter = pi * r**2 / 4 * 2 * pi * from_axis
        whole = pi * r * ((foot + r) ** 2 if sign == -1 else foot**2)
        assert volume_mm3(turned) == exactly(whole + sign * quarter)
        line = foot + 2 * r / pi if sign == 1 else foot + r - 2 * r / pi
        assert surface_mm2(turned).outside == exactly(pi * r / 2 * 2 * pi * line)


class TestBores:
    def test_a_blind_hole_takes_away_its_cylinder_and_adds_its_wall_and_bottom(self):
        drilled = bored(CYLINDER, hole((0, 8), (25, 8)))

        assert volume_mm3(drilled) == exactly(pi * (10**2 * 60 - 4**2 * 25))
        areas = surface_mm2(drilled)
        assert areas.outside == surface_mm2(CYLINDER).outside
        assert areas.inside == exactly(2 * pi * 4 * 25 + pi * 4**2)
        assert areas.ends == exactly(2 * pi * 10**2 - pi * 4**2)

    def test_a_hole_right_through_has_no_bottom_and_opens_twice(self):
        tube = bored(CYLINDER, hole((0, 8), (60, 8)))

        areas = surface_mm2(tube)

        assert areas.inside == exactly(2 * pi * 4 * 60)
        assert areas.ends == exactly(2 * pi * (10**2 - 4**2))

    def test_a_hole_from_the_right_is_the_same_hole(self):
        left, right = (bored(CYLINDER, hole(*marks)) for marks in (((0, 8), (25, 8)), ((35, 8), (60, 8))))

        assert surface_mm2(left) == surface_mm2(right)


class TestEndGrain:
    """n is the normal of the surface; grain along the axis in spindle work, along a diameter in face work."""

    def test_along_a_cylinder_only_its_faces_show_it(self):
        areas = end_grain_mm2(CYLINDER, grain_across=False)

        assert (areas.outside, areas.inside, areas.ends) == (0, 0, exactly(2 * pi * 10**2))

    def test_across_a_cylinder_its_side_shows_two_over_pi_of_itself(self):
        """The mean of |cos f| over the round is 2 / pi."""
        areas = end_grain_mm2(CYLINDER, grain_across=True)

        assert areas.outside == exactly(2 / pi * surface_mm2(CYLINDER).outside)
        assert areas.total == areas.outside

    @pytest.mark.parametrize("across", [False, True])
    def test_a_ball_shows_half_its_surface_whichever_way_its_grain_runs(self, across):
        """The mean of |cos| over a sphere is a half."""
        assert end_grain_share(BALL, grain_across=across) == exactly(0.5)

    def test_along_a_cone_it_is_the_sine_of_the_half_angle(self):
        """Radius 30 over a slant of 50: |n · axis| is 0.6 everywhere."""
        side = surface_mm2(CONE).outside

        assert end_grain_mm2(CONE, grain_across=False).outside == exactly(0.6 * side)

    def test_across_a_cone_it_is_the_cosine_of_the_half_angle_times_two_over_pi(self):
        side = surface_mm2(CONE).outside

        assert end_grain_mm2(CONE, grain_across=True).total == exactly(0.8 * 2 / pi * side)

    def test_an_arc_is_parted_where_it_turns(self):
        """The bead's rings are seen from both sides: up from 50 to 60 and down again."""
        round_bead = piece((0, 100), bead(), (20, 100))

        assert end_grain_mm2(round_bead, grain_across=False).outside == exactly(2 * pi * (60**2 - 50**2))

    def test_across_it_is_twice_what_is_seen_from_the_side(self):
        """A convex body shows its outline to the left and to the right: here a ball and a frustum."""
        assert end_grain_mm2(BALL, grain_across=True).total == exactly(2 * pi * 15**2)
        assert end_grain_mm2(FRUSTUM, grain_across=True).total == exactly(2 * 120 * (80 + 40) / 2)

    def test_the_flat_bottom_of_a_bore_counts_along_and_not_across(self):
        drilled = bored(CYLINDER, hole((0, 8), (25, 8)))

        assert end_grain_mm2(drilled, grain_across=False).inside == exactly(pi * 4**2)
        assert end_grain_mm2(drilled, grain_across=True).inside == exactly(4 * 4 * 25)

    def test_the_share_is_of_the_whole_surface(self):
        share = end_grain_share(CYLINDER, grain_across=False)

        assert share == exactly(2 * pi * 100 / (2 * pi * 100 + 2 * pi * 10 * 60))


def test_the_mass_is_volume_times_density():
    """A cubic decimetre of maple at 700 kg/m³ has 700 g."""
    assert mass_g(1_000_000, 700) == exactly(700)
