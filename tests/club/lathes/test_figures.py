from __future__ import annotations

from itertools import pairwise
from math import atan2, degrees

import pytest

from club.base.drawing.hatch import hatched
from club.base.drawing.shapes import Kind, Line, Polyline
from club.base.drawing.sheet import Drawing, drawn, fitted
from club.lathes.domain.figures import belts, draw_bars, headstock, nose
from club.lathes.domain.figures.socket import Socket, socket_of
from club.lathes.domain.figures.tapers import Plug, plugs
from club.lathes.domain.tapers import MORSE_TAPERS
from club.lathes.domain.threads import KNOWN_THREADS

WORDS = headstock.HeadstockWords("S", "bore", "thread", "register", "taper", "washer")
MT2 = socket_of(MORSE_TAPERS["MT2"])


def heavy_lines(marks: tuple[object, ...]) -> list[Polyline]:
    return [mark for mark in marks if isinstance(mark, Polyline) and mark.kind is Kind.HEAVY]


def arrow_tips(marks: tuple[object, ...]) -> list[tuple[float, float]]:
    return [mark.points[0] for mark in marks if isinstance(mark, Polyline) and mark.kind is Kind.SOLID]


def test_the_socket_in_the_section_narrows_one_in_twenty_point_nought_two():
    spindle = next(
        line
        for line in heavy_lines(headstock.headstock_section(WORDS, MT2, 5.0, broken=False))
        if len(line.points) == 12
    )
    mouth, bottom = spindle.points[3], spindle.points[2]

    narrowing = 2 * (mouth[1] - bottom[1]) / (bottom[0] - mouth[0])
    # ISO 296:1991, Morse No. 2: taper 1 : 20.020, diameter at the gauge line 17.780 mm.
    assert 1 / narrowing == pytest.approx(20.020)
    assert -2 * mouth[1] == pytest.approx(17.780)


@pytest.mark.parametrize("broken", [False, True])
def test_s_is_dimensioned_from_the_nose_face_to_the_handwheel_face(broken: bool):
    marks = headstock.headstock_section(WORDS, MT2, 5.0, broken=broken)
    length = headstock.S_BROKEN if broken else headstock.S

    tips = arrow_tips(marks)

    assert {x for x, y in tips if y < -headstock.HOUSING} == {0.0, -length}


def test_the_nose_is_drawn_with_the_diameters_of_its_thread():
    thread = KNOWN_THREADS["1 1/4-8"]

    # ASME B1.1, 1 1/4-8 UN: major diameter 1.2500 in, root diameter 1.0966 in.
    major, root = 2 * headstock.THREAD, 2 * headstock.ROOT
    assert major == pytest.approx(1.2500 * 25.4)
    assert root == pytest.approx(1.0966 * 25.4, abs=0.01)
    assert root == pytest.approx(thread.external_root_diameter_nm / 1e6, abs=0.01)


def test_the_draw_bar_is_drawn_with_the_diameters_of_its_thread():
    # ASME B1.1, 3/8-16 UNC: major diameter 0.3750 in, root diameter 0.2983 in.
    major, root = 2 * draw_bars.ROD, 2 * draw_bars.ROOT
    assert major == pytest.approx(0.3750 * 25.4)
    assert root == pytest.approx(0.2983 * 25.4, abs=0.01)


def test_the_counted_thread_has_eight_gaps_in_an_inch_and_flanks_at_sixty_degrees():
    marks = nose.thread_count("8 threads", 2.0)
    (profile,) = heavy_lines(marks)
    crests = [(one[0] + other[0]) / 2 for one, other in pairwise(profile.points) if one[1] == other[1] == 0.0]
    flanks = {
        round(degrees(atan2(abs(other[1] - one[1]), abs(other[0] - one[0]))), 6)
        for one, other in pairwise(profile.points)
        if one[1] != other[1]
    }

    # ASME B1.1 and ISO 68-1: 60 degree profile, so each flank stands 60 degrees to the axis.
    assert flanks == {60.0}
    assert [round(x, 6) for x in crests if -0.001 <= x <= 25.401] == [
        round(3.175 * gap, 6) for gap in range(9)
    ]
    assert len([mark for mark in marks if getattr(mark, "words", "") in set("12345678")]) >= 8


