"""The one pint registry, exact in both directions. Nothing else of this project touches pint."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import pint


@cache
def registry() -> pint.UnitRegistry[Fraction]:
    """Made on first use: it reads pint's definitions for half a second."""
    return pint.UnitRegistry(non_int_type=Fraction)


@cache
def factor(unit: str, base: str) -> Fraction:
    """How many `base` one `unit` is, both by pint's names: `factor("inch", "nanometer")` is 25 400 000."""
    return Fraction(registry().Quantity(Fraction(1), unit).to(base).magnitude)
