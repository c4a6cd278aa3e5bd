from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.inches import inch_fraction
from club.base.quantities.length import LONGEST, Length, LengthStyle, parse_length, says, show_length
from tests.reference.tables import rows

AS_TYPED, MM = LengthStyle.AS_TYPED, LengthStyle.MILLIMETRES
PARTS = {
    LengthStyle.SIXTEENTHS: 16,
    LengthStyle.THIRTY_SECONDS: 32,
    LengthStyle.SIXTY_FOURTHS: 64,
}
COLUMNS = {16: "nearest_16th", 32: "nearest_32nd", 64: "nearest_64th"}
CASES = rows("09b_fraction_display_cases.csv")
# Rounding up must not pass the longest there is.
lengths = st.integers(1, LONGEST - 25_400_000).map(Length)
inch_styles = st.sampled_from(sorted(PARTS))


def inches_of(case: dict[str, str]) -> Fraction:
    above, _, below = case["input_in"].partition("/")
    return Fraction(above) / Fraction(below or 1)


WHOLE_NANOMETRES = [
    case for case in CASES if inches_of(case) > 0 and (inches_of(case) * 25_400_000).denominator == 1
]


# Common practice of tape measures: tests/reference/09b_fraction_display_cases.csv.
@pytest.mark.parametrize("case", CASES, ids=[case["input_in"] for case in CASES])
@pytest.mark.parametrize("parts", [16, 32, 64])
def test_inches_are_shown_as_a_tape_shows_them(case, parts):
    assert inch_fraction(inches_of(case), parts) == case[COLUMNS[parts]]


@pytest.mark.parametrize("case", WHOLE_NANOMETRES, ids=[case["input_in"] for case in WHOLE_NANOMETRES])
@pytest.mark.parametrize("style", PARTS)
def test_a_length_in_inches_reads_as_the_tape_does_and_owns_up_to_rounding(case, style):
    length = Length(int(inches_of(case) * 25_400_000))

    shown = show_length(length, style)

    read = f"{case[COLUMNS[PARTS[style]]]} in".replace(" ", "\u00a0")
    exact = (inches_of(case) * PARTS[style]).denominator == 1
    assert shown == (read if exact else f"about {read}")


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("2 3/4 in", "2\u00a03/4\u00a0in"),
        (" 2  3/4   in ", "2\u00a03/4\u00a0in"),
        ('2¾"', '2¾"'),
        ("2⅜ in", "2\u00a03/8\u00a0in"),
        ("⅜ in", "3/8\u00a0in"),
        ("3\u20448 in", "3/8\u00a0in"),
        ("1\u2032 6″", "1'\u00a06\""),
        ("69,85 mm", "69,85\u00a0mm"),
        ("7cm", "7cm"),
    ],
)
def test_a_length_is_shown_as_typed_in_signs_our_typeface_has(typed, shown):
    assert show_length(parse_length(typed), AS_TYPED) == shown
    assert str(parse_length(typed)) == shown


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("2 3/4 in", "69.85\u00a0mm"),
        ("1/8 in", "3.175\u00a0mm"),
        ("1/64 in", "about 0.397\u00a0mm"),
        ("1/16 in", "about 1.588\u00a0mm"),
        ("7cm", "70\u00a0mm"),
        ("1.45 m", "1\u00a0450\u00a0mm"),
        ("0.0004 mm", "about 0\u00a0mm"),
    ],
)
def test_millimetres_have_three_decimals_at_most_and_no_noughts_at_the_end(text, shown):
    assert show_length(parse_length(text), MM) == shown


def test_what_nobody_typed_is_shown_in_millimetres():
    assert show_length(Length(69_850_000), AS_TYPED) == "69.85\u00a0mm"


def test_the_word_for_rounding_is_the_pages():
    assert show_length(Length(396_876), LengthStyle.SIXTY_FOURTHS, "etwa") == "etwa 1/64\u00a0in"


@given(st.integers(1, 6400), st.sampled_from(sorted(PARTS)))
def test_what_a_tape_can_show_reads_back_exactly(marks, style):
    length = Length(marks * 25_400_000 // PARTS[style])

    assert parse_length(show_length(length, style)) == length


@given(st.integers(1, LONGEST // 1_000))
def test_whole_micrometres_in_millimetres_read_back_exactly(micrometres):
    length = Length(micrometres * 1_000)

    assert parse_length(show_length(length, MM)) == length


@given(lengths, inch_styles)
def test_a_shown_length_is_never_further_off_than_half_a_part(length, style):
    shown = show_length(length, style)
    read = parse_length(shown.removeprefix("about "), zero=True)

    assert abs(read.nm - length.nm) * 2 * PARTS[style] <= 25_400_000
    assert shown.startswith("about ") == (read != length)


@given(lengths)
def test_shown_millimetres_are_never_further_off_than_half_a_micrometre(length):
    shown = show_length(length, MM)
    read = parse_length(shown.removeprefix("about "), zero=True)

    assert abs(read.nm - length.nm) <= 500
    assert shown.startswith("about ") == (read != length)


@given(lengths, st.sampled_from(sorted(LengthStyle)))
def test_nothing_shown_breaks_between_number_and_unit(length, style):
    shown = show_length(length, style).removeprefix("about ")

    assert re.fullmatch(r"[0-9.,/\u00a0]+\u00a0(in|mm)", shown)


def test_a_text_speaks_only_for_its_own_length():
    assert says("1 in", 25_400_000)
    assert not says("1 in", 25_400_001)
    assert not says("", 0)
    assert not says("a thumb", 25_400_000)
    assert says("0 mm", 0)
