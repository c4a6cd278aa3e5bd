from __future__ import annotations

from math import isfinite

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.drawing.shapes import Kind, Rect, Shape
from club.lathes.domain.outline import (
    NM_PER_MM,
    STAND_IN_CENTRES,
    STAND_IN_NOSE_TO_HANDWHEEL,
    STAND_IN_SWING,
    LatheMeasures,
    Measure,
    frame,
    list_scale,
    outline,
    small_outline,
)

INCH = 25_400_000
MIDDLING = LatheMeasures(
    nose_to_handwheel=63 * INCH // 4,
    swing_over_bed=12 * INCH,
    swing_over_banjo=9 * INCH,
    centres_greatest=36 * INCH,
    centres_least=8 * INCH,
)
# From a nanometre to the hundred metres that a length may be.
LENGTHS = st.none() | st.integers(min_value=1, max_value=100_000_000_000)
MEASURES = st.builds(LatheMeasures, LENGTHS, LENGTHS, LENGTHS, LENGTHS, LENGTHS)


def of_kind(measures: LatheMeasures, *kinds: Kind) -> list[Shape]:
    return [shape for shape in outline(measures) if shape.kind in kinds]


def pointing(measures: LatheMeasures) -> tuple[float, float]:
    """The points of the two centres: the only heavy corners on the axis."""
    corners = [
        x
        for shape in outline(measures)
        for x, y in getattr(shape, "points", ())
        if y == 0 and shape.kind is Kind.HEAVY
    ]
    return min(corners), max(corners)


def test_the_handwheel_face_stands_s_left_of_the_nose():
    leftmost = min(shape.box.left for shape in of_kind(MIDDLING, Kind.HEAVY))

    # 15 3/4 in = 400.05 mm; the inch is 25.4 mm exactly (NIST SP 811, appendix B).
    assert leftmost == pytest.approx(-400.05)


def test_the_bed_lies_half_the_swing_under_the_axis():
    bed = max(
        (shape for shape in outline(MIDDLING) if isinstance(shape, Rect)), key=lambda shape: shape.width
    )

    assert bed.y == pytest.approx(6 * 25.4)


def test_the_banjo_rises_to_half_its_own_swing():
    at = frame(MIDDLING)
    tops = [shape.box.top for shape in outline(MIDDLING) if shape.box.bottom == pytest.approx(at.radius)]

    assert pytest.approx(4.5 * 25.4) in tops


def test_the_centres_point_at_each_other_over_the_greatest_distance():
    headstock, tailstock = pointing(MIDDLING)

    assert tailstock - headstock == pytest.approx(36 * 25.4)


def test_a_lathe_measured_whole_has_nothing_dashed():
    assert MIDDLING.missing == ()
    assert of_kind(MIDDLING, Kind.DASHED) == []


def test_a_lathe_that_nobody_measured_is_dashed_at_the_stand_in_sizes():
    nothing = LatheMeasures()
    at = frame(nothing)

    assert nothing.missing == tuple(Measure)
    assert of_kind(nothing, Kind.HEAVY) == []
    assert (at.headstock, at.swing, at.greatest) == (
        STAND_IN_NOSE_TO_HANDWHEEL,
        STAND_IN_SWING,
        STAND_IN_CENTRES,
    )


@pytest.mark.parametrize(
    ("missing", "still_heavy"),
    [
        (Measure.NOSE_TO_HANDWHEEL, True),
        (Measure.SWING_OVER_BANJO, True),
        (Measure.CENTRES_GREATEST, True),
        (Measure.SWING_OVER_BED, True),
    ],
)
def test_one_missing_measure_dashes_its_own_parts_and_leaves_the_others(missing: Measure, still_heavy: bool):
    known = {measure.value: getattr(MIDDLING, measure) for measure in Measure if measure is not missing}
    measures = LatheMeasures(**known)

    assert measures.missing == (missing,)
    assert of_kind(measures, Kind.DASHED)
    assert bool(of_kind(measures, Kind.HEAVY)) is still_heavy


def test_a_missing_swing_is_stood_in_for_so_that_a_measured_banjo_still_fits_under_it():
    at = frame(LatheMeasures(swing_over_banjo=900 * NM_PER_MM))

    assert at.banjo_swing == 900
    assert at.swing > at.banjo_swing


def test_every_lathe_of_a_list_is_drawn_at_one_scale():
    small = LatheMeasures(250 * NM_PER_MM, 200 * NM_PER_MM, 150 * NM_PER_MM, 300 * NM_PER_MM, 60 * NM_PER_MM)
    scale = list_scale([small, MIDDLING])

    drawings = [small_outline(measures, scale) for measures in (small, MIDDLING)]

    assert [drawing.box.width / drawing.width_px for drawing in drawings] == pytest.approx([scale, scale])
    assert [drawing.box.height / drawing.height_px for drawing in drawings] == pytest.approx([scale, scale])


def test_the_widest_lathe_of_a_list_fills_the_width_it_is_given():
    scale = list_scale([MIDDLING], width_px=240)

    assert small_outline(MIDDLING, scale).width_px == pytest.approx(244)


def test_an_empty_list_has_a_scale_too():
    assert list_scale([]) == 1


def test_a_list_carries_no_lettering():
    assert small_outline(MIDDLING, list_scale([MIDDLING])).letterings == []


@given(MEASURES)
def test_whatever_was_typed_every_part_is_finite_and_no_size_is_below_nought(measures: LatheMeasures):
    for shape in outline(measures):
        box = shape.box
        assert all(isfinite(value) for value in (box.left, box.top, box.right, box.bottom))
        assert box.width >= 0
        assert box.height >= 0
        assert not isinstance(shape, Rect) or min(shape.width, shape.height) >= 0


@given(MEASURES)
def test_nothing_is_drawn_heavy_that_hangs_on_a_missing_swing(measures: LatheMeasures):
    if measures.swing_over_bed is None:
        heavy = of_kind(measures, Kind.HEAVY)
        # Only spindle, wheel and centre are left, and they hang on S alone.
        assert all(shape.box.right <= frame(measures).point for shape in heavy)
        assert not heavy or measures.nose_to_handwheel is not None
