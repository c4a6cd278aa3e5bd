"""Amounts of any kind as whole numbers of its base unit: read from text, shown in a unit."""

from __future__ import annotations

import re
from fractions import Fraction

from club.base.quantities.errors import QuantityError
from club.base.quantities.number import VULGAR, plain_text
from club.base.quantities.registry import factor
from club.base.quantities.shown import ABOUT, NO_BREAK_SPACE, decimal, is_exact, with_about
from club.base.quantities.typed import exact_number, split, unit_of
from club.base.quantities.units import BASES, MILLIMETRE, Kind, Unit

PLACES = 3
# `1.250 mm` is a metre and a quarter where the point parts thousands; nobody who measures in
# thousandths ends on a nought (9.525 mm, for 3/8 in, stays).
PARTED_THOUSANDS = re.compile(r"([1-9][0-9]{0,2})\.([0-9]{2}0)")
# In the font: quarters and the half. Other single-letter fractions are spelled out.
DRAWN = frozenset("¼½¾")


def in_base(value: Fraction, unit: Unit) -> Fraction:
    """A value in this unit as the base unit of its kind, exact."""
    return value * factor(unit.pint_name, BASES[unit.kind])


def read_amount(typed: str, kind: Kind) -> Fraction:
    """Exact base units of checked text that is one number and one unit; raises QuantityError."""
    number, rest = split(typed, kind)
    if kind is Kind.LENGTH and rest in {"", MILLIMETRE.sign}:
        _refuse_parted_thousands(number, rest)
    unit = unit_of(rest, number, kind)
    return in_base(exact_number(number, kind, unit.sign), unit)


def _refuse_parted_thousands(number: str, unit: str) -> None:
    if found := PARTED_THOUSANDS.fullmatch(number):
        readings = {"many": found[1] + found[2], "few": f"{found[1]}.{found[2]}".rstrip("0").rstrip(".")}
        raise QuantityError("two_readings", kind=Kind.LENGTH, number=number, unit=unit, **readings)


def whole_amount(exact: Fraction, kind: Kind, most: int, most_shown: str, *, zero: bool) -> int:
    """The nearest whole base unit, a half to the even one; nought or more than `most` is refused."""
    if exact > most:
        raise QuantityError("too_much", kind=kind, most=most_shown)
    amount = round(exact)
    if amount == 0 and not zero:
        raise QuantityError("nought", kind=kind)
    return amount


def show_amount(amount: int, unit: Unit, about: str = ABOUT) -> str:
    """An amount of base units in this unit, to three decimals: `1.5 l`, `about 0.106 gal`."""
    value = Fraction(amount) / factor(unit.pint_name, BASES[unit.kind])
    text = f"{decimal(value, PLACES)}{NO_BREAK_SPACE}{unit.shown}"
    return with_about(text, is_exact(value, 10**PLACES), about)


def tidy(typed: str) -> str:
    """Typed text as pages show it: no line breaks inside, and only signs that our typeface has."""
    spelled = "".join(
        plain_text(sign).rjust(4) if VULGAR.fullmatch(sign) and sign not in DRAWN else sign for sign in typed
    )
    marked = spelled.replace("\u2033", '"').replace("\u2032", "'").replace("\u2044", "/")
    return NO_BREAK_SPACE.join(marked.split())
