from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.drawing.shapes import Box, Kind, Line
from club.base.drawing.sheet import Drawing, drawn
from club.base.printing import Paper
from club.base.quantities.length import LengthStyle, parse_length
from projects.geometry.outline import extremes
from projects.library.domain.drawing.callouts import diameters, places
from projects.library.domain.drawing.check_bars import check_bars
from projects.library.domain.drawing.spread import spread
from projects.library.drawing import LETTER_MM, ROOM, _words, drawn_piece, life_size
from projects.library.sentences.lengths import shown_in
from tests.projects.library.examples import BOWL, KNOB, outline
from tests.projects.library.pieces import random_recipe, random_recipe_in_inches
from tests.projects.library.touching import touched_texts

EACH_SEED = pytest.mark.parametrize("seed", range(200))
AS_TYPED = LengthStyle.AS_TYPED


def outermost(drawing: Drawing) -> Box:
    """Round the wood and nothing else: what is heavy."""
    return drawn([mark for mark in drawing.marks if getattr(mark, "kind", None) is Kind.HEAVY], 100, 0).box


class TestNoTextTouchesAnything:
    """Two hundred random profiles, every other one bored, wide, narrow and life size on both papers."""

    @EACH_SEED
    def test_in_millimetres(self, seed):
        recipe = random_recipe(seed)
        page = drawn_piece(recipe, AS_TYPED)
        paper = life_size(recipe, AS_TYPED, Paper.A4)

        drawings = [page.wide, page.narrow, *(tile.drawing for tile in paper.tiles)]

        assert [touched_texts(drawing) for drawing in drawings] == [[] for _drawing in drawings]

    @EACH_SEED
    def test_in_inches(self, seed):
        recipe = random_recipe_in_inches(seed)
        if recipe is None:
            recipe = replace(random_recipe(seed), key="in-mm")
        page = drawn_piece(recipe, LengthStyle.SIXTY_FOURTHS)
        paper = life_size(recipe, LengthStyle.SIXTY_FOURTHS, Paper.LETTER)

        drawings = [page.wide, page.narrow, *(tile.drawing for tile in paper.tiles)]

        assert [touched_texts(drawing) for drawing in drawings] == [[] for _drawing in drawings]

    def test_a_text_laid_on_a_line_would_be_noticed(self):
        drawing = drawn_piece(KNOB, AS_TYPED).wide
        text = drawing.letterings[0].box
        through = Line(text.left - 1, (text.top + text.bottom) / 2, text.right + 1, text.bottom, Kind.THIN)

        assert touched_texts(replace(drawing, marks=(*drawing.marks, through))) != []


class TestWhereTheWoodIsDrawn:
    @EACH_SEED
    def test_its_extreme_points_are_where_the_marks_say(self, seed):
        """Within 0.1 mm of the closed forms, on a page as on paper."""
        recipe = random_recipe(seed)
        found = extremes(recipe.profile.profile())

        box = outermost(drawn_piece(recipe, AS_TYPED).wide)

        assert (box.left, box.right) == pytest.approx((found.left.z, found.right.z), abs=0.1)
        assert (box.top, box.bottom) == pytest.approx((-found.thickest.r, found.thickest.r), abs=0.1)

    def test_a_bored_piece_is_cut_and_hatched(self):
        bored = next(recipe for recipe in map(random_recipe, range(20)) if recipe.profile.bore)

        kinds = {mark.kind for mark in drawn_piece(bored, AS_TYPED).wide.marks if hasattr(mark, "kind")}

        assert Kind.HATCH in kinds

    def test_blank_and_nub_are_drawn_as_no_part_of_the_piece(self):
        marks = drawn_piece(KNOB, AS_TYPED).wide.marks

        phantoms = [mark for mark in marks if getattr(mark, "kind", None) is Kind.PHANTOM]

        assert [(round(each.box.width, 2), round(each.box.height, 2)) for each in phantoms] == [
            (50.8, 38.1),
            (6.35, 6.35),
        ]


