"""Morse tapers No. 0 to No. 6: records of the published table, and the angles that follow from it.

The draw-bar thread isn't among them: it differs on one and the same taper, so it is measured.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from club.base.quantities.length import NM_PER_INCH

STANDARDS = "ISO 296:1991; ASME B5.10"


@dataclass(frozen=True)
class MorseTaper:
    """One size of the Morse series.

    `taper_per_foot` is the published change of diameter in inches to a foot of length, `ratio` the published
    length for a change of one in diameter (20.020 for No. 2). Diameters and depth are in nanometres: at the
    gauge line, at the small end, and from the one to the other.
    """

    size: int
    taper_per_foot: Fraction
    ratio: Fraction
    gauge_diameter_nm: int
    small_end_diameter_nm: int
    plug_depth_nm: int
    standard: str = STANDARDS

    @property
    def key(self) -> str:
        """`MT2` for No. 2."""
        return f"MT{self.size}"

    @property
    def taper(self) -> Fraction:
        """Change of diameter to a length of one, without unit."""
        return self.taper_per_foot / 12

    @property
    def half_angle(self) -> float:
        """Angle between the axis and the side, in degrees."""
        return math.degrees(math.atan(self.taper / 2))

    @property
    def included_angle(self) -> float:
        """Angle between the two sides, in degrees: 2.8614 for No. 2."""
        return 2 * self.half_angle


def _record(size: int, per_foot: str, ratio: str, gauge: str, small_end: str, depth: str) -> MorseTaper:
    """A row as printed: taper in inches to the foot, ratio, then three measures in inches."""
    gauge_nm, small_end_nm, depth_nm = (
        int(Fraction(inches) * NM_PER_INCH) for inches in (gauge, small_end, depth)
    )
    return MorseTaper(size, Fraction(per_foot), Fraction(ratio), gauge_nm, small_end_nm, depth_nm)


# ASME B5.10 (machine tapers), Morse series; ratios as in ISO 296:1991.
_RECORDS = (
    _record(0, "0.62460", "19.212", "0.3561", "0.2520", "2.0000"),
    _record(1, "0.59858", "20.047", "0.4750", "0.3690", "2.1250"),
    _record(2, "0.59941", "20.020", "0.7000", "0.5720", "2.5625"),
    _record(3, "0.60235", "19.922", "0.9380", "0.7780", "3.1875"),
    _record(4, "0.62326", "19.254", "1.2310", "1.0200", "4.0625"),
    _record(5, "0.63151", "19.002", "1.7480", "1.4750", "5.1875"),
    _record(6, "0.62565", "19.180", "2.4940", "2.1160", "7.2500"),
)
MORSE_TAPERS: Mapping[str, MorseTaper] = MappingProxyType({record.key: record for record in _RECORDS})
