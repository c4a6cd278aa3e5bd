from __future__ import annotations

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.errors import QuantityError
from club.lathes.domain.speed_settings import (
    SpeedSetting,
    SpeedSettingError,
    parse_speed_settings,
    write_speed_settings,
)

LABELS = st.text("abcdefgh 0123456789-/.,'\u00e9", min_size=1, max_size=20).map(
    lambda text: " ".join(text.split()) or "dial"
)
SPEEDS = st.tuples(st.integers(1, 20_000), st.integers(1, 20_000)).map(sorted)
SETTINGS = st.lists(
    st.builds(lambda label, speeds: SpeedSetting(label, *speeds), LABELS, SPEEDS),
    max_size=16,
    unique_by=lambda setting: setting.label.casefold(),
).map(tuple)


def refusal(text: str) -> SpeedSettingError:
    with pytest.raises(SpeedSettingError) as refused:
        parse_speed_settings(text)
    return refused.value


def test_fixed_belts_ranges_and_a_dial_are_read_in_their_order():
    text = "belt 1: 620\nbelt 2: 250-1 450\r\n\ndial: 250 \u2013 3\u00a0200 rpm"

    assert parse_speed_settings(text) == (
        SpeedSetting("belt 1", 620, 620),
        SpeedSetting("belt 2", 250, 1450),
        SpeedSetting("dial", 250, 3200),
    )


@pytest.mark.parametrize(
    "text", ["a: 620; b: 100 to 200", "a: 620;b:100-200;", " a : 620\n;\nb: 100 - 200 rpm "]
)
def test_semicolons_part_settings_as_line_ends_do(text):
    assert parse_speed_settings(text) == (SpeedSetting("a", 620, 620), SpeedSetting("b", 100, 200))


@pytest.mark.parametrize("text", ["", " \n ; \n"])
def test_nothing_typed_is_no_setting(text):
    assert parse_speed_settings(text) == ()


def test_a_range_of_one_speed_is_a_fixed_one():
    (setting,) = parse_speed_settings("belt 1: 620-620")

    assert setting.is_fixed
    assert write_speed_settings([setting], "\n") == "belt 1: 620"


def test_settings_are_written_as_people_write_them():
    settings = (SpeedSetting("belt 1", 620, 620), SpeedSetting("dial", 250, 3200))

    assert write_speed_settings(settings, "; ") == "belt 1: 620; dial: 250-3 200"


@given(SETTINGS, st.sampled_from(["\n", "; "]))
def test_what_is_written_is_read_back_the_same(settings, separator):
    assert parse_speed_settings(write_speed_settings(settings, separator)) == settings


@pytest.mark.parametrize(
    ("text", "code", "number"),
    [
        ("a: 1\n620", "no_label", 2),
        ("a: 1\n\n: 620", "no_label", 3),
        ("a: 1; xxxxxxxxxxxxxxxxxxxxx: 620", "long_label", 2),
        ("a\u202eb: 620", "hidden_marks", 1),
        ("a\x00b: 620", "hidden_marks", 1),
        ("Belt  1: 620\nb: 1\nbelt 1: 700", "twice", 3),
        ("a:", "no_speed", 1),
        ("a: 250-", "open_range", 1),
        ("a: 1\nb: 700-620", "low_above_high", 2),
        ("\n".join(f"{place}: 620" for place in range(17)), "too_many", 0),
        ("a: 1\n" * 500, "too_long", 0),
    ],
)
def test_a_setting_that_cannot_be_kept_is_refused_with_reason_and_line(text, code, number):
    error = refusal(text)

    assert (error.code, error.number) == (code, number)


@pytest.mark.parametrize(
    ("speed", "reason"),
    [
        ("fast", "no_number"),
        ("0", "nought"),
        ("0-500", "nought"),
        ("-250", "negative"),
        ("20 001", "too_much"),
        ("250-20001", "too_much"),
        ("1.5", "not_whole"),
        ("1,450", "two_readings"),
        ("250-1450-3000", "unreadable"),
        ("12 m/s", "other_kind"),
        ("9" * 400, "long_text"),
    ],
)
def test_a_speed_that_no_lathe_has_is_refused_with_the_reason_of_speeds(speed, reason):
    error = refusal(f"dial: {speed}")

    assert error.code == "speed"
    assert isinstance(error.values["reason"], QuantityError)
    assert error.values["reason"].code == reason


def test_the_bounds_themselves_are_let_in():
    text = "; ".join(["x" * 20 + ": 1-20 000", *(f"{place}: 1" for place in range(15))])

    settings = parse_speed_settings(text)

    assert len(settings) == 16
    assert settings[0] == SpeedSetting("x" * 20, 1, 20_000)


@given(st.text(max_size=60) | st.text("ab1:;-0 \n", max_size=40))
def test_any_text_is_settings_that_come_back_or_refused(text):
    with suppress(SpeedSettingError):
        settings = parse_speed_settings(text)
        assert parse_speed_settings(write_speed_settings(settings, "\n")) == settings
