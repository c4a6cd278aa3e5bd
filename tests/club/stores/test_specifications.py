from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.stores.specifications import LONGEST_KEY, specification_key


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Maple dowel 1/2 in", " maple  DOWEL 1/2\u00a0in "),
        ("dowel 1½ in", "dowel 1 1/2 in"),
        ("Straße", "strasse"),
        ("P120 sheet", "\uff30120 sheet"),
    ],
)
def test_case_spacing_and_forms_of_a_letter_make_no_other_specification(one, other):
    assert specification_key(one) == specification_key(other)


def test_another_size_is_another_specification():
    assert specification_key("dowel 1/2 in") != specification_key("dowel 1/4 in")


@given(st.text(max_size=300))
def test_a_key_fits_its_column_and_is_its_own_key(text):
    key = specification_key(text)

    assert len(key) <= LONGEST_KEY
    assert specification_key(key) == key
