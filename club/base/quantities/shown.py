"""How numbers are written for people: blanks that don't break, no more digits than say something."""

from __future__ import annotations

import re
from fractions import Fraction

NO_BREAK_SPACE = "\u00a0"
# Between a whole number and its fraction, and between a number and its unit.
IN_A_MEASURE = re.compile(r"(?<=\d) (?=\d+/\d|(?:in|ft|mm|cm|m|ml|rpm|min|%)(?!\w))")
# In English; a page hands in its own word.
ABOUT = "about"


def thousands(number: int) -> str:
    """`1450` as `1 450`, with a no-break space."""
    return f"{number:,}".replace(",", NO_BREAK_SPACE)


def round_half_away(value: Fraction) -> int:
    """The nearest whole number; a half goes away from nought, as on a tape."""
    size = (2 * abs(value) + 1) // 2
    return int(-size if value < 0 else size)


def decimal(value: Fraction, places: int = 3, *, fixed: bool = False) -> str:
    """Decimal digits of a value that is not below nought, rounded; noughts at the end only when `fixed`."""
    scaled = round_half_away(value * 10**places)
    whole, part = divmod(scaled, 10**places)
    digits = f"{part:0{places}d}" if places else ""
    digits = digits if fixed else digits.rstrip("0")
    return f"{thousands(whole)}.{digits}" if digits else thousands(whole)


def is_exact(value: Fraction, parts: int) -> bool:
    """Whether a value is whole in this many parts of one, so that rounding to them changes nothing."""
    return (value * parts).denominator == 1


def with_about(text: str, exact: bool, about: str = ABOUT) -> str:
    """A reader may cut to what is shown, so a rounded value says that it is one."""
    return text if exact else f"{about} {text}"


def unbroken(text: str) -> str:
    """Written text whose measures stay on one line: `3 1/8 in` cut after the 3 would be read as 1/8 in."""
    return IN_A_MEASURE.sub(NO_BREAK_SPACE, text)
