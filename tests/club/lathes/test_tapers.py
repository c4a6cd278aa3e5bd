from __future__ import annotations

from fractions import Fraction

import pytest

from club.lathes.domain.tapers import MORSE_TAPERS
from club.lathes.models import Lathe
from tests.reference.tables import half_of_last_digit, rows

TABLE = rows("01_morse_tapers.csv")
NM_PER_INCH = 25_400_000
NM_PER_MM = 1_000_000

each_size = pytest.mark.parametrize("row", TABLE, ids=[row["size"] for row in TABLE])


def test_there_is_a_record_for_each_size_of_the_table_and_no_other():
    assert list(MORSE_TAPERS) == ["MT0", "MT1", "MT2", "MT3", "MT4", "MT5", "MT6"]
    assert list(MORSE_TAPERS) == [row["size"] for row in TABLE]


def test_a_lathe_can_have_each_of_them():
    assert set(MORSE_TAPERS) == set(Lathe.Taper.values) - {Lathe.Taper.NONE}


@each_size
def test_a_record_equals_asme_b5_10_to_the_nanometre(row):
    taper = MORSE_TAPERS[row["size"]]

    assert taper.taper_per_foot == Fraction(row["taper_in_per_ft"])
    assert taper.gauge_diameter_nm == Fraction(row["gauge_line_dia_D_in"]) * NM_PER_INCH
    assert taper.small_end_diameter_nm == Fraction(row["small_end_dia_at_plug_depth_in"]) * NM_PER_INCH
    assert taper.plug_depth_nm == Fraction(row["plug_depth_in"]) * NM_PER_INCH


@each_size
def test_a_record_equals_iso_296_in_ratio_and_millimetres(row):
    taper = MORSE_TAPERS[row["size"]]

    assert taper.ratio == Fraction(row["taper_ratio_1_to"])
    for nm, column in (
        (taper.gauge_diameter_nm, "gauge_line_dia_D_mm"),
        (taper.small_end_diameter_nm, "small_end_dia_at_plug_depth_mm"),
        (taper.plug_depth_nm, "plug_depth_mm"),
    ):
        assert abs(Fraction(nm, NM_PER_MM) - Fraction(row[column])) <= half_of_last_digit(row[column])


@each_size
def test_the_small_end_follows_from_taper_and_plug_depth_within_two_ten_thousandths_of_an_inch(row):
    """ASME B5.10: D - d = taper per foot / 12 x plug depth."""
    taper = MORSE_TAPERS[row["size"]]

    drop = taper.gauge_diameter_nm - taper.small_end_diameter_nm

    assert abs(drop - taper.taper * taper.plug_depth_nm) <= Fraction("0.0002") * NM_PER_INCH


@each_size
def test_ratio_and_taper_are_one_number(row):
    """ISO 296:1991 prints the ratio to three decimals: it is 12 over the taper per foot."""
    taper = MORSE_TAPERS[row["size"]]

    assert abs(taper.ratio - 12 / taper.taper_per_foot) <= half_of_last_digit(row["taper_ratio_1_to"])
    assert abs(taper.taper - Fraction(row["taper_in_per_in"])) <= half_of_last_digit(row["taper_in_per_in"])


@each_size
def test_the_included_angle_is_that_of_the_table(row):
    taper = MORSE_TAPERS[row["size"]]

    assert taper.included_angle == pytest.approx(float(row["included_angle_deg_computed"]), abs=5e-5)
    assert taper.half_angle == taper.included_angle / 2


def test_a_record_names_its_standards():
    assert {taper.standard for taper in MORSE_TAPERS.values()} == {"ISO 296:1991; ASME B5.10"}
