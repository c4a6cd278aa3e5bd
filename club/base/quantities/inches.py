"""Inches as a tape shows them."""

from __future__ import annotations

from fractions import Fraction

from club.base.quantities.shown import round_half_away


def inch_fraction(inches: Fraction, parts: int, blank: str = " ") -> str:
    """Inches to the nearest 1/parts (half away from nought), reduced: 12.203 to sixteenths is `12 3/16`.

    `blank` stands between the whole and the fraction. Common practice of tape measures.
    """
    rounded = Fraction(round_half_away(inches * parts), parts)
    whole, rest = divmod(abs(rounded), 1)
    sign = "-" if rounded < 0 else ""
    if not rest:
        return f"{sign}{whole}"
    fraction = f"{rest.numerator}/{rest.denominator}"
    return f"{sign}{whole}{blank}{fraction}" if whole else f"{sign}{fraction}"
