from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pint
import pytest

from club.base.quantities.registry import factor, registry
from club.base.quantities.units import (
    BASES,
    BOARD_FOOT,
    BY_WORD,
    CENTILITRE,
    CENTIMETRE,
    CUBIC_CENTIMETRE,
    CUBIC_FOOT,
    CUBIC_INCH,
    CUBIC_METRE,
    CUBIC_MILLIMETRE,
    FLUID_OUNCE,
    FOOT,
    GALLON,
    GRAM,
    INCH,
    KILOGRAM,
    LITRE,
    METRE,
    MILLILITRE,
    MILLIMETRE,
    OUNCE,
    POUND,
    SQUARE_CENTIMETRE,
    SQUARE_FOOT,
    SQUARE_INCH,
    SQUARE_METRE,
    SQUARE_MILLIMETRE,
    UNITS,
    YARD,
    Kind,
    Unit,
    unit_called,
)
from tests.reference.tables import rows

# Metric ones by the definitions of the SI (SI brochure, 9th edition): so many of our base units.
METRIC = {
    MILLIMETRE: 10**6,
    CENTIMETRE: 10**7,
    METRE: 10**9,
    SQUARE_MILLIMETRE: 10**6,
    SQUARE_CENTIMETRE: 10**8,
    SQUARE_METRE: 10**12,
    MILLILITRE: 10**6,
    CENTILITRE: 10**7,
    LITRE: 10**9,
    CUBIC_MILLIMETRE: 10**3,
    CUBIC_CENTIMETRE: 10**6,
    CUBIC_METRE: 10**12,
    GRAM: 10**9,
    KILOGRAM: 10**12,
}
# How NIST SP 811, appendix B (tests/reference/09a_units.csv) names ours, and the metric unit it uses.
BY_NIST = {
    INCH: ("inch", "m", METRE),
    FOOT: ("foot", "m", METRE),
    YARD: ("yard", "m", METRE),
    SQUARE_FOOT: ("square foot", "m2", SQUARE_METRE),
    CUBIC_INCH: ("cubic inch", "m3", CUBIC_METRE),
    CUBIC_FOOT: ("cubic foot", "m3", CUBIC_METRE),
    BOARD_FOOT: ("board foot", "m3", CUBIC_METRE),
    GALLON: ("US gallon", "L", LITRE),
    FLUID_OUNCE: ("US fluid ounce", "mL", MILLILITRE),
    POUND: ("pound", "kg", KILOGRAM),
    OUNCE: ("ounce avoirdupois", "kg", KILOGRAM),
}
TABLE = {(row["from"], row["to"]): row["factor"] for row in rows("09a_units.csv")}
COUNTED = [unit for unit in UNITS if unit.kind is not Kind.SPEED]


def in_base(unit: Unit) -> Fraction:
    return factor(unit.pint_name, BASES[unit.kind])


@pytest.mark.parametrize(("unit", "found"), BY_NIST.items(), ids=lambda value: getattr(value, "sign", None))
def test_customary_units_are_what_nist_says(unit, found):
    name, target, metric = found

    assert in_base(unit) == Fraction(TABLE[name, target]) * METRIC[metric]


def test_a_square_inch_is_the_square_of_nists_inch():
    assert in_base(SQUARE_INCH) == (Fraction(TABLE["inch", "m"]) * 10**6) ** 2


def test_a_board_foot_is_144_cubic_inches_and_a_twelfth_of_a_cubic_foot():
    assert in_base(BOARD_FOOT) == int(TABLE["board foot", "in3"]) * in_base(CUBIC_INCH)
    assert in_base(BOARD_FOOT) == Fraction(TABLE["board foot", "ft3"]) * in_base(CUBIC_FOOT)


@pytest.mark.parametrize(("unit", "count"), METRIC.items(), ids=lambda value: getattr(value, "sign", None))
def test_metric_units_are_powers_of_ten(unit, count):
    assert in_base(unit) == count


def test_no_unit_goes_unchecked():
    assert set(COUNTED) == {*METRIC, *BY_NIST, SQUARE_INCH}


@pytest.fixture(scope="module")
def decimals():
    return pint.UnitRegistry(non_int_type=Decimal)


@pytest.mark.parametrize("unit", COUNTED, ids=lambda unit: unit.sign)
def test_a_second_registry_with_decimals_agrees(unit, decimals):
    other = decimals.Quantity(Decimal(1), unit.pint_name).to(BASES[unit.kind]).magnitude

    assert abs(Fraction(other) / in_base(unit) - 1) < Fraction(1, 10**20)


def test_there_is_one_registry_and_it_is_exact():
    assert registry() is registry()
    assert registry().Quantity(Fraction(1, 64), "inch").to("millimeter").magnitude == Fraction(127, 320)


def test_no_word_stands_for_two_units():
    words = [word for unit in UNITS for word in (unit.sign, *unit.words)]

    assert len(words) == len(set(words)) == len(BY_WORD)
    assert all(word == word.casefold() for word in words)


@pytest.mark.parametrize(
    ("word", "unit"), [("Inches", INCH), ("in.", INCH), ('"', INCH), (" MM ", MILLIMETRE)]
)
def test_capitals_and_full_stops_make_no_other_unit(word, unit):
    assert unit_called(word) is unit
