"""Blanks from boards and pieces from sheets, and the board foot; lengths in nanometres."""

from __future__ import annotations

from fractions import Fraction

from club.base.quantities.length import NM_PER_INCH
from projects.kit.counting import ceil_div
from projects.kit.sawing import Saw
from projects.kit.supplies import Board, Sheet
from projects.library.domain.blank import Blank, SlabBlank

CUBIC_INCHES_IN_BOARD_FOOT = 144


def blanks_from(board: Board, blank: Blank, saw: Saw) -> int:
    """How many blanks a board gives: ripped in layers and strips, the ends trimmed, then cut to length.

    Spindle blanks keep the grain along the board. A disc counts as the square it is cut from, so boards never
    come short, though a bandsaw may get another one out of a wide board. A layer as thick as the blank needs
    no cut; ripping costs the kerf like cutting to length.

    A square of 1 1/2 in, 36 in long, gives 16 blanks of 2 in with a kerf of 1/8 and 1/4 trimmed.
    """
    return _abreast(board, blank, saw) * saw.fits(_along(blank), board.length)


def rest_of(board: Board, blank: Blank, count: int, saw: Saw) -> int:
    """How long the board still is when so many blanks are cut off it, row after row; nought for nothing.

    15 blanks of 2 in off a square of 36 in, kerf 1/8 and 1/4 trimmed: 35 3/4 - 15 x 2 1/8 = 3 7/8.
    """
    rows = ceil_div(count, _abreast(board, blank, saw))
    return max(board.length - saw.trim - rows * saw.taken(_along(blank)), 0)


def _along(blank: Blank) -> int:
    """What one blank takes of the length of its board."""
    return blank.diameter.nm if isinstance(blank, SlabBlank) else blank.size.length


def _abreast(board: Board, blank: Blank, saw: Saw) -> int:
    """How many blanks lie side by side and above each other in one row across the board."""
    rip = Saw(saw.kerf)
    if isinstance(blank, SlabBlank):
        return rip.fits(blank.thickness.nm, board.thickness) * rip.fits(blank.diameter.nm, board.width)
    return rip.fits(blank.size.across, board.thickness) * rip.fits(blank.size.across, board.width)


def pieces_from(sheet: Sheet, width: int, length: int) -> int:
    """How many pieces a sheet gives, torn without loss: all one way, all the other, or in rows of both.

    A sheet of 9 in x 11 in gives eight of 2 3/4 x 4 1/2.
    """
    ways = ((sheet.width, sheet.length), (sheet.length, sheet.width))
    turned = ((width, length), (length, width))
    return max(_rows(wide, high, *piece) for wide, high in ways for piece in turned)


def _rows(wide: int, high: int, width: int, length: int) -> int:
    """Rows of pieces that stand, and behind them rows of pieces that lie."""
    in_row, lying = wide // width, wide // length
    return max(rows * in_row + (high - rows * length) // width * lying for rows in range(high // length + 1))


def board_feet(thickness: int, width: int, length: int) -> Fraction:
    """Board feet of nominal sizes, exact: 144 cubic inches each, stock under 1 in counts as 1 in.

    The rule is that of US Navy training texts on lumber. 2 in x 4 in x 14 ft are 28/3.
    """
    cubic_inches = Fraction(max(thickness, NM_PER_INCH) * width * length, NM_PER_INCH**3)
    return cubic_inches / CUBIC_INCHES_IN_BOARD_FOOT
