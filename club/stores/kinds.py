"""What each kind of article has: which sizes, whether it is sawn, how much of it there can be."""

from __future__ import annotations

from club.stores.models import Article

Kind = Article.Kind

SIZES: dict[str, tuple[str, ...]] = {
    Kind.LENGTH_STOCK: ("length",),
    Kind.SHEET: ("width", "length"),
    Kind.BLANK: ("thickness", "width", "length"),
}
# Sawn, so that a cut takes something.
SAWN = frozenset({Kind.LENGTH_STOCK, Kind.BLANK})
# Cut beforehand for one specification, and then kept as what was cut.
CUT_BEFOREHAND = frozenset({Kind.BLANK, Kind.SHEET})
# Sold in packs that hold a number of them; sticks and boards are sold one by one.
PACKED = frozenset({Kind.SHEET, Kind.PIECE, Kind.CONSUMED})
# Each stick, board and sheet stands for itself in a plan, so a slip of the pen must not fill the memory.
MOST_ONE_BY_ONE = 2_000
MOST_COUNTED = 1_000_000


def most_of(kind: str) -> int:
    """How many of this kind one row may stand for."""
    return MOST_ONE_BY_ONE if kind in SIZES else MOST_COUNTED
