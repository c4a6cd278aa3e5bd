from __future__ import annotations

import pytest

from club.base.quantities.length import LengthStyle
from projects.geometry.outline import extremes
from projects.library.domain.small_outline import LONGEST_PX, THICKEST_PX, list_scale, small_outline
from projects.library.sentences.lengths import shown_in
from projects.library.small_drawings import small_pieces
from tests.projects.geometry.drawings import random_profile
from tests.projects.library.examples import BOWL, KNOB

PROFILES = [random_profile(seed) for seed in range(40)]


def test_every_piece_of_a_list_is_drawn_at_one_scale():
    scale = list_scale(PROFILES)

    scales = {round(drawing.px, 9) for drawing in (small_outline(each, scale) for each in PROFILES)}

    assert scales == {round(scale, 9)}


def test_the_longest_and_the_thickest_piece_just_fit():
    scale = list_scale(PROFILES)
    found = [extremes(profile) for profile in PROFILES]

    longest = max(each.right.z - each.left.z for each in found) / scale
    thickest = max(each.thickest.diameter for each in found) / scale

    assert longest <= LONGEST_PX + 1e-9
    assert thickest <= THICKEST_PX + 1e-9
    assert longest == pytest.approx(LONGEST_PX) or thickest == pytest.approx(THICKEST_PX)


@pytest.mark.parametrize("profile", PROFILES[:20])
def test_nothing_of_a_piece_stands_out_of_its_drawing(profile):
    drawing = small_outline(profile, list_scale([profile]))
    box = drawing.box

    assert all(
        box.left <= mark.box.left
        and mark.box.right <= box.right
        and box.top <= mark.box.top
        and mark.box.bottom <= box.bottom
        for mark in drawing.marks
    )


def test_an_empty_list_has_a_scale_all_the_same():
    assert list_scale([]) == 1.0


def test_a_piece_is_told_to_those_who_can_not_see_it():
    show = shown_in(LengthStyle.MILLIMETRES)

    words = [drawn.words for drawn in small_pieces([KNOB, BOWL], show)]

    assert words == [
        "Drawer knob, 38.1\u00a0mm long, 31.75\u00a0mm across",
        "Small bowl, 63.5\u00a0mm long, 190.5\u00a0mm across",
    ]
