"""Finishes and the properties that safety rules hang on."""

from __future__ import annotations

from fractions import Fraction

import pytest

from projects.library.domain.finishes import FinishProperty
from projects.library.domain.sourced import Answer, Confidence
from projects.library.tables import finishes
from tests.reference.tables import rows

ROWS = rows("06a_finishes.csv")
RANGES = {
    "spread": "spread_m2_per_L_per_coat",
    "touch_dry": "touch_dry_h",
    "full_cure": "full_cure_d",
}


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["key"])
def test_a_finish_has_the_properties_of_the_table(row):
    finish = finishes()[row["key"]]

    assert {asked.value: finish.answers[asked].value for asked in FinishProperty} == {
        asked.value: row[asked.value] for asked in FinishProperty
    }


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["key"])
def test_a_finish_has_the_ranges_of_the_table_and_none_where_it_has_none(row):
    """Common practice: ranges of labels, so they are offered as settings."""
    finish = finishes()[row["key"]]

    for field, column in RANGES.items():
        found = getattr(finish, field)
        printed = [row[f"{column}_{end}"] for end in ("min", "max")]
        assert ([found.least, found.most] if found else None) == (
            [Fraction(value) for value in printed] if all(printed) else None
        )
        assert found is None or (
            found.source == row["source"] and found.confidence is Confidence.COMMON_PRACTICE
        )


def test_every_finish_of_the_table_is_there_and_no_other():
    assert list(finishes()) == [row["key"] for row in ROWS]


def test_walnut_oil_dries_by_oxidation_and_comes_from_a_nut():
    assert finishes()["walnut_oil"].properties == {
        FinishProperty.DRIES_BY_OXIDATION,
        FinishProperty.CONTAINS_TREE_NUT,
    }


@pytest.mark.parametrize(
    ("answer", "counts"), [(Answer.YES, True), (Answer.UNKNOWN, True), (Answer.NO, False)]
)
def test_what_nobody_knows_counts_as_yes(answer, counts):
    assert answer.counts_as_yes is counts


def test_a_paste_that_may_be_blended_counts_as_having_every_property():
    assert finishes()["beeswax_paste"].properties == set(FinishProperty)


def test_instant_glue_has_no_spread():
    assert finishes()["instant_glue"].spread is None
