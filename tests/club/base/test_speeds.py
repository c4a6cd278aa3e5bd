from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.errors import QuantityError
from club.base.quantities.length import Length, parse_length
from club.base.quantities.speed import (
    HIGHEST_RPM,
    PI,
    RimSpeed,
    parse_rpm,
    rim_speed,
    show_rim_speed,
    show_rim_speed_in_feet,
    show_rpm,
)
from club.base.sentences import sentence

AS_THIS = "Write the speed as 450 or 1\u00a0450\u00a0rpm."


def test_a_ten_inch_bowl_at_a_thousand_rpm_runs_past_the_tool_at_13_30_metres_a_second():
    # v = pi d n = 3.14159265 x 0.254 m x 1 000 / 60 s; by the definition of surface speed.
    speed = rim_speed(parse_length("10 in"), 1_000)

    assert show_rim_speed(speed) == "13.30\u00a0m/s"
    assert show_rim_speed_in_feet(speed) == "2\u00a0618\u00a0ft/min"


# Turners' 40 mph, "about 13 445 diameter x rpm": 40 mph = 3 520 ft/min = 17.882 m/s, common practice.
def test_forty_miles_an_hour_are_13_445_inches_times_rpm():
    speed = rim_speed(parse_length("13.445 in"), 1_000)

    assert show_rim_speed(speed) == "17.88\u00a0m/s"
    assert show_rim_speed_in_feet(speed) == "3\u00a0520\u00a0ft/min"


def arctan_of_one_over(number: int, unit: int) -> int:
    """arctan(1/number) in so many parts of one, by its series."""
    term = unit // number
    total, count = term, 1
    while term:
        term //= -number * number
        count += 2
        total += term // count
    return total


def test_pi_is_machins():
    # John Machin, 1706: pi / 4 = 4 arctan(1/5) - arctan(1/239).
    unit = 10**40
    machin = 4 * (4 * arctan_of_one_over(5, unit) - arctan_of_one_over(239, unit))

    assert abs(PI - Fraction(machin, unit)) < Fraction(1, 10**30)


@given(st.integers(1, 10**10), st.integers(1, HIGHEST_RPM))
def test_a_rim_speed_is_the_nearest_micrometre_a_second(nm, rpm):
    speed = rim_speed(Length(nm), rpm)

    assert type(speed.um_per_s) is int
    assert abs(speed.um_per_s - PI * nm * rpm / 60_000) <= Fraction(1, 2)


def test_a_foot_a_minute_is_5_08_millimetres_a_second():
    # NIST SP 811, appendix B: 1 ft/min = 0.00508 m/s exactly.
    assert show_rim_speed_in_feet(RimSpeed(5_080)) == "1\u00a0ft/min"


@pytest.mark.parametrize(
    "text", ["1450", "1 450", "1\u00a0450", " 1450 rpm ", "1450rpm", "1450 RPM", "1 450 r/min", "2900/2"]
)
def test_every_way_to_write_1450_rpm_is_one_speed(text):
    assert parse_rpm(text) == 1450


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("1.450", "“1.450” can be read in two ways. Write 1450."),
        ("1,450 rpm", "“1,450” can be read in two ways. Write 1450."),
        ("0", f"This can't be 0. {AS_THIS}"),
        ("-5", f"This can't be below 0. {AS_THIS}"),
        ("20 001", f"This can't be more than 20\u00a0000\u00a0rpm. {AS_THIS}"),
        ("620.5", f"Only whole numbers are read here. {AS_THIS}"),
        ("fast", f"There is no number in digits here. {AS_THIS}"),
        ("1e3", f"This can't be read. {AS_THIS}"),
        ("450-1450", f"This can't be read. {AS_THIS}"),
        ("1/0", f"A fraction can't have 0 under the line. {AS_THIS}"),
        ("3 in", f"3\u00a0in is a length. {AS_THIS}"),
        ("13 m/s", f"13\u00a0m/s is how fast a rim runs. {AS_THIS}"),
        ("", f"Nothing stands here yet. {AS_THIS}"),
        ("99999999999", f"That is more digits than anyone can measure. {AS_THIS}"),
    ],
)
def test_what_is_no_speed_gets_one_sentence_with_its_cure(text, words):
    with pytest.raises(QuantityError) as refused:
        parse_rpm(text)

    assert sentence(refused.value) == words


@given(st.integers(1, HIGHEST_RPM))
def test_a_shown_speed_reads_back(rpm):
    assert parse_rpm(show_rpm(rpm)) == rpm


@given(st.text(max_size=50))
def test_any_text_at_all_is_a_speed_or_gets_a_sentence(text):
    assert is_speed_or_refused_with_a_cure(text)


def is_speed_or_refused_with_a_cure(text: str) -> bool:
    try:
        return 1 <= parse_rpm(text) <= HIGHEST_RPM
    except QuantityError as refused:
        return "Write" in sentence(refused)
