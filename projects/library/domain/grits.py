"""Grain sizes of sandpaper, and whether a ladder of grits goes down it step by step."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType

STANDARD = {"macro": "ISO 6344-2:2021", "micro": "ISO 6344-3:2021"}
# The first grade that is graded by sedimentation; coarser ones are sieved, their mean size is indicative.
FIRST_MICROGRIT = 240


@dataclass(frozen=True)
class Grit:
    """A P grade and its mean grain size in whole nanometres: P240 is 58 500."""

    number: int
    grain_nm: int

    @property
    def source(self) -> str:
        return STANDARD["micro" if self.number >= FIRST_MICROGRIT else "macro"]


# ds50 in micrometres, ISO 6344-2:2021 (P12 to P220) and ISO 6344-3:2021 (P240 up).
_DS50 = """
P12 1815   P16 1324   P20 1000   P24 764    P30 642    P36 538    P40 425
P50 336    P60 269    P80 201    P100 162   P120 125   P150 100   P180 82
P220 68    P240 58.5  P280 52.2  P320 46.2  P360 40.5  P400 35.0  P500 30.2
P600 25.8  P800 21.8  P1000 18.3 P1200 15.3 P1500 12.6 P2000 10.3 P2500 8.4
"""


def _grits(table: str) -> Mapping[int, Grit]:
    words = table.split()
    pairs = zip(words[::2], words[1::2], strict=True)
    grits = [Grit(int(name.removeprefix("P")), int(Fraction(size) * 1000)) for name, size in pairs]
    return MappingProxyType({grit.number: grit for grit in grits})


GRITS = _grits(_DS50)


class GritFault(StrEnum):
    UNKNOWN = "unknown"
    NOT_FINER = "not_finer"
    COARSE_STEP = "coarse_step"
    FAR_TOO_COARSE = "far_too_coarse"


@dataclass(frozen=True)
class StepLimits:
    """How many times finer the next grain may be before it is said, and before it is refused.

    Common practice gives the rule by numbers (say it above 1.5 times, refuse above 2), which is no measure of
    grain. By grain size it comes to these: P80 to P120 is 1.61 times finer and usual, P60 to P100 is 1.66 and
    said, P60 to P120 is 2.15 and said, P80 to P180 is 2.45 and refused.
    """

    say: Fraction = Fraction(33, 20)
    refuse: Fraction = Fraction(11, 5)


USUAL_LIMITS = StepLimits()


@dataclass(frozen=True)
class GritFinding:
    """What is wrong with the grit at this place, from 0; the last two where it is compared with another."""

    place: int
    fault: GritFault
    number: int
    before: int = 0
    times_finer: Fraction = Fraction(0)


def ladder_findings(numbers: Sequence[int], limits: StepLimits = USUAL_LIMITS) -> tuple[GritFinding, ...]:
    """What is wrong with a ladder of P grades; nothing for (80, 120, 180, 240, 320, 400)."""
    found = [
        GritFinding(place, GritFault.UNKNOWN, number)
        for place, number in enumerate(numbers)
        if number not in GRITS
    ]
    steps = zip(range(1, len(numbers)), numbers, numbers[1:], strict=False)
    found += [
        finding
        for place, before, number in steps
        if before in GRITS and number in GRITS and (finding := _step(place, before, number, limits))
    ]
    return tuple(sorted(found, key=lambda finding: finding.place))


def times_finer(before: int, number: int) -> Fraction:
    """How many times smaller the grain of the second grade is: P80 to P120 is 201/125."""
    return Fraction(GRITS[before].grain_nm, GRITS[number].grain_nm)


def _step(place: int, before: int, number: int, limits: StepLimits) -> GritFinding | None:
    finer = times_finer(before, number)
    if finer <= 1:
        return GritFinding(place, GritFault.NOT_FINER, number, before, finer)
    if finer > limits.refuse:
        return GritFinding(place, GritFault.FAR_TOO_COARSE, number, before, finer)
    return GritFinding(place, GritFault.COARSE_STEP, number, before, finer) if finer > limits.say else None