def test_morse_plugs_are_drawn_at_the_published_diameters():
    socket = socket_of(MORSE_TAPERS["MT3"])

    # ASME B5.10, Morse No. 3: 0.938 in at the gauge line, 0.778 in at the small end, 3 3/16 in between them.
    assert socket.mouth == pytest.approx(0.938 * 25.4)
    assert 2 * socket.radius_at(3.1875 * 25.4) == pytest.approx(0.778 * 25.4, abs=0.002)


def test_a_plug_is_dimensioned_at_both_ends():
    plug = Plug(MT2, "No. 2", "17.8 mm", "14.5 mm")

    marks = plugs([plug], 3.0)

    heights = sorted({round(y, 3) for _x, y in arrow_tips(marks)})
    outer, inner = heights[-1] - heights[0], heights[-2] - heights[1]
    assert outer == pytest.approx(17.780)
    assert inner == pytest.approx(14.529, abs=0.002)


def test_length_under_the_head_starts_where_the_washer_lies_and_length_over_all_at_the_rod():
    words = draw_bars.DrawBarWords("under", "over", "thread", "head", "rod")

    tips = arrow_tips(draw_bars.draw_bars(words, 4.0, broken=False))

    # 14 1/2 in = 368.3 mm.
    assert {x for x, _y in tips} >= {0.0, 368.3, -draw_bars.HEAD_WIDTH}


def test_the_belt_lies_slowest_on_the_spindles_largest_step():
    assert belts.STEPS[0] == max(belts.STEPS)
    # Common practice: one belt fits every position when the two diameters of each add up alike.
    pairs = [upper + lower for upper, lower in zip(belts.STEPS, reversed(belts.STEPS), strict=True)]
    assert len(set(pairs)) == 1


def test_hatching_stays_inside_its_outline():
    outline = ((0.0, 0.0), (20.0, 0.0), (20.0, 4.0), (8.0, 4.0), (8.0, 10.0), (0.0, 10.0))

    lines = hatched(outline, 1.5)

    assert len(lines) > 10
    for line in lines:
        for share in (0.001, 0.5, 0.999):
            x = line.x1 + (line.x2 - line.x1) * share
            y = line.y1 + (line.y2 - line.y1) * share
            assert (0 <= x <= 20 and 0 <= y <= 4) or (0 <= x <= 8 and 0 <= y <= 10)


@pytest.mark.parametrize(("falling", "slope"), [(False, -1.0), (True, 1.0)])
def test_hatching_runs_at_forty_five_degrees_at_its_pitch(falling: bool, slope: float):
    square = ((0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (0.0, 30.0))

    lines = hatched(square, 3.0, falling=falling)

    slopes = {round((line.y2 - line.y1) / (line.x2 - line.x1), 6) for line in lines}
    offsets = sorted(line.y1 - slope * line.x1 for line in lines)
    assert slopes == {slope}
    assert {round((other - one) / 2**0.5, 6) for one, other in pairwise(offsets)} == {3.0}


def test_a_socket_narrows_from_its_mouth():
    assert Socket(mouth=20.0, ratio=20.0, depth=40.0).radius_at(40.0) == pytest.approx(9.0)


def level_line(length: float) -> Drawing:
    return drawn([Line(0.0, 0.0, length, 0.0, Kind.HEAVY)], 100.0, 0.0)


def test_a_line_for_paper_keeps_its_width_at_any_scale():
    widths = [float(level_line(length).strokes[0].width) / level_line(length).px for length in (50.0, 5000.0)]

    assert widths == pytest.approx([2.0, 2.0])


def test_words_too_long_for_a_drawing_shrink_before_they_crowd_it_out():
    endless = headstock.HeadstockWords("S", "bore", "thread", "register", "taper", "washer" * 60)

    drawing = fitted(lambda size: headstock.headstock_section(endless, MT2, size, broken=True), 312.0)

    assert drawing.letterings[0].size / drawing.px < 14
