"""Amounts of a kit in words: things by the piece, liquids in ml, glue in g."""

from __future__ import annotations

from fractions import Fraction

from club.base.quantities.shown import NO_BREAK_SPACE, decimal, thousands
from projects.kit.counting import ceil_div
from projects.kit.line import Line
from projects.library.domain.materials import AdhesiveNeed, LiquidNeed

# A tenth of a ml and of a g in base units: less can't be poured or weighed at a bench.
TENTHS = {LiquidNeed.kind: 10**5, AdhesiveNeed.kind: 10**8}
UNITS = {LiquidNeed.kind: "ml", AdhesiveNeed.kind: "g"}


def amount_words(kind: str, amount: int) -> str:
    """`15`, `44 ml`, `3.9 g`: tenths, rounded up, so that it is never too little."""
    if kind not in UNITS:
        return thousands(amount)
    return _in_tenths(kind, ceil_div(amount, TENTHS[kind]))


def shelf_words(line: Line) -> str:
    """What the shelf gives of a line, so that it and what is bought add up to the need as shown."""
    if line.kind not in UNITS:
        return thousands(line.on_shelf)
    tenth = TENTHS[line.kind]
    return _in_tenths(line.kind, ceil_div(line.need, tenth) - ceil_div(line.to_buy, tenth))


def _in_tenths(kind: str, tenths: int) -> str:
    return f"{decimal(Fraction(tenths, 10), 1)}{NO_BREAK_SPACE}{UNITS[kind]}"
