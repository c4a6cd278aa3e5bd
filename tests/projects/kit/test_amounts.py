from __future__ import annotations

from math import pi

import pytest

from projects.kit.amounts import Soak, adhesive_ng, liquid_nl
from tests.projects.kit.stores import CASES

UM2_PER_MM2, NL_PER_ML, NG_PER_G = 10**6, 10**6, 10**9
CM2_PER_ML_OF_M2_PER_L = 10


def test_oil_for_a_class_is_that_of_the_worked_example():
    """Side and top of 1 1/2 in x 2 1/2 in: 8 740.7 mm², 12 pieces, 3 coats, 10 m²/l and a quarter lost."""
    case = CASES["finish-oil"]
    given = case["given"]
    area = pi * given["radius_mm"] * (2 * given["height_mm"] + given["radius_mm"])
    spread = given["spread_m2_per_L"] * CM2_PER_ML_OF_M2_PER_L

    coat = liquid_nl(round(area * UM2_PER_MM2), 0, spread, Soak(end_grain_more=0, lost=25))

    assert area == pytest.approx(case["expected"]["area_mm2"], abs=case["tolerance"])
    whole = coat * given["pieces"] * given["coats"]
    assert float(whole) / NL_PER_ML == pytest.approx(case["expected"]["oil_mL"], abs=case["tolerance"])


def test_end_grain_takes_more():
    """200 cm², 40 of them end grain, at 100 cm²/ml: 160 + 40 x 1.5 = 220, so 2.2 ml."""
    assert liquid_nl(200 * 10**8, 40 * 10**8, 100, Soak(end_grain_more=50)) == 2_200_000


def test_glue_in_dowel_holes_is_that_of_the_worked_example():
    case = CASES["glue-dowel"]
    given = case["given"]
    area = pi * given["dia_mm"] * given["depth_mm"]

    ng = adhesive_ng(round(area * UM2_PER_MM2), given["spread_g_per_m2"], 0, given["pieces"])

    assert area == pytest.approx(case["expected"]["area_mm2"], abs=case["tolerance"])
    assert ng / NG_PER_G == pytest.approx(case["expected"]["glue_g"], abs=case["tolerance"])


def test_glue_that_is_lost_is_added_and_a_part_of_a_nanogram_counts_as_one():
    """1 000 µm² at 200 g/m² are 200 ng; 10 % more are 220; 1 µm² makes 0.2, so 1."""
    assert adhesive_ng(1_000, 200, 10, 1) == 220
    assert adhesive_ng(1, 200, 0, 1) == 1
