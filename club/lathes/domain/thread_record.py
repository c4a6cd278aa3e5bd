"""Screw threads as records with their standard, and the measures of their 60 degree basic profile.

Inch threads follow ASME B1.1, metric ones ISO 724 and ISO 898-1; the two have stress areas of their own.
The list of known ones, and how one is read from typed text, stand in `threads.py`.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from club.base.quantities.length import NM_PER_INCH, NM_PER_MM

FINEST_INCH_PART = 64

# Heights of the basic profile in pitches, ISO 724 and ASME B1.1: 3/4 H, 5/4 H and 17/12 H with H = sqrt(3)/2.
PITCH_DIAMETER_DROP = Fraction("0.649519053")
INTERNAL_MINOR_DROP = Fraction("1.082531755")
EXTERNAL_ROOT_DROP = Fraction("1.226869322")


class ThreadSystem(StrEnum):
    INCH = "inch"
    METRIC = "metric"


# Stress area: ASME B1.1 has pi/4 (D - 0.9743/n)^2 (printed as 0.7854). ISO 898-1 takes the mean of the
# pitch diameter and the root: pi/4 (d - 0.9382 P)^2. The two are not to be mixed.
STRESS_DROP = {
    ThreadSystem.INCH: Fraction("0.9743"),
    ThreadSystem.METRIC: (PITCH_DIAMETER_DROP + EXTERNAL_ROOT_DROP) / 2,
}
PROFILE_STANDARD = {ThreadSystem.INCH: "ASME B1.1", ThreadSystem.METRIC: "ISO 724; ISO 898-1"}
PUBLISHED, RECALLED, TYPED = "published tables", "from memory", "as typed"


class ThreadError(ValueError):
    """The text is no thread that can be kept. `code` and `values` say why; the room has the sentence."""

    def __init__(self, code: str, **values: object) -> None:
        self.code = code
        self.values = values
        super().__init__(code)


@dataclass(frozen=True)
class Thread:
    """A thread by its diameter and pitch, in nanometres.

    `series` (UNC, 8-UN, coarse ...) is empty for a thread that isn't in the list of known ones; `source` says
    where the list has it from. `standard` is the one of the profile.
    """

    system: ThreadSystem
    major_nm: int
    pitch_nm: Fraction
    series: str = ""
    source: str = TYPED

    @property
    def designation(self) -> str:
        """The one way to write it: `1 1/4-8`, `M33x3.5`. `parse_thread` gives the same thread back."""
        if self.system is ThreadSystem.METRIC:
            major, pitch = show_mm(self.major_nm), show_mm(self.pitch_nm)
            return f"M{major}x{pitch}"
        major, per_inch = (
            show_inches(Fraction(self.major_nm, NM_PER_INCH)),
            show_decimal(self.threads_per_inch),
        )
        return f"{major}-{per_inch}"

    @property
    def standard(self) -> str:
        return PROFILE_STANDARD[self.system]

    @property
    def is_listed(self) -> bool:
        return self.series != ""

    @property
    def threads_per_inch(self) -> Fraction:
        return NM_PER_INCH / self.pitch_nm

    @property
    def pitch_diameter_nm(self) -> int:
        """Basic pitch diameter, to the nearest nanometre: D - 0.6495 P."""
        return self._less(PITCH_DIAMETER_DROP)

    @property
    def internal_minor_diameter_nm(self) -> int:
        """Basic minor diameter of the nut or tapped hole, to the nearest nanometre: D - 1.0825 P."""
        return self._less(INTERNAL_MINOR_DROP)

    @property
    def external_root_diameter_nm(self) -> int:
        """Diameter at the rounded root of the bar, to the nearest nanometre: d - 1.2269 P."""
        return self._less(EXTERNAL_ROOT_DROP)

    @property
    def stress_area_nm2(self) -> int:
        """Tensile stress area in square nanometres, by the formula of the thread's own system."""
        return round(math.pi / 4 * self._less(STRESS_DROP[self.system]) ** 2)

    def _less(self, pitches: Fraction) -> int:
        return round(self.major_nm - pitches * self.pitch_nm)


def show_decimal(value: Fraction) -> str:
    """`3.5`, `8`, `0.9`: a number that a decimal can hold exactly, without needless zeros."""
    exact = Decimal(value.numerator) / Decimal(value.denominator)
    return format(exact.normalize(), "f")


def show_mm(nm: Fraction | int) -> str:
    return show_decimal(Fraction(nm) / NM_PER_MM)


def show_inches(value: Fraction) -> str:
    """`1 1/4` when it is in 64ths of an inch, else a decimal, as `0.9`."""
    return show_decimal(value) if FINEST_INCH_PART % value.denominator else mixed_number(value)


def mixed_number(value: Fraction) -> str:
    whole, part = divmod(value, 1)
    return " ".join(str(piece) for piece in (whole, part) if piece) or "0"


def inch_thread(major: Fraction, per_inch: Fraction, series: str = "", source: str = TYPED) -> Thread:
    """A thread of so many threads per inch on a diameter in inches, which whole nanometres must hold."""
    return Thread(ThreadSystem.INCH, int(major * NM_PER_INCH), NM_PER_INCH / per_inch, series, source)


def metric_thread(major: Fraction, pitch: Fraction, series: str = "", source: str = TYPED) -> Thread:
    """A thread by diameter and pitch in millimetres, which whole nanometres must hold."""
    return Thread(ThreadSystem.METRIC, int(major * NM_PER_MM), pitch * NM_PER_MM, series, source)
