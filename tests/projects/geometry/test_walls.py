"""A bore that meets the outside is refused wherever that happens, not only at marks."""

from __future__ import annotations

from itertools import product

import pytest

from projects.geometry.marks import ProfileError
from projects.geometry.pieces import pieces
from projects.geometry.profile import check
from projects.geometry.walls import thinnest
from tests.projects.geometry.drawings import bead, bored, cove, hole, piece, random_profile, v_cut

COVED = piece((0, 40), (20, 40), cove(), (40, 40), (60, 40))
BLOCK = piece((0, 40), (60, 40))
HAIR = 0.000002  # two nanometres of diameter are one of the wall


def refusal(profile):
    with pytest.raises(ProfileError) as caught:
        check(profile)
    error = caught.value
    assert (error.code, error.inside) == ("wall_gone", True)
    at = error.values["at"]
    assert isinstance(at, int)
    return error.mark, error.values["outside_mark"], at / 1e6


def test_a_cylinder_inside_meets_a_cove_half_way_between_its_marks():
    check(bored(COVED, hole((0, 20 - 2 * HAIR), (60, 20 - 2 * HAIR))))

    assert refusal(bored(COVED, hole((0, 20), (60, 20)))) == (2, 3, pytest.approx(30))


def test_a_cone_inside_meets_a_cove_where_both_run_in_one_direction():
    """The cove's circle of 10 stands round (30, 20); a line that falls 3 in 4 touches it at (24, 12)."""
    check(bored(COVED, hole((16, 36 - 2 * HAIR), (36, 6 - 2 * HAIR), (60, 6))))

    assert refusal(bored(COVED, hole((16, 36), (36, 6), (60, 6)))) == (2, 3, pytest.approx(24))


def test_a_cove_inside_reaches_the_top_of_a_bead_when_its_circle_is_tight():
    """The bead's circle of 26 stands round (30, 0). Over the same chord of 14 the cove's rises 1 or 2.05."""
    outside = piece((20, 48), bead(26), (40, 48))
    check(bored(outside, hole((23, 48), cove(25), (37, 48), (40, 40))))

    assert refusal(bored(outside, hole((23, 48), cove(13), (37, 48), (40, 40)))) == (2, 2, pytest.approx(30))


def test_two_coves_meet_between_marks_where_their_circles_run_in_one_direction():
    """Outside a circle of 10 round (30, 20), inside one of 15 round (45, 0): centres 25 apart, so they touch
    two fifths of the way, at (36, 12)."""
    inside = ((33, 18), cove(15), (57, 18), (60, 18))
    shrunk = ((33, 18 - 4 * HAIR), cove(15), (57, 18 - 4 * HAIR), (60, 18))
    check(bored(COVED, hole(*shrunk)))

    assert refusal(bored(COVED, hole(*inside))) == (2, 3, pytest.approx(36))


def test_a_v_cut_outside_comes_through_into_a_bore():
    check(bored(piece((0, 40), v_cut(9.99), (60, 40)), hole((0, 20), (60, 20))))

    assert refusal(bored(piece((0, 40), v_cut(10), (60, 40)), hole((0, 20), (60, 20)))) == (2, 2, 30)


def test_a_cut_inside_comes_out_through_a_straight_wall():
    check(bored(BLOCK, hole((0, 20), v_cut(9.99), (60, 20))))

    assert refusal(bored(BLOCK, hole((0, 20), v_cut(10), (60, 20)))) == (2, 2, 30)


def test_the_flat_bottom_of_a_bore_meets_the_face_of_a_step():
    """Right of the step the wall is 5 mm thick, but the bottom lies against the step's face."""
    stepped = piece((0, 20), (30, 20), (30, 40), (60, 40))
    check(bored(stepped, hole((30.1, 30), (60, 30))))

    assert refusal(bored(stepped, hole((30, 30), (60, 30)))) == (2, 2, 30)


def test_a_step_inside_lies_against_a_step_outside():
    stepped = piece((0, 20), (30, 20), (30, 40), (60, 40))
    check(bored(stepped, hole((0, 10), (30.1, 10), (30.1, 30), (60, 30))))

    assert refusal(bored(stepped, hole((0, 10), (30, 10), (30, 30), (60, 30))))[2] == 30


def test_a_sharp_edge_at_an_open_end_has_no_wall():
    check(bored(BLOCK, hole((0, 20), (60, 39.99))))

    assert refusal(bored(BLOCK, hole((0, 20), (60, 40)))) == (2, 2, 60)


def between_ends(piece_):
    """Places along a curve, closer together towards its ends, where arcs are steep."""
    return [
        piece_.z1 + (piece_.z2 - piece_.z1) * (3 * (k / 600) ** 2 - 2 * (k / 600) ** 3) for k in range(601)
    ]


@pytest.mark.parametrize("seed", range(1, 60, 2))
def test_no_place_of_two_curves_has_a_thinner_wall_than_the_one_found(seed):
    profile = random_profile(seed)
    found_somewhere = False

    for outer, inner in product(pieces(profile), pieces(profile.bore)):
        shared = [z for z in (*between_ends(outer), *between_ends(inner)) if inner.z1 <= z <= inner.z2]
        shared = [z for z in shared if outer.z1 <= z <= outer.z2]
        if outer.width == 0 or inner.width == 0 or not shared:
            continue
        found_somewhere = True
        walls = [outer.span_at(z)[0] - inner.span_at(z)[1] for z in shared]
        wall, place = thinnest(outer, inner)
        assert wall <= min(walls) + 1e-9
        assert wall == pytest.approx(outer.span_at(place)[0] - inner.span_at(place)[1])
        assert max(outer.z1, inner.z1) <= place <= min(outer.z2, inner.z2)

    assert found_somewhere