class TestWhatIsLettered:
    WORDS = _words(KNOB, shown_in(AS_TYPED, KNOB))

    def test_each_place_stands_once_from_the_left_end(self):
        assert [each.label.words for each in places(KNOB.profile, self.WORDS.show)] == [
            "0",
            "1/2",
            "1",
            "1\u00a01/2",
        ]

    def test_a_unit_that_all_share_is_said_once_beside_the_drawing(self):
        drawn_in_inches = drawn_piece(KNOB, AS_TYPED)
        mixed = replace(KNOB.profile.marks[1], diameter=parse_length("16 mm"))
        marks = (KNOB.profile.marks[0], mixed, *KNOB.profile.marks[2:])
        in_both = drawn_piece(replace(KNOB, profile=replace(KNOB.profile, marks=marks)), AS_TYPED)

        assert drawn_in_inches.unit == "in"
        assert not any("in" in text.words for text in drawn_in_inches.wide.letterings)
        assert in_both.unit == ""
        assert "16\u00a0mm" in [text.words for text in in_both.wide.letterings]

    def test_a_cylinder_has_its_diameter_once_and_a_step_both(self):
        profile = outline(("0", "1"), ("1", "1"), ("1", "2"), ("2", "3/2"))

        found = diameters(profile, self.WORDS, 3.0)

        assert [each.label.words for each in found] == ["1", "2", "3/2"]

    @pytest.mark.parametrize("recipe", [KNOB, BOWL])
    def test_a_phone_gets_the_numbers_of_the_marks_and_the_list_their_measures(self, recipe):
        drawing = drawn_piece(recipe, AS_TYPED)

        words = [text.words for text in drawing.narrow.letterings]

        assert words[: len(drawing.rows)] == [str(row.number) for row in drawing.rows]
        assert len(drawing.rows) == len(recipe.profile.marks)


class TestSpreading:
    LINE = st.lists(st.floats(-500, 500), max_size=60).map(sorted)

    @given(LINE, st.floats(0.5, 20))
    def test_nothing_stands_too_near_or_changes_places(self, wanted, apart):
        found = spread(wanted, apart)

        assert len(found) == len(wanted)
        assert all(b - a >= apart * (1 - 1e-9) - 1e-7 for a, b in pairwise(found))

    @given(LINE)
    def test_what_has_room_stays(self, wanted):
        gaps = [b - a for a, b in pairwise(wanted)]

        assert spread(wanted, min(gaps, default=1.0)) == pytest.approx(tuple(wanted))

    def test_two_that_want_one_place_move_alike(self):
        assert spread([10.0, 10.0], 4.0) == (8.0, 12.0)


class TestOnPaper:
    @pytest.mark.parametrize("paper", list(Paper))
    @EACH_SEED
    def test_no_sheet_is_larger_than_the_paper_has_room(self, seed, paper):
        width, height = ROOM[paper]

        tiles = life_size(random_recipe(seed), AS_TYPED, paper).tiles

        assert all(tile.drawing.box.width <= width + 1e-6 for tile in tiles)
        assert all(tile.drawing.box.height <= height + 1e-6 for tile in tiles)

    @EACH_SEED
    def test_every_text_stands_whole_on_a_sheet(self, seed):
        recipe = random_recipe(seed)
        lettered = diameters(recipe.profile, _words(recipe, shown_in(AS_TYPED)), LETTER_MM)

        tiles = life_size(recipe, AS_TYPED, Paper.A4).tiles

        on_sheets = {text.words for tile in tiles for text in tile.drawing.letterings}
        assert {callout.label.words for callout in lettered} <= on_sheets

    def test_a_long_piece_is_laid_together_by_crosses_of_one_letter(self):
        long = replace(KNOB, profile=outline(("0", "1"), ("15", "1/2")))

        tiles = life_size(long, AS_TYPED, Paper.A4).tiles
        crosses = [
            {(text.words, round(text.x, 3), round(text.y, 3)) for text in tile.drawing.letterings}
            for tile in tiles
        ]

        assert len(tiles) == 3
        assert {word for word, _x, _y in crosses[0] & crosses[1]} == {"A", "B"}
        assert {word for word, _x, _y in crosses[1] & crosses[2]} == {"C", "D"}

    def test_a_piece_too_thick_for_the_sheet_is_drawn_by_its_upper_half(self):
        thick = replace(BOWL, profile=outline(("0", "9"), ("2", "10")))

        life = life_size(thick, AS_TYPED, Paper.A4)
        box = outermost(life.tiles[0].drawing)

        assert life.half
        assert (box.top, box.bottom) == pytest.approx((-127.0, 0.0), abs=0.1)

    def test_a_piece_that_leaves_no_room_for_the_stop_lines_is_drawn_by_its_upper_half(self):
        """An 8 in blank is drawn 203 mm high and more; the sheet is 228, and title and stop lines need 80."""
        disc = replace(BOWL, profile=outline(("0", "4"), ("1", "5")))

        assert life_size(disc, AS_TYPED, Paper.LETTER).half
        assert not life_size(KNOB, AS_TYPED, Paper.LETTER).half

    def test_lines_are_drawn_in_millimetres(self):
        strokes = life_size(KNOB, AS_TYPED, Paper.A4).tiles[0].drawing.strokes

        assert {(stroke.kind, stroke.width) for stroke in strokes} >= {
            (Kind.HEAVY, "0.5"),
            (Kind.THIN, "0.18"),
        }

    def test_the_check_bars_are_100_mm_and_4_in_long(self):
        bars = [mark.box.width for mark in check_bars().marks if getattr(mark, "kind", None) is Kind.THIN]

        assert bars == [100.0, 101.6]
