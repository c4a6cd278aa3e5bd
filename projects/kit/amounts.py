"""How much of a liquid or a glue is used up: whole nanolitres and nanograms, always rounded up."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

# 1 cm²/ml is 100 mm² for each 1 000 mm³; in base units 10⁸ µm² for 10⁶ nl.
UM2_PER_NL = 100
# 1 g/m² is 10⁹ ng for 10¹² µm².
UM2_PER_NG = 1_000


@dataclass(frozen=True)
class Soak:
    """Settings of finishes, in per cent: what end grain takes more than side grain, and what is lost.

    That end grain takes more is common practice; how much, no standard says, nor what is spilt.
    """

    end_grain_more: int = 50
    lost: int = 0


def liquid_nl(area_um2: int, end_grain_um2: int, spread_cm2_per_ml: int, soak: Soak) -> Fraction:
    """Nanolitres of one coat on one piece, not rounded. The end grain is part of the area.

    200 cm² without end grain at 100 cm²/ml (10 m²/l) are 2 ml.
    """
    counted = area_um2 + Fraction(end_grain_um2 * soak.end_grain_more, 100)
    return counted / (spread_cm2_per_ml * UM2_PER_NL) * Fraction(100 + soak.lost, 100)


def adhesive_ng(area_um2: int, grams_per_m2: int, loss_percent: int, kits: int) -> int:
    """Nanograms for so many kits, rounded up. 748.1 mm² at 200 g/m² for 12 pieces are 1.80 g."""
    return ceil(Fraction(area_um2 * grams_per_m2 * kits * (100 + loss_percent), 100 * UM2_PER_NG))
