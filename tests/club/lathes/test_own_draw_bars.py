from __future__ import annotations

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.errors import QuantityError
from club.base.quantities.length import Length, parse_length
from club.lathes.domain.own_draw_bars import (
    OwnDrawBar,
    OwnDrawBarError,
    parse_own_draw_bars,
    write_own_draw_bars,
)
from club.lathes.domain.threads import KNOWN_THREADS, ThreadError, parse_thread

LENGTHS = st.sampled_from(["14 1/4 in", '14\u00bc"', "14,25 in", "362 mm", "36.2 cm", "1' 2 1/4\""]).map(
    parse_length
) | st.integers(1, 2_000_000_000).map(Length)
BARS = st.lists(
    st.builds(
        OwnDrawBar,
        st.text("ABCdef 0123,-", min_size=1, max_size=20).map(lambda text: " ".join(text.split()) or "A"),
        st.sampled_from([*KNOWN_THREADS.values(), parse_thread("7/8-14"), parse_thread("M12x1.25")]),
        LENGTHS,
    ),
    max_size=16,
    unique_by=lambda bar: bar.label.casefold(),
).map(tuple)


def refusal(text: str) -> OwnDrawBarError:
    with pytest.raises(OwnDrawBarError) as refused:
        parse_own_draw_bars(text)
    return refused.value


def test_a_bar_is_read_with_its_thread_and_its_length_as_typed():
    (bar,) = parse_own_draw_bars("A: 3/8-16, 14 1/4 in")

    assert bar == OwnDrawBar("A", parse_thread("3/8-16"), Length(361_950_000))
    assert bar.length.typed == "14 1/4 in"


@pytest.mark.parametrize(
    "text",
    [
        "A: 3/8-16, 14 1/4 in\nB: M10 x 1.5, 400 mm",
        "A: 3/8 - 16 UNC,14 1/4 in; B: M10,400 mm",
        'A: .375-16, 14.25"; B: M10 x 1,5, 400 mm',
        "A: 3/8-16, 14,25 in\n\nB: M10 x 1,5, 40,0 cm\n",
    ],
)
def test_two_bars_are_read_in_every_usual_way_of_writing_them(text):
    assert parse_own_draw_bars(text) == (
        OwnDrawBar("A", parse_thread("3/8-16"), Length(361_950_000)),
        OwnDrawBar("B", parse_thread("M10x1.5"), Length(400_000_000)),
    )


@pytest.mark.parametrize("text", ["", " \n ; "])
def test_nothing_typed_is_no_bar(text):
    assert parse_own_draw_bars(text) == ()


def test_bars_are_written_with_the_thread_in_its_one_form_and_the_length_as_typed():
    bars = parse_own_draw_bars("A: 3/8 - 16 UNC, 14\u00bc in; B: m10, 400mm")

    assert write_own_draw_bars(bars, "; ") == "A: 3/8-16, 14\u00bc in; B: M10x1.5, 400mm"


@given(BARS, st.sampled_from(["\n", "; "]))
def test_what_is_written_is_read_back_the_same(bars, separator):
    back = parse_own_draw_bars(write_own_draw_bars(bars, separator))

    assert back == bars
    assert all(
        new.length.typed == old.length.typed for new, old in zip(back, bars, strict=True) if old.length.typed
    )


@pytest.mark.parametrize(
    ("text", "code", "number"),
    [
        ("3/8-16, 14 in", "no_label", 1),
        ("A: 3/8-16, 14 in\nxxxxxxxxxxxxxxxxxxxxx: 3/8-16, 14 in", "long_label", 2),
        ("A: 3/8-16, 14 in; a: 3/8-16, 15 in", "twice", 2),
        ("A: 3/8-16 14 in", "no_comma", 1),
        ("A:", "no_comma", 1),
        ("A: M10 x 1,25,5 mm", "two_readings", 1),
        ("\n".join(f"{place}: 3/8-16, 14 in" for place in range(17)), "too_many", 0),
        ("A" * 2001, "too_long", 0),
    ],
)
def test_a_bar_that_cannot_be_kept_is_refused_with_reason_and_line(text, code, number):
    error = refusal(text)

    assert (error.code, error.number) == (code, number)


@pytest.mark.parametrize(
    ("rest", "code", "kind", "reason"),
    [
        ("3/8, 14 in", "thread", ThreadError, "pitch_missing"),
        ("33 x 3.5, 400 mm", "thread", ThreadError, "unit_missing"),
        ("14 in, 3/8-16", "thread", ThreadError, "diameter_out_of_range"),
        ("3/8-16, 14", "length", QuantityError, "no_unit"),
        ("3/8-16, 0 in", "length", QuantityError, "nought"),
        ("M10 x 1,5, long", "length", QuantityError, "no_number"),
    ],
)
def test_a_bad_thread_or_length_is_refused_with_its_own_reason(rest, code, kind, reason):
    error = refusal(f"A: {rest}")

    assert error.code == code
    assert isinstance(error.values["reason"], kind)
    assert error.values["reason"].code == reason


@given(st.text(max_size=60) | st.text("AB:;,-x/M0138 in\n", max_size=40))
def test_any_text_is_bars_that_come_back_or_refused(text):
    with suppress(OwnDrawBarError):
        bars = parse_own_draw_bars(text)
        assert parse_own_draw_bars(write_own_draw_bars(bars, "; ")) == bars
