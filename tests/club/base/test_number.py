from __future__ import annotations

from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.number import NumberError, parse_number, plain_text


@pytest.mark.parametrize(
    "text", ["2 3/4", "2-3/4", "2 - 3/4", "2¾", "2 ¾", "2.75", "2,75", "11/4", "2\u00a03\u20444", " 2  3/4 "]
)
def test_every_way_to_write_two_and_three_quarters_is_the_same_number(text):
    assert parse_number(text) == Fraction(11, 4)


@pytest.mark.parametrize(
    "text", ["", " ", "two", "-1", "1e9", "1 1", "1.2.3", "\u0663", "0x10", "1/", "9" * 5000, "\x00"]
)
def test_what_is_no_number_is_refused(text):
    with pytest.raises(NumberError) as refused:
        parse_number(text)

    assert refused.value.code == "not_a_number"


@pytest.mark.parametrize("text", ["1/0", "2 3/0"])
def test_a_fraction_over_zero_has_its_own_reason(text):
    with pytest.raises(NumberError) as refused:
        parse_number(text)

    assert refused.value.code == "over_zero"


@given(st.integers(0, 999), st.integers(0, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_a_mixed_number_is_its_whole_and_its_fraction(whole, above, below):
    assert parse_number(f"{whole} {above}/{below}") == whole + Fraction(above, below)


@given(st.text(max_size=40))
def test_any_text_is_a_number_not_below_nought_or_refused(text):
    with suppress(NumberError):
        assert parse_number(text) >= 0


def test_typographic_marks_become_plain_ones():
    assert plain_text("1¼\u2033 \u2013 8") == '1 1/4" - 8'
