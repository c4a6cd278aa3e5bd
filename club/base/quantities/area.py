"""Areas: whole square micrometres and the text they were typed as."""

from __future__ import annotations

from dataclasses import dataclass, field

from club.base.quantities.amount import read_amount, show_amount, tidy, whole_amount
from club.base.quantities.shown import ABOUT
from club.base.quantities.typed import checked_text
from club.base.quantities.units import USUAL, Kind, Unit

# 1 000 m², more wood than a club will ever finish.
LARGEST = 1_000 * 10**12
LARGEST_SHOWN = "1\u00a0000\u00a0m²"


@dataclass(frozen=True, order=True)
class Area:
    """Whole square micrometres (1 in² = 645 160 000); `typed` is "" for one that was worked out."""

    um2: int
    typed: str = field(default="", compare=False)


def parse_area(text: str) -> Area:
    """The area somebody typed as `12 in²`, `12 sq in`, `75 cm2` or `0.5 m²`; raises QuantityError."""
    typed = checked_text(text, Kind.AREA)
    exact = read_amount(typed, Kind.AREA)
    return Area(whole_amount(exact, Kind.AREA, LARGEST, LARGEST_SHOWN, zero=False), typed)


def show_area(area: Area, unit: Unit | None = None, about: str = ABOUT) -> str:
    """In this unit, to three decimals; without one as typed, else in cm²."""
    if unit is None and area.typed:
        return tidy(area.typed)
    return show_amount(area.um2, unit or USUAL[Kind.AREA], about)
