"""Pieces too long or too thick for one sheet: nothing may be lost, cut in two or too large for the paper."""

from __future__ import annotations

from itertools import pairwise

import pytest

from club.base.drawing.lettering import Label, Lettering, letter_turned
from club.base.drawing.shapes import Box, Kind, Line, Rect
from projects.library.domain.drawing.sheets import BAND, OVERLAP, Tile, tiles
from tests.projects.library.touching import touched_texts

# ISO 216 A4 and ANSI Letter less an edge of 20 mm to file by and margins of 12 mm.
PAPERS = pytest.mark.parametrize(("width", "height"), [(178.0, 246.0), (183.9, 228.0)])
# Millimetres: fits, long, thick, both, and each a hair over the edge.
SIZES = pytest.mark.parametrize(
    ("length", "across"),
    [(120, 60), (420, 60), (120, 600), (900, 700), (182, 225), (183.8, 60), (170, 227.9), (2400, 90)],
)


def marks(length, across):
    """A bar with long words turned upright above it, and level ones below it with few gaps to cut in."""
    bar = Rect(0.0, -across / 2, length, across)
    lettered = [
        mark
        for number in range(int(length / 9))
        for mark in letter_turned(
            Label(f"{number} and a good many more words"), 9 * number, -across / 2 - 2, 3.2
        )
    ]
    level = [
        Lettering(53.0 * number, across / 2 + 6, "as long as four overlaps and more", 3.2)
        for number in range(int(length / 53))
    ]
    return (bar, *lettered, *level)


def columns(found: tuple[Tile, ...]) -> list[tuple[float, float]]:
    return [(tile.drawing.box.left, tile.drawing.box.right) for tile in found if tile.row == 1]


def rows(found: tuple[Tile, ...]) -> list[tuple[float, float]]:
    return [(tile.drawing.box.top, tile.drawing.box.bottom) for tile in found if tile.column == 1]


def crosses(tile: Tile) -> set[tuple[float, float]]:
    """Middles of the register marks that stand whole on the sheet."""
    lines = [mark for mark in tile.drawing.marks if isinstance(mark, Line) and mark.kind is Kind.THIN]
    box = tile.drawing.box.grown(1e-6)
    middles = [_middle(line.box) for line in lines if _holds(box, line.box)]
    return {middle for middle in middles if middles.count(middle) == 2}


def _middle(box: Box) -> tuple[float, float]:
    return (round((box.left + box.right) / 2, 6), round((box.top + box.bottom) / 2, 6))


def _holds(outer: Box, inner: Box) -> bool:
    across = outer.left <= inner.left and inner.right <= outer.right
    return across and outer.top <= inner.top and inner.bottom <= outer.bottom


@PAPERS
@SIZES
class TestEverySize:
    def test_no_sheet_is_larger_than_the_paper(self, width, height, length, across):
        boxes = [tile.drawing.box for tile in tiles(marks(length, across), width, height)]

        assert max(box.width for box in boxes) <= width + 1e-6
        assert max(box.height for box in boxes) <= height + 1e-6

    def test_neighbours_overlap_and_all_of_the_drawing_is_there(self, width, height, length, across):
        found = tiles(marks(length, across), width, height)

        for strips, low, high in (
            (columns(found), 0.0, length),
            (rows(found), -across / 2, across / 2),
        ):
            assert strips[0][0] <= low
            assert strips[-1][1] >= high
            assert all(end - start >= OVERLAP - 1e-6 for (_, end), (start, _) in pairwise(strips))
        assert len(found) == len(columns(found)) * len(rows(found))

    def test_every_text_stands_whole_on_a_sheet_and_touches_nothing(self, width, height, length, across):
        drawn = marks(length, across)

        found = tiles(drawn, width, height)

        lettered = {mark for mark in drawn if isinstance(mark, Lettering)}
        on_sheets = {text for tile in found for text in tile.drawing.letterings}
        assert lettered <= on_sheets
        assert [touched_texts(tile.drawing) for tile in found] == [[]] * len(found)

    def test_neighbours_share_two_register_marks_at_one_place_of_the_piece(
        self, width, height, length, across
    ):
        found = tiles(marks(length, across), width, height)

        by_place = {(tile.row, tile.column): crosses(tile) for tile in found}

        for (row, column), here in by_place.items():
            for beside in ((row, column + 1), (row + 1, column)):
                assert beside not in by_place or len(here & by_place[beside]) >= 2


def test_a_drawing_that_just_fits_stays_on_one_sheet_without_register_marks():
    (tile,) = tiles((Rect(0.0, 0.0, 176.0, 244.0),), 178.0, 246.0)

    assert tile.drawing.letterings == []
    assert tile.drawing.svg_width == "178"


def test_crosses_beside_a_cut_may_make_a_second_cut_needful():
    """A bar that is long, and as thick as the sheet is high, leaves no room for crosses above it."""
    found = tiles((Rect(0.0, 0.0, 300.0, 240.0),), 178.0, 246.0)

    assert {tile.row for tile in found} == {1, 2}
    assert 240.0 + 2 * BAND > 246.0


def test_a_letter_stands_for_one_cross_however_many_there_are():
    found = tiles((Rect(0.0, 0.0, 4_000.0, 60.0),), 178.0, 246.0)

    letters = {(text.words, text.x, text.y) for tile in found for text in tile.drawing.letterings}
    assert len({words for words, _x, _y in letters}) == len(letters) > 26


def test_one_unit_of_a_tile_is_a_millimetre():
    tile = tiles(marks(420, 60), 178.0, 246.0)[1].drawing

    width, height = (float(number) for number in tile.view_box.split()[2:])
    assert (tile.svg_width, tile.svg_height) == (f"{width:g}", f"{height:g}")
    assert tile.px == pytest.approx(1.0)
