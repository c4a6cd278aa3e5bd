from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.length import Length
from projects.kit.boards import blanks_from, board_feet, pieces_from
from projects.kit.sawing import Saw
from projects.kit.supplies import Board, Sheet
from projects.library.domain.blank import RoundBlank, SlabBlank, SquareBlank
from tests.projects.kit.stores import CASES, inch, inches_of, mm
from tests.reference.tables import rows

NM_PER_FOOT = 12 * inch("1")


@pytest.mark.parametrize("row", rows("09c_board_foot_examples.csv"), ids=lambda row: row["source"])
def test_board_feet_are_those_of_the_printed_examples(row):
    """Each row names its source; three quarters count as 1 in."""
    thickness, width = (inch(row[name]) for name in ("thickness_in", "width_in"))

    found = board_feet(thickness, width, int(row["length_ft"]) * NM_PER_FOOT)

    assert found == Fraction(row["board_feet_exact"])


def test_strips_of_a_sheet_are_as_many_as_published():
    inches, metric = CASES["strips-inch"], CASES["strips-metric"]
    sheet, strip = (tuple(map(inches_of, inches["given"][name])) for name in ("sheet_in", "strip_in"))

    assert pieces_from(Sheet(*sheet), *strip) == inches["expected"]["strips"]
    assert pieces_from(Sheet(*metric["given"]["sheet_mm"]), *metric["given"]["strip_mm"]) == 22


def test_rows_both_ways_give_more_than_either_way_alone():
    """5 x 5 in pieces of 2 x 3: 2 x 1 either way; two standing (2 x 3) and one lying above them make 3, and
    the 1 in beside them stays."""
    assert pieces_from(Sheet(5, 5), 2, 3) == 3


@given(st.integers(1, 20), st.integers(1, 20), st.integers(1, 8), st.integers(1, 8))
def test_pieces_of_a_sheet_never_outgrow_it_and_turning_changes_nothing(width, length, wide, long):
    pieces = pieces_from(Sheet(width, length), wide, long)

    assert pieces * wide * long <= width * length
    assert pieces >= max((width // wide) * (length // long), (width // long) * (length // wide))
    assert (
        pieces
        == pieces_from(Sheet(length, width), wide, long)
        == pieces_from(Sheet(width, length), long, wide)
    )


def square(side: int, length: int) -> SquareBlank:
    return SquareBlank("maple_sugar", Length(side), Length(length))


def test_a_square_stick_is_cut_to_length_only():
    """36 less 1/4 is 35 3/4; 16 x 2 + 15 x 1/8 = 33 7/8, a 17th would need 36 in."""
    stick = Board("stick", inch("1 1/2"), inch("1 1/2"), inch("36"))

    assert blanks_from(stick, square(inch("1 1/2"), inch("2")), Saw(inch("1/8"), inch("1/4"))) == 16


def test_a_board_is_ripped_into_strips_and_a_thick_one_into_layers():
    """50 x 160 x 900 mm, blanks of 50 x 50 x 200, kerf 3, 20 trimmed: strips 163 / 53 = 3; lengths
    883 / 203 = 4; 12 blanks. 103 thick gives two layers, 102 only one."""
    saw, blank = Saw(mm("3"), mm("20")), square(mm("50"), mm("200"))
    boards = [Board("board", mm(thick), mm("160"), mm("900")) for thick in ("50", "103", "102")]

    assert [blanks_from(board, blank, saw) for board in boards] == [12, 24, 12]


def test_a_disc_counts_as_the_square_it_is_cut_from():
    """8 in discs, 3 thick, from 3 x 17 x 34 in, kerf 1/8: 17 1/8 over 8 1/8 is 2, 34 1/8 over 8 1/8 is 4."""
    blank = SlabBlank("cherry_black", Length(inch("8")), Length(inch("3")))
    slab = Board("slab", inch("3"), inch("17"), inch("34"))

    assert blanks_from(slab, blank, Saw(inch("1/8"))) == 8
    assert blanks_from(Board("thin", inch("2 7/8"), inch("17"), inch("34")), blank, Saw(inch("1/8"))) == 0


def test_a_round_blank_comes_from_a_square_as_thick_as_itself():
    blank = RoundBlank("maple_sugar", Length(mm("30")), Length(mm("100")))

    assert blanks_from(Board("stick", mm("30"), mm("30"), mm("406")), blank, Saw(mm("2"))) == 4
    assert blanks_from(Board("stick", mm("29"), mm("30"), mm("406")), blank, Saw(mm("2"))) == 0
