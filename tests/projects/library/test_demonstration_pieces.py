"""The demonstration's drawings: their sizes, and two of them against numbers worked by hand.

Formulas of I. N. Bronshtein, K. A. Semendyayev and others, Handbook of Mathematics, geometry of solids;
Pappus' theorems as in G. B. Thomas, Calculus and Analytic Geometry. Both from memory.
"""

from __future__ import annotations

from math import asin, cos, pi, radians, sin

import pytest

from projects.geometry.outline import length_mm, turns
from projects.geometry.slenderness import Stub, slenderness
from projects.geometry.solids import surface_mm2, volume_mm3
from projects.library.domain.drawings import drawings
from tests.projects.library.demonstration import PROJECTS, RECIPES

# Life-size drawings are tiled with register marks; so much of one goes on a sheet beside its edges.
ONE_SHEET_MM = 178
# Above this a piece is said to bend readily: a setting, common practice.
SLENDER = 10


def profile(key):
    return PROJECTS[key].profile.profile()


class TestHandWorkedPieces:
    def test_the_egg(self):
        """A half ball, a barrel that a circle makes, and a cap; 58 mm long.

        Half ball, R 22: 2/3 pi 22^3 = 22 301.1 mm^3.
        Barrel, from 22 to 52 mm: its circle of R 50 has the centre 28 mm beyond the axis, so that
        r = sqrt(2500 - u^2) - 28 with u from 0 to 30, and the integral of r^2 is
        3284 * 30 - 30^3 / 3 - 28 (30 * 40 + 2500 asin 0.6) = 10 874.92; times pi 34 164.6.
        Cap, R 15, 6 high: pi 6^2 (45 - 6) / 3 = 1 470.3. Together 57 936.0.
        """
        half_ball = 2 / 3 * pi * 22**3
        barrel = pi * (3284 * 30 - 9_000 - 28 * (1_200 + 2_500 * asin(0.6)))
        cap = pi * 6**2 * (3 * 15 - 6) / 3

        assert length_mm(profile("wooden-egg")) == 58
        assert volume_mm3(profile("wooden-egg")) == pytest.approx(half_ball + barrel + cap, rel=1e-12)
        assert volume_mm3(profile("wooden-egg")) == pytest.approx(57_936.0, abs=0.1)

    def test_the_reel(self):
        """Two flanges, two steps and a waist, less the bore; 80 mm long.

        Flange: a cylinder of r 22, 12 wide, pi 22^2 12 = 18 246.4 mm^3, and round it the ring of a segment of
        R 8 over a chord of 12. Its half angle is asin 0.75, its area 22.527, its centre 22 - 5.2915 off the
        axis: 2 pi (2/3 6^3 + 16.7085 * 22.527) = 3 269.7. Two flanges: 43 032.2.
        Steps: r 19, twice 2 wide: 4 536.5.
        Waist: a cylinder of r 19, 52 wide, 58 974.0, less the ring of a segment of R 52 over a chord of 52:
        half angle 30 degrees, area 244.945, centre 19 + 52 cos 30 = 64.0333 off the axis:
        2 pi (64.0333 * 244.945 - 2/3 26^3) = 24 927.2.
        Bore: pi 6^2 80 = 9 047.8. Together 72 567.6.
        """
        half = asin(0.75)
        bulge = 8**2 * (half - sin(half) * cos(half))
        flange = pi * 22**2 * 12 + 2 * pi * (2 / 3 * 6**3 + (22 - 8 * cos(half)) * bulge)
        sixth = radians(30)
        hollow = 52**2 * (sixth - sin(sixth) * cos(sixth))
        waist = pi * 19**2 * 52 - 2 * pi * ((19 + 52 * cos(sixth)) * hollow - 2 / 3 * 26**3)
        bored = 2 * flange + 2 * pi * 19**2 * 2 + waist - pi * 6**2 * 80

        assert length_mm(profile("twine-reel")) == 80
        assert volume_mm3(profile("twine-reel")) == pytest.approx(bored, rel=1e-12)
        assert volume_mm3(profile("twine-reel")) == pytest.approx(72_567.6, abs=0.1)


class TestSizes:
    @pytest.mark.parametrize("key", ["garden-dibber", "wooden-egg"])
    def test_nothing_between_centres_is_slender(self, key):
        recipe = PROJECTS[key]
        left, right = (Stub(end.diameter.nm, end.length.nm) for end in (recipe.left_end, recipe.right_end))

        assert slenderness(profile(key), left=left, right=right).ratio < SLENDER

    def test_one_piece_is_too_long_for_one_sheet_and_others_are_small(self):
        lengths = {key: length_mm(profile(key)) for key in PROJECTS}

        assert [key for key, length in lengths.items() if length > ONE_SHEET_MM] == ["garden-dibber"]
        assert min(lengths.values()) < 40

    def test_the_dibber_has_200_square_centimetres(self):
        assert surface_mm2(profile("garden-dibber")).total == pytest.approx(20_000, rel=0.01)

    def test_the_egg_fits_the_cup(self):
        """The blunt end rests on the rim: wider than the mouth, and not so far in that it meets the floor."""
        egg, cup = profile("wooden-egg"), profile("egg-cup")
        mouth, floor = cup.bore.marks[-1], cup.bore.marks[0]
        sinks = 22 - (22**2 - (mouth.diameter / 2e6) ** 2) ** 0.5

        assert max(mark.diameter for mark in egg.marks) > mouth.diameter
        assert sinks < (mouth.at - floor.at) / 1e6

    def test_the_knob_keeps_an_eighth_of_an_inch_of_wood_round_its_dowel(self):
        (dowel,) = [need for need in PROJECTS["drawer-knob"].materials if need.key == "dowel"]
        thinnest = min(turn.diameter for turn in turns(profile("drawer-knob")))

        assert (thinnest - dowel.across.nm / 1e6) / 2 > 25.4 / 8

    @pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.key)
    def test_a_piece_is_written_in_one_unit(self, recipe):
        marks = [mark for _path, drawn in drawings(recipe) for mark in drawn.marks]
        units = {length.typed.split()[-1] for mark in marks for length in (mark.at, mark.diameter)}

        assert len(units) == 1

    def test_half_the_pieces_are_in_inches_and_half_in_millimetres(self):
        units = [recipe.profile.marks[-1].at.typed.split()[-1] for recipe in PROJECTS.values()]

        assert (units.count("in"), units.count("mm")) == (4, 4)
