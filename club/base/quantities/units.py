"""Every unit that is read or shown, by the words people type for it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from club.base.quantities.shown import NO_BREAK_SPACE


class Kind(StrEnum):
    LENGTH = "length"
    AREA = "area"
    VOLUME = "volume"
    MASS = "mass"
    SPEED = "speed"


@dataclass(frozen=True)
class Unit:
    """A unit: the sign it is shown with, its name in pint, what it measures, and other words typed for it."""

    sign: str
    pint_name: str
    kind: Kind
    words: tuple[str, ...] = ()

    @property
    def shown(self) -> str:
        """The sign in one piece: `fl oz` never breaks."""
        return self.sign.replace(" ", NO_BREAK_SPACE)


# What one whole number of each kind counts; small enough that the units below are whole or nearly so.
BASES: Mapping[Kind, str] = {
    Kind.LENGTH: "nanometer",
    Kind.AREA: "micrometer**2",
    Kind.VOLUME: "nanoliter",
    Kind.MASS: "nanogram",
}

INCH = Unit("in", "inch", Kind.LENGTH, ('"', "inch", "inches"))
FOOT = Unit("ft", "foot", Kind.LENGTH, ("'", "foot", "feet"))
YARD = Unit("yd", "yard", Kind.LENGTH, ("yard", "yards"))
MILLIMETRE = Unit("mm", "millimeter", Kind.LENGTH, ("millimetre", "millimetres", "millimeter", "millimeters"))
CENTIMETRE = Unit("cm", "centimeter", Kind.LENGTH, ("centimetre", "centimetres", "centimeter", "centimeters"))
METRE = Unit("m", "meter", Kind.LENGTH, ("metre", "metres", "meter", "meters"))

SQUARE_MILLIMETRE = Unit("mm²", "millimeter**2", Kind.AREA, ("mm2", "mm^2", "sq mm"))
SQUARE_CENTIMETRE = Unit("cm²", "centimeter**2", Kind.AREA, ("cm2", "cm^2", "sq cm"))
SQUARE_METRE = Unit("m²", "meter**2", Kind.AREA, ("m2", "m^2", "sq m"))
SQUARE_INCH = Unit("in²", "inch**2", Kind.AREA, ("in2", "in^2", "sq in"))
SQUARE_FOOT = Unit("ft²", "foot**2", Kind.AREA, ("ft2", "ft^2", "sq ft"))

MILLILITRE = Unit("ml", "milliliter", Kind.VOLUME, ("millilitre", "millilitres", "milliliter", "milliliters"))
CENTILITRE = Unit("cl", "centiliter", Kind.VOLUME, ("centilitre", "centilitres", "centiliter", "centiliters"))
LITRE = Unit("l", "liter", Kind.VOLUME, ("litre", "litres", "liter", "liters"))
CUBIC_MILLIMETRE = Unit("mm³", "millimeter**3", Kind.VOLUME, ("mm3", "mm^3"))
CUBIC_CENTIMETRE = Unit("cm³", "centimeter**3", Kind.VOLUME, ("cm3", "cm^3", "cc"))
CUBIC_METRE = Unit("m³", "meter**3", Kind.VOLUME, ("m3", "m^3"))
CUBIC_INCH = Unit("in³", "inch**3", Kind.VOLUME, ("in3", "in^3", "cu in"))
CUBIC_FOOT = Unit("ft³", "foot**3", Kind.VOLUME, ("ft3", "ft^3", "cu ft"))
# The customary units of the United States; the imperial ones differ and nobody writes which is meant.
FLUID_OUNCE = Unit("fl oz", "US_fluid_ounce", Kind.VOLUME, ("us fl oz", "fluid ounce", "fluid ounces"))
GALLON = Unit("gal", "US_liquid_gallon", Kind.VOLUME, ("us gal", "gallon", "gallons"))
BOARD_FOOT = Unit("bd ft", "board_foot", Kind.VOLUME, ("bf", "fbm", "board foot", "board feet"))

GRAM = Unit("g", "gram", Kind.MASS, ("gram", "grams"))
KILOGRAM = Unit("kg", "kilogram", Kind.MASS, ("kilogram", "kilograms"))
OUNCE = Unit("oz", "ounce", Kind.MASS, ("ounce", "ounces"))
POUND = Unit("lb", "pound", Kind.MASS, ("lbs", "pound", "pounds"))

# Read so that a speed where a length belongs is named as one. pint never sees them: its rpm carries 2 pi.
RPM = Unit("rpm", "", Kind.SPEED, ("r/min", "rev/min"))
METRES_PER_SECOND = Unit("m/s", "", Kind.SPEED)
FEET_PER_MINUTE = Unit("ft/min", "", Kind.SPEED, ("fpm", "sfm"))

# The unit of what nobody typed.
USUAL: Mapping[Kind, Unit] = {
    Kind.LENGTH: MILLIMETRE,
    Kind.AREA: SQUARE_CENTIMETRE,
    Kind.VOLUME: MILLILITRE,
    Kind.MASS: GRAM,
}

UNITS = tuple(value for value in list(globals().values()) if isinstance(value, Unit))
BY_WORD: Mapping[str, Unit] = {word: unit for unit in UNITS for word in (unit.sign, *unit.words)}


def unit_called(word: str) -> Unit | None:
    """The unit somebody typed as `in`, `Inches`, `in.` or `"`; None when there is none."""
    return BY_WORD.get(word.strip(" .").casefold())
