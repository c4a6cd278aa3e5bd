"""Spindle speeds in whole rpm, and rim speeds in whole micrometres a second.

pint is kept out on purpose: its rpm carries 2 pi, and either obvious product with a diameter is wrong.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from club.base.quantities.errors import QuantityError
from club.base.quantities.length import Length
from club.base.quantities.number import NumberError, parse_number
from club.base.quantities.shown import NO_BREAK_SPACE, decimal, thousands
from club.base.quantities.typed import checked_text, split
from club.base.quantities.units import RPM, Kind, unit_called

# No wood lathe runs faster; common practice.
HIGHEST_RPM = 20_000
# Pi to 30 decimals (from memory; a test works them out by Machin's formula).
PI = Fraction(3_141592653589793238462643383279, 10**30)
# 1 ft/min = 0.00508 m/s exactly (NIST SP 811, appendix B).
UM_PER_S_IN_FT_PER_MIN = 5_080
UM_PER_S_IN_M_PER_S = 1_000_000

GROUPED = re.compile(r"[0-9]{1,3}(?: [0-9]{3}){1,2}")
# A whole speed with a mark before three digits: 1 450 grouped, or 1.45 thousandths? Nobody can tell.
TWO_READINGS = re.compile(r"(?P<before>[0-9]{1,3})[.,](?P<after>[0-9]{3})")


@dataclass(frozen=True, order=True)
class RimSpeed:
    """How fast the rim runs past the tool, in micrometres a second."""

    um_per_s: int


def parse_rpm(text: str) -> int:
    """Whole rpm from `1 450`, `1450` or `1450 rpm`, 1 to 20 000; raises QuantityError."""
    number, rest = split(checked_text(text, Kind.SPEED), Kind.SPEED)
    if rest:
        _check_rpm(rest, number)
    rpm = _whole(number)
    if rpm == 0:
        raise QuantityError("nought", kind=Kind.SPEED)
    if rpm > HIGHEST_RPM:
        raise QuantityError("too_much", kind=Kind.SPEED, most=f"{thousands(HIGHEST_RPM)}{NO_BREAK_SPACE}rpm")
    return rpm


def _check_rpm(word: str, number: str) -> None:
    unit = unit_called(word)
    if unit is None:
        raise QuantityError("unreadable", kind=Kind.SPEED)
    if unit is not RPM:
        kind = "rim speed" if unit.kind is Kind.SPEED else unit.kind.value
        raise QuantityError("other_kind", kind=Kind.SPEED, number=number, unit=unit.sign, found=kind)


def _whole(number: str) -> int:
    if found := TWO_READINGS.fullmatch(number):
        before, after = found.groups()
        whole = int(before + after)
        raise QuantityError("two_readings", kind=Kind.SPEED, number=number, many=str(whole), few="")
    try:
        rpm = parse_number(number.replace(" ", "") if GROUPED.fullmatch(number) else number)
    except NumberError as error:
        code = "over_zero" if error.code == "over_zero" else "unreadable"
        raise QuantityError(code, kind=Kind.SPEED) from error
    if rpm.denominator != 1:
        raise QuantityError("not_whole", kind=Kind.SPEED)
    return rpm.numerator


def show_rpm(rpm: int) -> str:
    """`1 450 rpm`."""
    return f"{thousands(rpm)}{NO_BREAK_SPACE}rpm"


def rim_speed(diameter: Length, rpm: int) -> RimSpeed:
    """v = pi d n, to the nearest micrometre a second: 10 in at 1 000 rpm is 13.30 m/s.

    `diameter` is the largest the work swings: of a square, its diagonal.
    """
    return RimSpeed(round(PI * diameter.nm * rpm / 60 / 1_000))


def show_rim_speed(speed: RimSpeed) -> str:
    """In metres a second with two decimals: `13.30 m/s`. Pi leaves none exact, so none says it is rounded."""
    return f"{decimal(Fraction(speed.um_per_s, UM_PER_S_IN_M_PER_S), 2, fixed=True)}{NO_BREAK_SPACE}m/s"


def show_rim_speed_in_feet(speed: RimSpeed) -> str:
    """In whole feet a minute: `2 618 ft/min`."""
    return f"{decimal(Fraction(speed.um_per_s, UM_PER_S_IN_FT_PER_MIN), 0)}{NO_BREAK_SPACE}ft/min"
