from __future__ import annotations

from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.lathes.domain.threads import KNOWN_THREADS, Thread, ThreadError, ThreadSystem, parse_thread

SIXTY_FOURTHS = st.integers(8, 251).map(lambda parts: Fraction(parts, 64))
THREADS_PER_INCH = st.integers(8, 80).map(lambda halves: Fraction(halves, 2))


@st.composite
def inch_sizes(draw: st.DrawFn) -> tuple[Fraction, Fraction]:
    """Diameter in inches and threads per inch; the pitch is at most a third of the diameter."""
    major, per_inch = draw(SIXTY_FOURTHS), draw(THREADS_PER_INCH)
    return major, max(per_inch, Fraction(-(-3 // major)))


@st.composite
def metric_sizes(draw: st.DrawFn) -> tuple[str, str]:
    """Diameter and pitch in millimetres, to a hundredth."""
    major = draw(st.integers(300, 10_000))
    pitch = draw(st.integers(35, min(800, major // 3)))
    return str(major / 100), str(pitch / 100)


@pytest.mark.parametrize(
    ("text", "designation"),
    [
        ("3/8-16", "3/8-16"),
        ("3/8 - 16 UNC", "3/8-16"),
        ('3/8"-16', "3/8-16"),
        ("3/8\u2033\u201316", "3/8-16"),
        ("3/8-16 UNC-2A", "3/8-16"),
        ("3/8 16 tpi", "3/8-16"),
        ("1 1/4-8", "1 1/4-8"),
        ("1-1/4-8", "1 1/4-8"),
        ("1\u00bc-8 UN", "1 1/4-8"),
        ("1.25-8", "1 1/4-8"),
        ("1,25 - 8", "1 1/4-8"),
        ("1 1/4 in x 8 tpi", "1 1/4-8"),
        ('1 1/4" 8 tpi', "1 1/4-8"),
        ("1 1/4 x 8", "1 1/4-8"),
        ("1 1/4 inches - 8", "1 1/4-8"),
        ("1 1/4-8-UN", "1 1/4-8"),
        ("1 1/4 - 8 threads per inch", "1 1/4-8"),
        ("5/4-8", "1 1/4-8"),
        ("1-8", "1-8"),
        ("2-4 1/2", "2-4.5"),
        ("0.9-10", "0.9-10"),
        ("1.015625-8", "1 1/64-8"),
        ("M33x3.5", "M33x3.5"),
        ("M33 \u00d7 3,5", "M33x3.5"),
        ("m10 x 1.5", "M10x1.5"),
        ("M10-1.50", "M10x1.5"),
        ("33 mm x 3.5 mm", "M33x3.5"),
        ("33 x 3.5mm", "M33x3.5"),
        ("M10", "M10x1.5"),
        ("M 33", "M33x3.5"),
    ],
)
def test_a_thread_is_read_in_every_usual_way_of_writing_it(text, designation):
    assert parse_thread(text).designation == designation


@pytest.mark.parametrize("text", ["7/8-14", "M33x2", "1 1/4-7"])
def test_a_sensible_thread_that_is_not_in_the_list_is_kept_and_marked(text):
    thread = parse_thread(text)

    assert thread.designation == text
    assert not thread.is_listed
    assert thread.source == "as typed"


@pytest.mark.parametrize("designation", KNOWN_THREADS)
def test_a_known_thread_comes_back_with_its_series(designation):
    thread = parse_thread(designation)

    assert thread is KNOWN_THREADS[designation]
    assert thread.is_listed


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "empty"),
        (" \t", "empty"),
        ("1" * 41, "too_long"),
        ("33 x 3.5", "unit_missing"),
        ("33-3,5", "unit_missing"),
        ("8 x 1.25", "unit_missing"),
        ("3 x 0.5", "unit_missing"),
        ("33", "unit_missing"),
        ("33 in", "diameter_out_of_range"),
        ("3/8", "pitch_missing"),
        ("1-1/4", "pitch_missing"),
        ("1 in", "pitch_missing"),
        ("M14", "pitch_missing"),
        ("0-16", "diameter_out_of_range"),
        ("1/16-32", "diameter_out_of_range"),
        ("3.94-8", "diameter_out_of_range"),
        ("10-24", "diameter_out_of_range"),
        ("33 in x 8 tpi", "diameter_out_of_range"),
        ("M2.9x0.5", "diameter_out_of_range"),
        ("M100.1x2", "diameter_out_of_range"),
        ("M200", "diameter_out_of_range"),
        ("5", "diameter_out_of_range"),
        ("1 1/2-3.5", "threads_per_inch_out_of_range"),
        ("1-40.5", "threads_per_inch_out_of_range"),
        ("3/8-0", "threads_per_inch_out_of_range"),
        ("M33x0.34", "pitch_out_of_range"),
        ("M33x8.1", "pitch_out_of_range"),
        ("M33x0", "pitch_out_of_range"),
        ("1/4-11", "too_coarse"),
        ("M10x3.4", "too_coarse"),
        ("1-8.25", "odd_threads_per_inch"),
        ("1/3-16", "odd_diameter"),
        ("M10.00001x1", "odd_diameter"),
        ("M10x1.00001", "odd_pitch"),
        ("3/0-16", "over_zero"),
        ("3/8-1/0", "over_zero"),
        ("3/8-16 UNF", "other_series"),
        ("3/8 16", "unreadable"),
        ("3/8-16 BSW", "unreadable"),
        ("-3/8-16", "unreadable"),
        ("G 1/2", "unreadable"),
        ("Tr20x4", "unreadable"),
        ("1e2-8", "unreadable"),
        ("\u0663/8-16", "unreadable"),
        ("M10x1.5\x00", "unreadable"),
        ("<script>", "unreadable"),
        ("'; drop table", "unreadable"),
    ],
)
def test_what_is_no_thread_is_refused_with_its_reason(text, code):
    with pytest.raises(ThreadError) as refused:
        parse_thread(text)

    assert refused.value.code == code


@pytest.mark.parametrize(
    "text", ["M3x0.5", "M100x6", "1/8-40", "3.9-4", "M33x0.35", "M33x8", "3/8-8", "M9x3"]
)
def test_the_bounds_themselves_are_let_in(text):
    assert parse_thread(text).designation == text


@pytest.mark.parametrize(("text", "example"), [("3/8", "3/8-16"), ("1 1/2", "1 1/2-8"), ("7/8", "1 1/4-8")])
def test_a_bare_diameter_is_answered_with_a_thread_of_that_diameter_where_one_is_known(text, example):
    with pytest.raises(ThreadError) as refused:
        parse_thread(text)

    assert refused.value.values == {"diameter": text, "example": example}


def test_a_bare_metric_size_is_not_guessed_but_offered():
    with pytest.raises(ThreadError) as refused:
        parse_thread("33 x 3.5")

    assert refused.value.values == {"metric": "M33x3.5"}


@given(inch_sizes())
def test_the_designation_of_an_inch_thread_gives_the_same_thread_back(size):
    major, per_inch = size
    thread = parse_thread(f"{float(major)} in - {float(per_inch)} tpi")

    assert thread.system is ThreadSystem.INCH
    assert thread.major_nm == major * 25_400_000
    assert thread.threads_per_inch == per_inch
    assert parse_thread(thread.designation) == thread


@given(metric_sizes(), st.sampled_from(["M{}x{}", "m{} \u00d7 {}", "{} mm x {}"]))
def test_the_designation_of_a_metric_thread_gives_the_same_thread_back(size, form):
    thread = parse_thread(form.format(*size))

    assert thread.system is ThreadSystem.METRIC
    assert thread.major_nm == Fraction(size[0]) * 1_000_000
    assert thread.pitch_nm == Fraction(size[1]) * 1_000_000
    assert parse_thread(thread.designation) == thread


@given(st.text(max_size=45) | st.text('0123456789 /.,-xM"in\u00bc', max_size=20))
def test_any_text_is_a_thread_with_a_short_canonical_form_or_refused(text):
    with suppress(ThreadError):
        thread = parse_thread(text)
        assert parse_thread(thread.designation) == thread
        assert len(thread.designation) <= 20


@given(inch_sizes())
def test_diameters_of_a_thread_stand_in_their_order(size):
    major, per_inch = size
    thread = Thread(ThreadSystem.INCH, int(major * 25_400_000), 25_400_000 / per_inch)

    assert (
        0
        < thread.external_root_diameter_nm
        < thread.internal_minor_diameter_nm
        < thread.pitch_diameter_nm
        < thread.major_nm
    )
