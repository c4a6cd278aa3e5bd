"""What is left for whoever comes after; worked out by hand, and for any shelf."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from club.base.quantities.length import parse_length
from projects.kit.counting import Heads
from projects.kit.in_turn import ClassKit, in_turn, with_own_keys
from projects.kit.promised import left_after
from projects.kit.sawing import Saw
from projects.kit.supplies import (
    BlankLot,
    BlankSupply,
    Board,
    CountSupply,
    HeldStick,
    Sheet,
    SheetPack,
    SheetSupply,
    StickSupply,
)
from projects.kit.totals import totals
from projects.library.domain.materials import BlankNeed, LengthNeed, PieceNeed, SheetNeed, SpareCount
from tests.projects.kit.stores import inch, mm, pack, sold
from tests.projects.library.examples import BOWL, KNOB, inches

CORK = PieceNeed("cork", "Cork")
PEG = LengthNeed("peg", "Dowel", inches("3/8"), inches("2 1/4"))
STRIP = SheetNeed("strip", "Sandpaper P120", inches("2 3/4"), inches("4 1/2"), 120)
BLANK = BlankNeed("blank", "Maple")
SHEET = Sheet(inch("9"), inch("11"))
SAW = Saw(inch("1/16"), inch("1/8"))
BLANK_SAW = Saw(inch("1/8"), inch("1/4"))


def needing(*materials):
    return replace(KNOB, materials=materials, spares=SpareCount(0))


def only_line(need, heads, supply):
    return totals(needing(need), Heads(heads, 0), {need.key: supply}).lines[0]


def two_classes(need, other, supply, heads=(13, 13), articles=None):
    """The lines of two classes whose needs lie on the same shelf."""
    first, second = (
        ClassKit(with_own_keys(needing(each), name), Heads(count, 0))
        for each, name, count in zip((need, other), ("a:", "b:"), heads, strict=True)
    )
    supplies = {f"a:{need.key}": supply, f"b:{other.key}": supply}
    found = in_turn([first, second], supplies, articles=articles or {})
    return [each.lines[0] for each in found]


class TestCounts:
    def test_of_twenty_corks_thirteen_are_promised_and_seven_are_left(self):
        supply = CountSupply(20, (pack(10, 450),))

        left = left_after(supply, only_line(CORK, 13, supply))

        assert left == CountSupply(7, supply.packs)

    def test_what_is_left_of_a_pack_that_is_still_to_be_bought_isnt_there_yet(self):
        """13 of packs of 10: two are bought and 7 will be over, but nothing lies there."""
        supply = CountSupply(0, (pack(10, 450),))

        assert left_after(supply, only_line(CORK, 13, supply)) == supply

    def test_the_second_class_buys_what_the_first_leaves_it_short_of(self):
        first, second = two_classes(CORK, CORK, CountSupply(20, (pack(10, 450),)))

        assert (first.on_shelf, second.on_shelf, second.to_buy) == (13, 7, 6)

    def test_two_things_of_one_article_never_count_it_twice(self):
        stopper = PieceNeed("stopper", "Stopper")
        articles = {"a:cork": {"cork"}, "b:stopper": {"cork"}}

        _first, second = two_classes(CORK, stopper, CountSupply(20), articles=articles)

        assert (second.on_shelf, second.to_buy) == (7, 6)

    def test_things_that_only_look_alike_are_left_alone(self):
        stopper = PieceNeed("stopper", "Stopper")

        _first, second = two_classes(CORK, stopper, CountSupply(20))

        assert second.on_shelf == 13

    def test_two_needs_of_one_class_share_their_shelf_too(self):
        """20 rings: 13 for the outside, 7 for the inside, 6 missing."""
        outer, inner = PieceNeed("outer", "Ring"), PieceNeed("inner", "Ring")
        shelf = CountSupply(20)

        lines = totals(needing(outer, inner), Heads(13, 0), {"outer": shelf, "inner": shelf}).lines

        assert [(line.on_shelf, line.purchase.missing) for line in lines] == [(13, 0), (7, 6)]


class TestSheets:
    def test_pieces_torn_already_go_first_and_the_rest_of_a_sheet_comes_back(self):
        """3 torn, then two sheets of eight: 3 + 16 = 19 for 13, so 6 pieces come back and one sheet stays."""
        supply = SheetSupply(3, (SHEET,) * 3)

        left = left_after(supply, only_line(STRIP, 13, supply))

        assert left == SheetSupply(6, (SHEET,))

    def test_pieces_torn_for_another_size_are_never_counted(self):
        """The second class takes whole strips of 9 in x 2 3/4: of two sheets one is left, four to a sheet."""
        long = replace(STRIP, key="long", length=inches("9"))

        first, second = two_classes(STRIP, long, SheetSupply(0, (SHEET,) * 2), heads=(3, 6))

        assert len(first.taken.sheets) == 1
        assert (second.on_shelf, second.to_buy) == (4, 2)

    def test_another_thing_of_the_same_sheets_loses_the_sheets_but_keeps_its_own_pieces(self):
        """Each has 3 pieces torn for it and both have one sheet, which the first needs for its fourth."""
        other = replace(STRIP, key="other", specification="Sandpaper 120, other shop")
        articles = {"a:strip": {"paper"}, "b:other": {"paper"}}

        _first, second = two_classes(STRIP, other, SheetSupply(3, (SHEET,)), heads=(4, 4), articles=articles)

        assert (second.on_shelf, second.to_buy) == (3, 1)


class TestSticks:
    def test_a_stick_gives_back_its_rest(self):
        """Ten pieces of 36 in: 35 7/8 - 10 x 2 5/16 = 12 3/4 in."""
        supply = StickSupply(SAW, (HeldStick("R2", inch("36"), inch("0.375")),))

        left = left_after(supply, only_line(PEG, 10, supply))

        assert left.shelf == (HeldStick("R2", inch("12 3/4"), inch("0.375")),)

    def test_the_second_class_cuts_from_the_rest(self):
        """12 3/4 in less 1/8 trimmed give five pieces: 5 x 2 5/16 - 1/16 = 11 1/2."""
        supply = StickSupply(SAW, (HeldStick("R2", inch("36")),), (sold(inch("36"), 180),))

        _first, second = two_classes(PEG, PEG, supply, heads=(10, 5))

        assert (second.on_shelf, second.to_buy) == (5, 0)

    def test_one_of_several_sticks_of_a_row_is_taken(self):
        """Three rods of 500 mm under one name; ten pieces of 70, each with a cut of 2: 6 x 72 and 4 x 72."""
        need = replace(PEG, length=parse_length("70 mm"))
        supply = StickSupply(Saw(mm("2")), (HeldStick("rods", mm("500")),) * 3)

        left = left_after(supply, only_line(need, 10, supply))

        assert sorted(stick.length for stick in left.shelf) == [mm("68"), mm("212"), mm("500")]


class TestBlanks:
    def test_lots_go_first_and_a_square_gives_back_its_rest(self):
        """4 of the lot, 15 of the square: 35 3/4 - 15 x 2 1/8 = 3 7/8 in are left."""
        square = Board("square", inch("1 1/2"), inch("1 1/2"), inch("36"), moisture_percent=9)
        supply = BlankSupply(BLANK_SAW, (BlankLot("lot", 4, 9),), (square,))

        left = left_after(supply, only_line(BLANK, 19, supply))

        assert left.lots == ()
        assert left.shelf == (replace(square, length=inch("3 7/8")),)

    def test_a_board_is_cut_off_row_after_row(self):
        """A board of 3 1/8 x 1 1/2 gives two abreast: 5 are three rows, 24 - 1/4 - 3 x 2 1/8 = 17 3/8."""
        board = Board("board", inch("1 1/2"), inch("3 1/8"), inch("24"), moisture_percent=9)
        supply = BlankSupply(BLANK_SAW, shelf=(board,))

        (left,) = left_after(supply, only_line(BLANK, 5, supply)).shelf

        assert left.length == inch("17 3/8")

    def test_a_wet_lot_stays_where_it_is(self):
        supply = BlankSupply(BLANK_SAW, (BlankLot("wet", 9, 26), BlankLot("dry", 3, 10)))

        left = left_after(supply, only_line(BLANK, 3, supply))

        assert left.lots == (BlankLot("wet", 9, 26),)

    def test_a_lot_that_isnt_used_up_keeps_what_is_left(self):
        recipe = replace(BOWL, materials=(BlankNeed("blank", "Cherry"),), spares=SpareCount(0))
        supply = BlankSupply(Saw(0), (BlankLot("A", 10, 11),))

        (line,) = totals(recipe, Heads(6, 0), {"blank": supply}).lines

        assert left_after(supply, line).lots == (BlankLot("A", 4, 11),)


def total_length(supply):
    return sum(stick.length for stick in supply.shelf)


shelves = st.lists(st.integers(20, 400), max_size=5).map(
    lambda lengths: StickSupply(
        Saw(mm("2"), mm("3")),
        tuple(HeldStick(f"rod {length}", mm(str(length))) for length in lengths),
        (sold(mm("1000"), 240),),
    )
)
heads = st.integers(0, 12)


@settings(max_examples=60)
@given(shelves, heads, heads)
def test_sticks_of_two_classes_never_add_up_to_more_than_the_shelf(supply, first, second):
    need = replace(PEG, length=parse_length("70 mm"))

    lines = two_classes(need, need, supply, heads=(first, second))

    cut = sum(line.on_shelf for line in lines)
    assert cut * mm("70") <= total_length(supply)
    assert [line.need for line in lines] == [first, second]


@settings(max_examples=60)
@given(shelves, heads)
def test_of_sticks_nothing_is_invented(supply, count):
    """What is left and what was cut off, pieces and their saw cuts, are no longer than what lay there."""
    need = replace(PEG, length=parse_length("70 mm"))
    line = only_line(need, count, supply)

    left = left_after(supply, line)

    assert total_length(left) + line.on_shelf * mm("70") <= total_length(supply)
    assert len(left.shelf) <= len(supply.shelf)


@settings(max_examples=60)
@given(st.integers(0, 40), heads, heads)
def test_counts_of_two_classes_never_add_up_to_more_than_the_shelf(lying, first, second):
    lines = two_classes(CORK, CORK, CountSupply(lying, (pack(7, 100),)), heads=(first, second))

    assert sum(line.on_shelf for line in lines) == min(lying, first + second)


@settings(max_examples=60)
@given(st.integers(0, 20), st.integers(0, 4), heads, heads)
def test_pieces_of_sheets_are_all_used_and_none_is_invented(torn, sheets, first, second):
    supply = SheetSupply(torn, (SHEET,) * sheets, (SheetPack("pack", "north", SHEET, 10, 900),))

    lines = two_classes(STRIP, STRIP, supply, heads=(first, second))

    assert sum(line.on_shelf for line in lines) == min(torn + 8 * sheets, first + second)


boards = st.lists(st.tuples(st.integers(20, 90), st.integers(20, 120), st.integers(40, 600)), max_size=4)


def volume(shelf):
    return sum(board.thickness * board.width * board.length for board in shelf)


@settings(max_examples=60)
@given(boards, st.integers(0, 6), heads, heads)
def test_of_boards_and_lots_nothing_is_invented(sizes, lot, first, second):
    shelf = tuple(
        Board(f"board {place}", mm(str(thick)), mm(str(wide)), mm(str(long)), moisture_percent=9)
        for place, (thick, wide, long) in enumerate(sizes)
    )
    supply = BlankSupply(BLANK_SAW, (BlankLot("lot", lot, 9),), shelf)

    lines = two_classes(BLANK, BLANK, supply, heads=(first, second))

    from_lots = sum(each.count for line in lines for each in line.taken.lots)
    from_boards = sum(line.on_shelf for line in lines) - from_lots
    assert from_lots <= lot
    assert from_boards * inch("1 1/2") ** 2 * inch("2") <= volume(shelf)
    assert volume(left_after(supply, lines[0]).shelf) <= volume(shelf)
