from __future__ import annotations

from math import isqrt, pi, sqrt

import pytest

from projects.geometry.blank import (
    Allowances,
    BlankError,
    BlankForm,
    BlankSize,
    check_blank,
    containing_blank,
    largest_nm,
    shavings_share,
)
from projects.geometry.solids import volume_mm3
from tests.projects.geometry.drawings import bead, bored, hole, nm, piece

BEADED = piece((5, 20), (30, 20), bead(), (50, 20), (85, 12))


def test_the_least_square_is_as_wide_as_the_piece_is_thick_between_its_marks_too():
    """The bead of 10 stands out to a diameter of 40."""
    blank = containing_blank(BEADED, BlankForm.SQUARE)

    assert blank == BlankSize(BlankForm.SQUARE, nm(40), nm(80))


def test_a_diameter_that_is_no_whole_number_of_nanometres_is_rounded_up():
    """A radius of 30 over a chord of 20 rises 30 - sqrt(800); the diameter grows by twice that."""
    barrel = piece((0, 20), bead(30), (20, 20))

    exact = 20 + 2 * (30 - sqrt(800))

    assert 0 <= largest_nm(barrel) - exact * 1e6 < 1


def test_a_diameter_that_is_one_is_not():
    """Arithmetic makes 20 200 000.000000004 nm of the bead of 0.05 on 20.1."""
    assert largest_nm(piece((0, 20.1), bead(), (0.1, 20.1))) == nm(20.2)


def test_allowances_make_it_longer_and_thicker():
    allowances = Allowances(holding=nm(25), nub=nm(12.7), parting=nm(3), across=nm(4))

    blank = containing_blank(BEADED, BlankForm.ROUND, allowances)

    assert blank == BlankSize(BlankForm.ROUND, nm(44), nm(80 + 25 + 12.7 + 3))


@pytest.mark.parametrize("side", [nm(38.1), 1, 3, 999_999_999])
def test_a_square_is_roughed_at_its_diagonal_rounded_up(side):
    """Pythagoras: the diagonal squared is twice the side squared."""
    diagonal = BlankSize(BlankForm.SQUARE, side, nm(100)).roughing_diameter

    assert (diagonal - 1) ** 2 < 2 * side**2 <= diagonal**2
    assert isqrt(2 * side**2) < diagonal


def test_a_round_is_roughed_at_its_own_diameter():
    assert BlankSize(BlankForm.ROUND, nm(60), nm(100)).roughing_diameter == nm(60)


def test_a_cylinder_out_of_a_square_loses_one_less_a_quarter_pi():
    """Side 2, length 12: the square has 48, the cylinder 12 pi."""
    cylinder = piece((0, 2), (12, 2))

    blank = containing_blank(cylinder, BlankForm.SQUARE)

    assert blank.volume_mm3 == pytest.approx(48)
    assert shavings_share(cylinder, blank) == pytest.approx(1 - pi / 4)


def test_a_cylinder_out_of_a_round_loses_what_it_is_shorter_and_bored_out():
    tube = bored(piece((0, 20), (60, 20)), hole((0, 10), (60, 10)))
    blank = BlankSize(BlankForm.ROUND, nm(20), nm(80))

    share = shavings_share(tube, blank)

    assert share == pytest.approx(1 - 0.75 * 60 / 80)
    assert share == pytest.approx(1 - volume_mm3(tube) / (pi * 100 * 80))


@pytest.mark.parametrize(
    ("across", "length", "code", "needs"),
    [(nm(40) - 1, nm(80), "too_thin", nm(40)), (nm(40), nm(80) - 1, "too_short", nm(80))],
)
def test_a_blank_that_does_not_hold_the_piece_is_refused_with_what_it_needs(across, length, code, needs):
    blank = BlankSize(BlankForm.SQUARE, across, length)

    for asked in (lambda: check_blank(BEADED, blank), lambda: shavings_share(BEADED, blank)):
        with pytest.raises(BlankError) as caught:
            asked()
        assert (caught.value.code, caught.value.values) == (code, {"needs": needs, "has": needs - 1})


def test_a_blank_has_to_hold_the_allowances_as_well():
    blank = containing_blank(BEADED, BlankForm.SQUARE, Allowances(nub=nm(10)))

    check_blank(BEADED, blank, Allowances(nub=nm(10)))
    with pytest.raises(BlankError, match="too_short"):
        check_blank(BEADED, blank, Allowances(nub=nm(10) + 1))
