from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from club.base.drawing.lettering import Lettering
from club.base.drawing.shapes import Box, Kind, Line, Polyline, Shape
from club.base.drawing.sheet import Drawing
from club.lathes.domain.outline import LatheMeasures, Measure
from club.lathes.domain.outline_lettering import lettered_outline

INCH = 25_400_000
MIDDLING = LatheMeasures(63 * INCH // 4, 12 * INCH, 9 * INCH, 36 * INCH, 8 * INCH)
WORDS = {measure: f"{number} 63/64 in" for number, measure in enumerate(Measure, start=11)}
# What lathes measure, from toys to factory ones: 4 in to 33 ft.
MEASURES = st.builds(
    LatheMeasures,
    *(
        st.none() | st.integers(low * INCH, high * INCH)
        for low, high in ((4, 60), (4, 80), (3, 60), (5, 400), (1, 100))
    ),
)


def arrow_tips(drawing: Drawing) -> set[tuple[float, float]]:
    heads = (mark for mark in drawing.marks if isinstance(mark, Polyline) and mark.kind is Kind.SOLID)
    return {(round(head.points[0][0], 3), round(head.points[0][1], 3)) for head in heads}


def tips_on_one_level(drawing: Drawing, apart: float) -> bool:
    return any(
        one[1] == other[1] and abs(one[0] - other[0]) == pytest.approx(apart)
        for one, other in combinations(arrow_tips(drawing), 2)
    )


def tips_over_each_other(drawing: Drawing, apart: float) -> bool:
    return any(
        one[0] == other[0] and abs(one[1] - other[1]) == pytest.approx(apart)
        for one, other in combinations(arrow_tips(drawing), 2)
    )


@pytest.mark.parametrize("width_px", [312.0, 820.0])
def test_the_arrows_stand_as_far_apart_as_the_lengths_they_letter(width_px: float):
    drawing = lettered_outline(MIDDLING, WORDS, width_px)

    assert tips_on_one_level(drawing, 400.05)
    assert tips_on_one_level(drawing, 36 * 25.4)
    assert tips_on_one_level(drawing, 8 * 25.4)
    assert tips_over_each_other(drawing, 12 * 25.4)
    assert tips_over_each_other(drawing, 9 * 25.4)


def test_only_what_was_measured_is_lettered():
    half = LatheMeasures(nose_to_handwheel=14 * INCH, centres_greatest=30 * INCH)

    drawing = lettered_outline(half, WORDS, 820)

    lettered = {lettering.words for lettering in drawing.letterings}
    assert lettered == {WORDS[Measure.NOSE_TO_HANDWHEEL], WORDS[Measure.CENTRES_GREATEST]}


def test_a_swing_carries_the_drawn_diameter_mark_and_a_length_does_not():
    lengths = lettered_outline(LatheMeasures(nose_to_handwheel=14 * INCH), WORDS, 820)
    swing = lettered_outline(LatheMeasures(swing_over_bed=14 * INCH), WORDS, 820)

    rings = [sum("A" in mark.d for mark in drawing.strokes) for drawing in (lengths, swing)]
    assert rings[0] == 0
    assert rings[1] > 0


@pytest.mark.parametrize("width_px", [312.0, 820.0])
def test_lettering_stands_fourteen_pixels_high_at_the_width_it_is_made_for(width_px: float):
    drawing = lettered_outline(MIDDLING, WORDS, width_px)

    heights = {round(lettering.size / drawing.px, 1) for lettering in drawing.letterings}
    assert heights == {14.0}


def test_words_that_do_not_fit_run_on_to_the_right_with_the_arrows_outside():
    long_bed = LatheMeasures(nose_to_handwheel=12 * INCH, centres_greatest=240 * INCH)

    drawing = lettered_outline(long_bed, {Measure.NOSE_TO_HANDWHEEL: "12 in nose to handwheel face"}, 312)

    (words,) = drawing.letterings
    assert words.box.left > 0


@settings(deadline=None)
@given(MEASURES, st.sampled_from([312.0, 820.0]))
def test_no_word_touches_a_word_a_line_or_the_edge(measures: LatheMeasures, width_px: float):
    drawing = lettered_outline(measures, WORDS, width_px)

    for words in drawing.letterings:
        assert_inside(ink(words), drawing.box)
        assert not [shape for shape in lines_of(drawing) if crosses(shape, ink(words))]
    for one, other in combinations(drawing.letterings, 2):
        assert not overlap(ink(one), ink(other))


def ink(words: Lettering) -> Box:
    """Where the letters are black: caps rise 0.67 of the size over the base line, tails 0.22 under it."""
    box = words.box
    return Box(box.left, words.y - 0.7 * words.size, box.right, words.y + 0.22 * words.size)


def lines_of(drawing: Drawing) -> list[Shape]:
    return [mark for mark in drawing.marks if not isinstance(mark, Lettering)]


def crosses(shape: Shape, box: Box) -> bool:
    """Whether a line comes into the box; of a shape that holds the whole box, no line does."""
    if isinstance(shape, Line):
        return overlap(shape.box, box)
    edges = shape.box
    if not overlap(edges, box):
        return False
    inside = (
        edges.left < box.left
        and edges.right > box.right
        and edges.top < box.top
        and edges.bottom > box.bottom
    )
    return not inside


def overlap(one: Box, other: Box) -> bool:
    across = one.left < other.right and other.left < one.right
    return across and one.top < other.bottom and other.top < one.bottom


def assert_inside(inner: Box, outer: Box) -> None:
    assert outer.left <= inner.left
    assert inner.right <= outer.right
    assert outer.top <= inner.top
    assert inner.bottom <= outer.bottom
