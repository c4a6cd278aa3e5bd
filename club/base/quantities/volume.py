"""Volumes of wood and of liquids: whole nanolitres (a thousandth of a mm³) and the text as typed."""

from __future__ import annotations

from dataclasses import dataclass, field

from club.base.quantities.amount import read_amount, show_amount, tidy, whole_amount
from club.base.quantities.shown import ABOUT
from club.base.quantities.typed import checked_text
from club.base.quantities.units import USUAL, Kind, Unit

# 100 m³ of wood fill a hall.
LARGEST = 100 * 10**12
LARGEST_SHOWN = "100\u00a0m³"


@dataclass(frozen=True, order=True)
class Volume:
    """Whole nanolitres (1 in³ = 16 387 064); `typed` is "" for one that was worked out."""

    nl: int
    typed: str = field(default="", compare=False)


def parse_volume(text: str) -> Volume:
    """The volume somebody typed as `250 ml`, `0.25 l`, `8 fl oz` (US), `12 cm³` or `4 bd ft`.

    Raises QuantityError. A board foot is 144 in³ as cut; rules for stock under 1 in are not applied here.
    """
    typed = checked_text(text, Kind.VOLUME)
    exact = read_amount(typed, Kind.VOLUME)
    return Volume(whole_amount(exact, Kind.VOLUME, LARGEST, LARGEST_SHOWN, zero=False), typed)


def show_volume(volume: Volume, unit: Unit | None = None, about: str = ABOUT) -> str:
    """In this unit, to three decimals; without one as typed, else in ml."""
    if unit is None and volume.typed:
        return tidy(volume.typed)
    return show_amount(volume.nl, unit or USUAL[Kind.VOLUME], about)
