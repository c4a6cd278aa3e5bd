"""Masses: whole nanograms and the text they were typed as."""

from __future__ import annotations

from dataclasses import dataclass, field

from club.base.quantities.amount import read_amount, show_amount, tidy, whole_amount
from club.base.quantities.shown import ABOUT
from club.base.quantities.typed import checked_text
from club.base.quantities.units import USUAL, Kind, Unit

# Ten tonnes of wood are a lorry.
LARGEST = 10_000 * 10**12
LARGEST_SHOWN = "10\u00a0000\u00a0kg"


@dataclass(frozen=True, order=True)
class Mass:
    """Whole nanograms (1 lb = 453 592 370 000); `typed` is "" for one that was worked out."""

    ng: int
    typed: str = field(default="", compare=False)


def parse_mass(text: str) -> Mass:
    """The mass somebody typed as `250 g`, `1.5 kg`, `1 1/2 lb` or `8 oz`; raises QuantityError."""
    typed = checked_text(text, Kind.MASS)
    exact = read_amount(typed, Kind.MASS)
    return Mass(whole_amount(exact, Kind.MASS, LARGEST, LARGEST_SHOWN, zero=False), typed)


def show_mass(mass: Mass, unit: Unit | None = None, about: str = ABOUT) -> str:
    """In this unit, to three decimals; without one as typed, else in g."""
    if unit is None and mass.typed:
        return tidy(mass.typed)
    return show_amount(mass.ng, unit or USUAL[Kind.MASS], about)
