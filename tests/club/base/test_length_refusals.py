from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.length import LONGEST, Length, QuantityError, check_length, parse_length
from club.base.sentences import sentence

LIKE_THIS = "Write the length as 1/2\u00a0in, 0.5\u00a0in or 12.7\u00a0mm."


def refusal_of(text: str) -> QuantityError:
    with pytest.raises(QuantityError) as refused:
        parse_length(text)
    return refused.value


def is_length_or_refused_with_a_cure(text: str) -> bool:
    try:
        return 0 < parse_length(text).nm <= LONGEST
    except QuantityError as refused:
        return "Write" in sentence(refused)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2 3/0 in", f"A fraction can't have 0 under the line. {LIKE_THIS}"),
        ("two inches", f"There is no number in digits here. {LIKE_THIS}"),
        ("NaN mm", f"There is no number in digits here. {LIKE_THIS}"),
        ("-inf", f"This can't be below 0. {LIKE_THIS}"),
        ("-5 mm", f"This can't be below 0. {LIKE_THIS}"),
        ("\u22125 mm", f"This can't be below 0. {LIKE_THIS}"),
        ("1e99 mm", f"This can't be read. {LIKE_THIS}"),
        ("1-2 in", f"This can't be read. {LIKE_THIS}"),
        ('6" x 4"', f"This can't be read. {LIKE_THIS}"),
        ("5 mm 3", f"This can't be read. {LIKE_THIS}"),
        ("", f"Nothing stands here yet. {LIKE_THIS}"),
        (" \u00a0 ", f"Nothing stands here yet. {LIKE_THIS}"),
        ("2 l", f"2\u00a0l is a volume. {LIKE_THIS}"),
        ("4 bd ft", f"4\u00a0bd\u00a0ft is a volume. {LIKE_THIS}"),
        ("3 sq in", f"3\u00a0in² is an area. {LIKE_THIS}"),
        ("2 1/2 lbs", f"2 1/2\u00a0lb is a weight. {LIKE_THIS}"),
        ("1450 rpm", f"1450\u00a0rpm is a speed. {LIKE_THIS}"),
        ("5", "“5” could be inches or millimetres. Write 5\u00a0in or 5\u00a0mm."),
        ("2 3/4", "“2 3/4” could be inches or millimetres. Write 2 3/4\u00a0in or 2 3/4\u00a0mm."),
        ("1,450 mm", "“1,450” can be read in two ways. Write 1450\u00a0mm or 1.450\u00a0mm."),
        ("1,450", "“1,450” can be read in two ways. Write 1450\u00a0mm or 1.450\u00a0mm."),
        ("12,203 in", "“12,203” can be read in two ways. Write 12203\u00a0in or 12.203\u00a0in."),
        ("1,125' 6\"", "“1,125” can be read in two ways. Write 1125\u00a0ft or 1.125\u00a0ft."),
        ("5 furlongs", f"The unit “furlongs” isn't known here. {LIKE_THIS}"),
        ("0 in", f"This can't be 0. {LIKE_THIS}"),
        ("101 m", f"This can't be more than 100\u00a0m. {LIKE_THIS}"),
        ("100.000000001 m", f"This can't be more than 100\u00a0m. {LIKE_THIS}"),
        ("12345678901 mm", f"That is more digits than anyone can measure. {LIKE_THIS}"),
        ("0.00000000001 mm", f"That is more digits than anyone can measure. {LIKE_THIS}"),
    ],
)
def test_each_kind_of_nonsense_gets_one_sentence_with_its_cure(text, words):
    assert sentence(refusal_of(text)) == words


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("9" * 10_000, "long_text"),
        (" " * 10_000 + "5 mm" + "0" * 60, "long_text"),
        ("5\x00 mm", "hidden_marks"),
        ("5\nmm", "hidden_marks"),
        ("\u202e5 mm", "hidden_marks"),
        ("5\u200b mm", "hidden_marks"),
        ("5\u2028mm", "hidden_marks"),
        ("\ud800 5 mm", "hidden_marks"),
        ("\uff15 mm", "other_digits"),
        ("\u0665 mm", "other_digits"),
        ("Ⅻ in", "other_digits"),
        ("①in", "other_digits"),
        ("↉ in", "other_digits"),
        ("<b>5 mm</b>", "unreadable"),
        ("5 <script>", "unreadable"),
        ("5 mm'; DROP TABLE", "unreadable"),
        ("5²", "unreadable"),
        ("²", "no_number"),
        ("%(unit)s", "no_number"),
        ("5 %(unit)s", "unreadable"),
    ],
)
def test_hostile_text_is_refused_without_being_repeated(text, code):
    refused = refusal_of(text)

    assert refused.code == code
    assert sentence(refused).endswith(LIKE_THIS)
    assert "<" not in sentence(refused)


@given(st.text(max_size=60))
def test_any_text_at_all_is_a_length_or_gets_a_sentence(text):
    assert is_length_or_refused_with_a_cure(text)


@given(st.from_regex(r"[0-9./,' \"-]{1,12}(in|mm|ft|l|)", fullmatch=True))
def test_any_heap_of_digits_and_marks_is_a_length_or_gets_a_sentence(text):
    assert is_length_or_refused_with_a_cure(text)


@given(st.from_regex(r"[0-9]{1,9}(\.[0-9]{1,3})?", fullmatch=True))
def test_the_cure_for_a_missing_unit_is_itself_a_length(number):
    refused = refusal_of(number)

    if refused.code == "no_unit":
        assert "“" in sentence(refused)
        parts = sentence(refused).removesuffix(".").split("Write ")[1].split(" or ")
        assert all(_reads_or_is_out_of_range(part) for part in parts)


def _reads_or_is_out_of_range(text: str) -> bool:
    try:
        return parse_length(text).nm > 0
    except QuantityError as refused:
        return refused.code in {"too_much", "nought"}


@pytest.mark.parametrize("example", ["1/2 in", "0.5 in", "12.7 mm", "15 3/4 in", "15.75 in", "400 mm"])
def test_what_the_sentences_and_the_help_name_would_be_accepted(example):
    assert parse_length(example.replace(" in", "\u00a0in")).nm > 0


def test_a_field_can_name_its_own_examples():
    assert sentence(refusal_of("2 3/0 in"), "15 3/4 in").endswith("Write the length as 15 3/4 in.")


@pytest.mark.parametrize(("nm", "code"), [(-1, "negative"), (0, "nought"), (LONGEST + 1, "too_much")])
def test_a_worked_out_length_is_held_to_the_same_bounds(nm, code):
    with pytest.raises(QuantityError) as refused:
        check_length(Length(nm))

    assert refused.value.code == code


def test_bounds_themselves_are_lengths():
    check_length(Length(LONGEST))
    check_length(Length(1))
    check_length(Length(0), zero=True)


@pytest.mark.parametrize(
    ("typed", "many", "few"),
    [("1.250 mm", "1250", "1.25"), ("1.000 mm", "1000", "1"), ("12.700 mm", "12700", "12.7")],
)
def test_a_point_that_may_part_thousands_of_millimetres_is_asked_about(typed, many, few):
    """A list from a country that parts thousands with a point would shrink a lathe to a thousandth."""
    with pytest.raises(QuantityError) as caught:
        parse_length(typed)

    assert (caught.value.code, caught.value.values["many"], caught.value.values["few"]) == (
        "two_readings",
        many,
        few,
    )


@pytest.mark.parametrize("typed", ["9.525 mm", "0.250 mm", "1.25 mm", "1.250 in"])
def test_thousandths_that_somebody_measured_are_read(typed):
    assert parse_length(typed).typed == typed
