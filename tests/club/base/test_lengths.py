from __future__ import annotations

import unicodedata
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.length import LONGEST, Length, QuantityError, parse_length, write_length
from club.base.quantities.number import VULGAR

# 1/64 in by NIST SP 811: 0.0254 m / 64.
SIXTY_FOURTH = 396_875
VULGARS = [chr(code) for code in range(0x110000) if VULGAR.fullmatch(chr(code))]
lengths = st.integers(1, LONGEST).map(Length)


@pytest.mark.parametrize(
    "text",
    [
        "2 3/4 in",
        '2-3/4"',
        '2¾"',
        "2.75in",
        "2,75 in",
        "69.85 mm",
        "69,85mm",
        "6.985 cm",
        "0.06985 m",
        "2 3/4 inch",
        "2.75 inches",
        "2 3/4 IN",
        "2.75 in.",
        "2-3/4-in",
        "2 \u2013 3/4 in",
        "11/4 in",
        "2\u00a03/4\u00a0in",
        "2\u202f3\u20444\u2009in",
        "2¾”",
        "2¾″",
        "2¾''",
        "  2 3/4 in\n",
    ],
)
def test_every_way_to_write_two_and_three_quarter_inches_is_one_length(text):
    assert parse_length(text).nm == 11 * 16 * SIXTY_FOURTH


@pytest.mark.parametrize(
    "text",
    [
        '18"',
        '18" ',
        "1' 6\"",
        "1'6\"",
        "1'-6\"",
        "1' 6",
        "1 ft 6 in",
        "1 foot 6 inches",
        "1\u2032 6″",
        "1\u2019 6”",
        "1 1/2 ft",
        "0.5 yd",
        "457.2 mm",
    ],
)
def test_eighteen_inches_may_be_a_foot_and_six(text):
    assert parse_length(text).nm == 18 * 64 * SIXTY_FOURTH


@pytest.mark.parametrize(
    ("text", "nm"),
    [
        ("7cm", 70_000_000),
        ("1 450 mm", 1_450_000_000),
        ("1\u00a0450\u00a0mm", 1_450_000_000),
        ("12 500,5 mm", 12_500_500_000),
        ("1,450.5 mm", 1_450_500_000),
        ("1.450,5 mm", 1_450_500_000),
        ("0,125 in", 3_175_000),
        ("2.125 in", 53_975_000),
        (".5 in", 12_700_000),
        ("1' 6 1/2\"", 469_900_000),
        ("100 m", LONGEST),
        ("0.000001 mm", 1),
    ],
)
def test_a_length_is_read_to_the_nanometre(text, nm):
    assert parse_length(text).nm == nm


@pytest.mark.parametrize("vulgar", VULGARS)
def test_every_fraction_that_is_one_character_is_worth_what_unicode_says(vulgar):
    assert parse_length(f"1{vulgar} in").nm == round(
        25_400_000 * (1 + Fraction(unicodedata.numeric(vulgar)).limit_denominator(10))
    )


def test_all_of_unicodes_fractions_are_known():
    named = {chr(code) for code in range(0x110000) if "VULGAR FRACTION" in unicodedata.name(chr(code), "")}

    # Nobody writes a length as nought thirds.
    assert set(VULGARS) == named - {"↉"}


def test_half_a_nanometre_goes_to_the_even_one():
    assert parse_length("0.0000025 mm").nm == 2
    assert parse_length("0.0000035 mm").nm == 4


def test_what_is_no_whole_nanometre_is_rounded_and_its_text_is_kept():
    third = parse_length("1/3 in")

    assert third == Length(8_466_667)
    assert third.typed == "1/3 in"


def test_two_lengths_are_equal_however_they_were_typed():
    assert parse_length("1 in") == parse_length("25.4 mm")
    assert hash(parse_length("1 in")) == hash(parse_length("25.4 mm"))
    assert parse_length("1 in") < parse_length("2.6 cm")


def test_nought_is_a_length_only_where_it_is_asked_for():
    with pytest.raises(QuantityError) as refused:
        parse_length("0 mm")

    assert refused.value.code == "nought"
    assert parse_length("0 mm", zero=True) == Length(0)


@given(st.integers(0, 999), st.integers(0, 63), st.sampled_from([1, 2, 4, 8, 16, 32]))
def test_a_tape_reading_is_so_many_sixty_fourths(whole, above, coarser):
    sixty_fourths = whole * 64 + above * coarser

    read = parse_length(f"{whole} {above}/{64 // coarser} in", zero=True)

    assert read.nm == sixty_fourths * SIXTY_FOURTH


@given(lengths)
def test_what_is_written_for_a_length_reads_back_as_it(length):
    assert parse_length(write_length(length)) == length


@given(lengths)
def test_the_text_as_typed_reads_back_as_the_same_length(length):
    typed = parse_length(write_length(length))

    assert parse_length(write_length(typed)) == typed
    assert parse_length(write_length(typed)).typed == typed.typed


@given(
    st.fractions(0, 90, max_denominator=9999),
    st.sampled_from([("in", 25_400_000), ("ft", 304_800_000), ("cm", 10_000_000)]),
)
def test_any_fraction_of_a_unit_is_its_nearest_nanometre(value, unit):
    sign, nm = unit

    read = parse_length(f"{value.numerator}/{value.denominator} {sign}", zero=True).nm

    assert type(read) is int
    assert abs(read - value * nm) <= Fraction(1, 2)
