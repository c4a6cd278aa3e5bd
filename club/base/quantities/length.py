"""Lengths: whole nanometres and the text they were typed as."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from club.base.quantities.amount import in_base, read_amount, show_amount, tidy, whole_amount
from club.base.quantities.errors import QuantityError
from club.base.quantities.inches import inch_fraction
from club.base.quantities.shown import ABOUT, NO_BREAK_SPACE, decimal, is_exact, with_about
from club.base.quantities.typed import checked_text, exact_number, plain
from club.base.quantities.units import FOOT, INCH, MILLIMETRE, Kind

__all__ = [
    "LONGEST",
    "NM_PER_INCH",
    "Length",
    "LengthStyle",
    "QuantityError",
    "check_length",
    "parse_length",
    "says",
    "show_length",
    "write_length",
]

# 1 in = 25.4 mm exactly since 1959 (NIST SP 811, appendix B).
NM_PER_INCH = 25_400_000
NM_PER_MM = 1_000_000
LONGEST = 100_000_000_000
LONGEST_SHOWN = f"100{NO_BREAK_SPACE}m"
FEET_AND_INCHES = re.compile(
    r"""(?P<feet>[0-9.,/][0-9.,/ -]*)(?:'|ft\.?|foot|feet)[ -]*"""
    r"""(?P<inches>[0-9.,/][0-9.,/ -]*)(?:"|(?:in|inch|inches)\.?)?"""
)


class LengthStyle(StrEnum):
    """How a reader likes lengths: as typed, inches to the nearest part, or millimetres."""

    AS_TYPED = "as_typed"
    SIXTEENTHS = "sixteenths"
    THIRTY_SECONDS = "thirty_seconds"
    SIXTY_FOURTHS = "sixty_fourths"
    MILLIMETRES = "millimetres"


PARTS = {LengthStyle.SIXTEENTHS: 16, LengthStyle.THIRTY_SECONDS: 32, LengthStyle.SIXTY_FOURTHS: 64}


@dataclass(frozen=True, order=True)
class Length:
    """Whole nanometres; `typed` is what somebody wrote for it, or "" for one that was worked out."""

    nm: int
    typed: str = field(default="", compare=False)

    def __str__(self) -> str:
        return show_length(self, LengthStyle.AS_TYPED)


def parse_length(text: str, *, zero: bool = False) -> Length:
    """The length somebody typed, to the nearest nanometre, with the text kept.

    `2 3/4 in`, `2-3/4"`, `2¾"`, `2,75 in`, `69.85 mm`, `7cm`, `1' 6"` and `1 ft 6 in` are read, anything
    else raises QuantityError. Nought is a length only where `zero` says so; 100 m is the longest.
    """
    typed = checked_text(text, Kind.LENGTH)
    exact = _feet_and_inches(plain(typed))
    if exact is None:
        exact = read_amount(typed, Kind.LENGTH)
    return Length(whole_amount(exact, Kind.LENGTH, LONGEST, LONGEST_SHOWN, zero=zero), typed)


def check_length(length: Length, *, zero: bool = False) -> None:
    """Raise QuantityError for a length that nobody could have typed: below nought, nought, above 100 m."""
    if length.nm < 0:
        raise QuantityError("negative", kind=Kind.LENGTH)
    whole_amount(Fraction(length.nm), Kind.LENGTH, LONGEST, LONGEST_SHOWN, zero=zero)


def _feet_and_inches(text: str) -> Fraction | None:
    """Exact nanometres of `1' 6"` or `1' 6`; None when the text isn't of that form."""
    found = FEET_AND_INCHES.fullmatch(text)
    if found is None:
        return None
    feet, inches = found["feet"].strip(" -"), found["inches"].strip(" -")
    feet_nm = in_base(exact_number(feet, Kind.LENGTH, FOOT.sign), FOOT)
    return feet_nm + in_base(exact_number(inches, Kind.LENGTH, INCH.sign), INCH)


def show_length(length: Length, style: LengthStyle, about: str = ABOUT) -> str:
    """The length as this reader likes it, with no-break spaces: `2 3/4 in`, `69.85 mm`.

    A value that rounding changed says so, since somebody may cut to it: `about 12 3/16 in`. Where it should
    stand as typed but nobody typed it, it is in millimetres.
    """
    if style is LengthStyle.AS_TYPED and length.typed:
        return tidy(length.typed)
    if style not in PARTS:
        return show_amount(length.nm, MILLIMETRE, about)
    inches = Fraction(length.nm, NM_PER_INCH)
    shown = inch_fraction(inches, PARTS[style], NO_BREAK_SPACE)
    return with_about(f"{shown}{NO_BREAK_SPACE}in", is_exact(inches, PARTS[style]), about)


def write_length(length: Length) -> str:
    """Text that `parse_length` reads back as this very length: what was typed, else exact millimetres."""
    return length.typed or f"{decimal(Fraction(length.nm, NM_PER_MM), 6)}{NO_BREAK_SPACE}mm"


@lru_cache(maxsize=4096)
def says(typed: str, nm: int) -> bool:
    """Whether this text means this many nanometres, so that it may be shown for them."""
    try:
        return parse_length(typed, zero=True).nm == nm
    except QuantityError:
        return False
