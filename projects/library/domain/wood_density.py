"""How heavy wood is and how it shrinks, from the specific gravity that tables print."""

from __future__ import annotations

from fractions import Fraction

# Fibre saturation point in per cent, and shrinkage of volume by green gravity: Wood Handbook
# (FPL-GTR-282), chapter 4; the 26.5 from memory.
FIBRE_SATURATION = 30
SHRINKAGE_BY_GRAVITY = Fraction(265, 1000)
# In kg/m³.
WATER = 1000


def density(gravity: Fraction, moisture: int) -> Fraction:
    """kg/m³ from the specific gravity on the volume at this moisture (%): 0.63 at 12 % is 705.6.

    Wood Handbook (FPL-GTR-282), equation 4-14: 1000 G (1 + M/100).
    """
    return WATER * gravity * (1 + Fraction(moisture, 100))


def gravity_from_green(green: Fraction, moisture: int) -> Fraction:
    """Specific gravity at this moisture, below 30 %, from the green one: an estimate, a few per cent off."""
    dried = Fraction(FIBRE_SATURATION - moisture, FIBRE_SATURATION)
    return green / (1 - SHRINKAGE_BY_GRAVITY * green * dried)


def shrinkage(green_to_oven_dry: Fraction, moisture: int) -> Fraction:
    """Per cent of shrinkage from green to this moisture, below 30 %: Wood Handbook, equation 4-9."""
    return green_to_oven_dry * Fraction(FIBRE_SATURATION - moisture, FIBRE_SATURATION)
