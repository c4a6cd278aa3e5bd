"""What somebody typed, split into an exact number and a unit, or refused with a reason."""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

from club.base.quantities.errors import QuantityError
from club.base.quantities.number import VULGAR, NumberError, parse_number, plain_text
from club.base.quantities.units import USUAL, Kind, Unit, unit_called

# As wide as the column that keeps it.
LONGEST_TYPED = 40
# Categories of characters that are not seen: controls, formatting such as right-to-left marks, line ends.
UNSEEN = frozenset({"Cc", "Cf", "Cn", "Co", "Cs", "Zl", "Zp"})
RAISED = frozenset("²³")

NUMBER_THEN_REST = re.compile(r"(?P<number>[0-9.,/][0-9.,/ -]*)(?P<rest>.*)")
UNIT_LIKE = re.compile(r"[a-z][a-z ]{0,19}\.?")
MANY_DIGITS = re.compile(r"[0-9]{10}")
GROUPED = re.compile(r"[0-9]{1,3}(?: [0-9]{3}){1,2}(?:[.,][0-9]+)?")
# Two different marks leave no doubt: the first groups, the last is the decimal one.
GROUPED_BY_MARK = re.compile(r"[0-9]{1,3}(?:(?:,[0-9]{3}){1,2}\.|(?:\.[0-9]{3}){1,2},)[0-9]+")
# Eighteen thousand or eighteen? Nobody can tell; with nought before the comma it is clear.
TWO_READINGS = re.compile(r"(?!0+,)(?P<before>[0-9]{1,3}),(?P<after>[0-9]{3})")


def checked_text(text: str, kind: str) -> str:
    """The text without blanks at its ends, once nothing in it is hidden, endless or in foreign digits."""
    typed = text.strip()
    if not typed:
        raise QuantityError("empty", kind=kind)
    if len(typed) > LONGEST_TYPED:
        raise QuantityError("long_text", kind=kind, most=LONGEST_TYPED)
    if any(unicodedata.category(sign) in UNSEEN for sign in typed):
        raise QuantityError("hidden_marks", kind=kind)
    if any(_is_foreign_digit(sign) for sign in typed):
        raise QuantityError("other_digits", kind=kind)
    return typed


def _is_foreign_digit(sign: str) -> bool:
    return sign.isnumeric() and not (sign.isascii() or sign in RAISED or VULGAR.fullmatch(sign))


def plain(typed: str) -> str:
    """Small letters and plain ASCII marks; two single quotes are an inch mark."""
    return plain_text(typed).replace("''", '"').casefold()


def split(typed: str, kind: str) -> tuple[str, str]:
    """The number and the rest, both plain: `2-3/4"` is `2-3/4` and `"`."""
    text = plain(typed)
    if text.startswith("-"):
        raise QuantityError("negative", kind=kind)
    if not any(sign.isdecimal() for sign in text):
        raise QuantityError("no_number", kind=kind)
    if MANY_DIGITS.search(text):
        raise QuantityError("many_digits", kind=kind)
    found = NUMBER_THEN_REST.fullmatch(text)
    if found is None:
        raise QuantityError("unreadable", kind=kind)
    return found["number"].strip(" -"), found["rest"].strip()


def exact_number(number: str, kind: str, unit: str = "") -> Fraction:
    """The value of a plain number, which may be grouped in threes: `1 450`, `1,450.5`, `2 3/4`, `2,75`.

    `unit` is the sign of what it counts, for the words of a refusal.
    """
    if found := TWO_READINGS.fullmatch(number):
        before, after = found.groups()
        readings = {"many": before + after, "few": f"{before}.{after}"}
        raise QuantityError("two_readings", kind=kind, number=number, unit=unit, **readings)
    if GROUPED_BY_MARK.fullmatch(number):
        number = number.replace("," if number.rindex(".") > number.rindex(",") else ".", "")
    try:
        return parse_number(number.replace(" ", "") if GROUPED.fullmatch(number) else number)
    except NumberError as error:
        code = "over_zero" if error.code == "over_zero" else "unreadable"
        raise QuantityError(code, kind=kind) from error


def unit_of(rest: str, number: str, kind: Kind) -> Unit:
    """The unit that belongs here, by its word; raises QuantityError naming what stands there instead."""
    if not rest:
        raise _without_unit(number, kind)
    unit = unit_called(rest)
    if unit is None:
        code = "unknown_unit" if UNIT_LIKE.fullmatch(rest) else "unreadable"
        raise QuantityError(code, kind=kind, unit=rest.rstrip("."))
    if unit.kind != kind:
        raise QuantityError("other_kind", kind=kind, number=number, unit=unit.shown, found=unit.kind.value)
    return unit


def _without_unit(number: str, kind: Kind) -> QuantityError:
    """What is wrong with a bare number: its unit is missing, unless it is no number at all."""
    try:
        exact_number(number, kind, USUAL[kind].sign)
    except QuantityError as error:
        return error
    return QuantityError("no_unit", kind=kind, number=number)
