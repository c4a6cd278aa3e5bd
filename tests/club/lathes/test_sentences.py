from __future__ import annotations

import re

import pytest

from club.lathes.domain.own_draw_bars import OwnDrawBarError, parse_own_draw_bars
from club.lathes.domain.speed_settings import SpeedSettingError, parse_speed_settings
from club.lathes.domain.threads import ThreadError, parse_thread
from club.lathes.sentences import (
    BAR,
    SETTING,
    THREAD,
    own_draw_bar_sentence,
    speed_setting_sentence,
    thread_sentence,
)

BAD_THREADS = {
    "empty": "",
    "too_long": "1" * 41,
    "unreadable": "round",
    "over_zero": "3/0-16",
    "unit_missing": "33 x 3.5",
    "pitch_missing": "3/8",
    "odd_diameter": "1/3-16",
    "odd_pitch": "M10x1.00001",
    "odd_threads_per_inch": "1-8.25",
    "diameter_out_of_range": "M200x2",
    "pitch_out_of_range": "M33x9",
    "threads_per_inch_out_of_range": "1-50",
    "too_coarse": "1/4-8",
    "other_series": "3/8-16 UNF",
}
BAD_SETTINGS = {
    "too_long": "x" * 2001,
    "too_many": "; ".join(f"{place}: 1" for place in range(17)),
    "no_label": "620",
    "long_label": "x" * 21 + ": 1",
    "hidden_marks": "a\u200bb: 1",
    "twice": "a: 1; A: 2",
    "no_speed": "a:",
    "open_range": "a: 1-",
    "low_above_high": "a: 1450-250",
}
BAD_BARS = {
    "too_long": "x" * 2001,
    "too_many": "; ".join(f"{place}: 3/8-16, 14 in" for place in range(17)),
    "no_label": "3/8-16, 14 in",
    "long_label": "x" * 21 + ": 3/8-16, 14 in",
    "hidden_marks": "a\u200bb: 3/8-16, 14 in",
    "twice": "a: 3/8-16, 14 in; A: 3/8-16, 14 in",
    "two_readings": "a: M10 x 1,25,5 mm",
    "no_comma": "a: 3/8-16 14 in",
}


def thread_refusal(text: str) -> str:
    with pytest.raises(ThreadError) as refused:
        parse_thread(text)
    return thread_sentence(refused.value)


def setting_refusal(text: str) -> str:
    with pytest.raises(SpeedSettingError) as refused:
        parse_speed_settings(text)
    return speed_setting_sentence(refused.value)


def bar_refusal(text: str) -> str:
    with pytest.raises(OwnDrawBarError) as refused:
        parse_own_draw_bars(text)
    return own_draw_bar_sentence(refused.value)


def assert_is_a_sentence_of_the_house(sentence: str) -> None:
    assert sentence.endswith(".")
    assert "%(" not in sentence
    assert not re.search(r"please|success|!", sentence, re.IGNORECASE)


def test_every_reason_there_is_a_sentence_for_can_be_met():
    assert BAD_THREADS.keys() == THREAD.keys()
    assert BAD_SETTINGS.keys() == SETTING.keys()
    assert BAD_BARS.keys() == BAR.keys()


@pytest.mark.parametrize("code", THREAD)
def test_a_refused_thread_has_a_sentence_of_its_own(code):
    sentence = thread_refusal(BAD_THREADS[code])

    assert_is_a_sentence_of_the_house(sentence)
    assert sentence.startswith(str(THREAD[code]).partition("%")[0])


@pytest.mark.parametrize("code", SETTING)
def test_a_refused_setting_has_a_sentence_of_its_own(code):
    sentence = setting_refusal(BAD_SETTINGS[code])

    assert_is_a_sentence_of_the_house(sentence)
    assert str(SETTING[code]).partition("%")[0] in sentence


@pytest.mark.parametrize("code", BAR)
def test_a_refused_bar_has_a_sentence_of_its_own(code):
    sentence = bar_refusal(BAD_BARS[code])

    assert_is_a_sentence_of_the_house(sentence)
    assert str(BAR[code]).partition("%")[0] in sentence


def test_a_thread_with_two_meanings_is_answered_with_both():
    assert thread_refusal("33 x 3,5") == (
        "This could be metric or inch. Write M33x3.5 if it is metric, or 1\u00a01/4-8 for inches."
    )


def test_a_bare_diameter_is_answered_with_what_to_add():
    assert thread_refusal("3/8") == "3/8 is only the diameter. Write the pitch after it, as in 3/8-16."


def test_a_wrong_setting_is_quoted_with_its_number_and_the_cure():
    assert setting_refusal("belt 1: 620\nbelt 2: 1450-250") == (
        "Setting 2 reads “belt 2: 1450-250”. 1\u00a0450 is above 250. Write the lower speed first."
    )


def test_a_setting_without_a_speed_is_quoted_with_how_speeds_are_written():
    sentence = setting_refusal("dial: fast")

    assert sentence.startswith("Setting 1 reads “dial: fast”. ")
    assert sentence.endswith(" Write the speed as 450 or 1\u00a0450\u00a0rpm.")


def test_a_wrong_bar_says_whether_thread_or_length_is_wrong():
    assert bar_refusal("A: 3/8, 14 in") == (
        "Draw bar 1 reads “A: 3/8, 14 in”. 3/8 is only the diameter. Write the pitch after it, as in 3/8-16."
    )
    assert bar_refusal("A: 3/8-16, 14") == (
        "Draw bar 1 reads “A: 3/8-16, 14”. "
        "“14” could be inches or millimetres. Write 14\u00a0in or 14\u00a0mm."
    )


def test_a_very_long_line_is_quoted_cut_short_and_without_hidden_marks():
    sentence = setting_refusal("a\u202eb" * 200 + ": 1")

    assert "\u202e" not in sentence
    assert "“" + "ab" * 30 + "…”" in sentence
