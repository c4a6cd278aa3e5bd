"""Grain sizes after ISO 6344, and ladders of grits."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from projects.library.domain.grits import GRITS, GritFault, StepLimits, ladder_findings, times_finer
from tests.reference.tables import rows

GRADES = rows("04a_abrasive_grades.csv")
RULES = {row["rule"]: row for row in rows("04c_abrasive_rules.csv")}


def faults(*numbers: int) -> list[tuple[int, GritFault]]:
    return [(finding.place, finding.fault) for finding in ladder_findings(numbers)]


@pytest.mark.parametrize("row", GRADES, ids=lambda row: row["fepa_grade"])
def test_a_grain_is_as_large_as_the_standard_prints(row):
    """ISO 6344-2:2021 and ISO 6344-3:2021, ds50 in micrometres."""
    grit = GRITS[int(row["grade_number"])]

    assert Fraction(grit.grain_nm, 1000) == Fraction(row["ds50_um"])
    assert grit.source.removesuffix(":2021") in row["kind"]
    assert grit.source in row["source"]


def test_every_grade_of_the_standard_is_there_and_no_other():
    assert set(GRITS) == {int(row["grade_number"]) for row in GRADES}


def test_a_larger_number_is_always_a_finer_grain():
    grains = [GRITS[number].grain_nm for number in sorted(GRITS)]

    assert grains == sorted(set(grains), reverse=True)


def test_the_usual_ladder_for_turned_work_is_let_through():
    """Common practice, as taught in workshops."""
    ladder = [int(word[1:]) for word in RULES["typical ladder for turned work"]["value"].split()]

    assert len(ladder) == 6
    assert faults(*ladder) == []


@pytest.mark.parametrize(
    ("ladder", "found"),
    [
        ((), []),
        ((120,), []),
        ((60, 100), [(1, GritFault.COARSE_STEP)]),
        ((150, 240), [(1, GritFault.COARSE_STEP)]),
        ((60, 120), [(1, GritFault.COARSE_STEP)]),
        ((80, 180), [(1, GritFault.FAR_TOO_COARSE)]),
        ((120, 320), [(1, GritFault.FAR_TOO_COARSE)]),
        ((180, 120), [(1, GritFault.NOT_FINER)]),
        ((120, 120), [(1, GritFault.NOT_FINER)]),
        ((80, 130, 180), [(1, GritFault.UNKNOWN)]),
        ((80, 180, 240, 2000), [(1, GritFault.FAR_TOO_COARSE), (3, GritFault.FAR_TOO_COARSE)]),
    ],
)
def test_a_step_that_leaves_scratches_is_named_by_its_place(ladder, found):
    assert faults(*ladder) == found


def test_a_step_says_how_many_times_finer_it_is():
    """201 over 82 micrometres, ISO 6344-2:2021."""
    (finding,) = ladder_findings((80, 180))

    assert finding.times_finer == times_finer(80, 180) == Fraction(201, 82)
    assert (finding.before, finding.number) == (80, 180)


def test_the_limits_are_settings():
    strict = StepLimits(say=Fraction(5, 4), refuse=Fraction(3, 2))

    assert [finding.fault for finding in ladder_findings((80, 120, 150), strict)] == [
        GritFault.FAR_TOO_COARSE
    ]


def test_from_p36_to_p220_the_limits_say_the_same_as_the_rule_by_numbers():
    """Common practice (04c_abrasive_rules.csv): say it above 1.5 times the number, refuse above 2."""
    sieved = [number for number in sorted(GRITS) if 36 <= number <= 220]
    times = {(one, other): Fraction(other, one) for one in sieved for other in sieved if other > one}
    said = {step for step in times if faults(*step)}
    refused = {step for step in times if faults(*step) == [(1, GritFault.FAR_TOO_COARSE)]}

    assert said == {step for step, ratio in times.items() if ratio > Fraction(3, 2)}
    assert refused == {step for step, ratio in times.items() if ratio > 2}


def test_a_ladder_that_stands_at_every_grade_has_no_fault():
    assert ladder_findings(sorted(GRITS)) == ()


@given(st.lists(st.integers(1, 3000), max_size=8))
def test_a_ladder_without_faults_gets_finer_at_every_known_step(numbers):
    if not ladder_findings(numbers):
        grains = [GRITS[number].grain_nm for number in numbers]
        assert grains == sorted(set(grains), reverse=True)
