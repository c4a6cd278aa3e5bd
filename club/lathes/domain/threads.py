"""The known screw threads, and a thread from typed text.

`3/8-16`, `3/8 - 16 UNC`, `1¼-8`, `1 1/4 in x 8 tpi`, `M33 x 3,5` and `M10` are read.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from club.base.quantities.length import NM_PER_INCH, NM_PER_MM
from club.base.quantities.number import DECIMAL, FRACTION, WHOLE, NumberError, parse_number, plain_text
from club.lathes.domain.thread_record import (
    FINEST_INCH_PART,
    PUBLISHED,
    RECALLED,
    Thread,
    ThreadError,
    ThreadSystem,
    inch_thread,
    metric_thread,
    mixed_number,
    show_decimal,
    show_inches,
)

__all__ = ["KNOWN_THREADS", "SPINDLE_NOSES", "Thread", "ThreadError", "ThreadSystem", "parse_thread"]


def _unified(major: str, per_inch: int, series: str, source: str = PUBLISHED) -> Thread:
    return inch_thread(Fraction(major), Fraction(per_inch), series, source)


def _coarse(major: int, pitch: str, source: str = PUBLISHED) -> Thread:
    return metric_thread(Fraction(major), Fraction(pitch), "coarse", source)


_KNOWN = (
    # ASME B1.1; 1-10 UNS is recalled.
    _unified("1/4", 20, "UNC"),
    _unified("5/16", 18, "UNC"),
    _unified("3/8", 16, "UNC"),
    _unified("1/2", 13, "UNC"),
    _unified("5/8", 11, "UNC"),
    _unified("3/4", 10, "UNC"),
    _unified("3/4", 16, "UNF"),
    _unified("1", 8, "UNC"),
    _unified("1", 10, "UNS", RECALLED),
    _unified("5/4", 8, "8-UN"),
    _unified("3/2", 8, "8-UN"),
    # ISO 724 coarse pitches; M33 is recalled.
    _coarse(6, "1"),
    _coarse(8, "1.25"),
    _coarse(10, "1.5"),
    _coarse(12, "1.75"),
    _coarse(16, "2"),
    _coarse(18, "2.5"),
    _coarse(20, "2.5"),
    _coarse(24, "3"),
    _coarse(30, "3.5"),
    _coarse(33, "3.5", RECALLED),
)
KNOWN_THREADS: Mapping[str, Thread] = MappingProxyType({thread.designation: thread for thread in _KNOWN})

# Common practice: noses met on wood lathes, no standard fixes them.
SPINDLE_NOSES: tuple[Thread, ...] = tuple(
    KNOWN_THREADS[designation]
    for designation in (
        "3/4-16",
        "1-8",
        "1 1/4-8",
        "1 1/2-8",
        "3/4-10",
        "1-10",
        "M33x3.5",
        "M18x2.5",
        "M30x3.5",
        "M20x2.5",
        "M24x3",
    )
)

MOST_TEXT = 40
LEAST_MAJOR_MM, MOST_MAJOR_MM = 3, 100
LEAST_PER_INCH, MOST_PER_INCH = 4, 40
LEAST_PITCH_MM, MOST_PITCH_MM = Fraction("0.35"), 8
# Common practice: a pitch above a third of the diameter is a slip of the pen.
COARSEST_PITCH_TO_MAJOR = Fraction(1, 3)
# Measures are kept to a ten-thousandth of a millimetre or inch, or to a 64th of an inch.
FINEST_DECIMAL_PART = 10_000

MIXED = rf"(?:{WHOLE}(?: | ?- ?))?{FRACTION}"
AMOUNT = rf"(?:{MIXED}|{DECIMAL})"
INCHES = r"(?:inch(?:es)?|in\.?|\"|'')"
PER_INCH = r"(?:tpi|threads per inch)"
SERIES = r"(?:8-un|unc|unf|unef|uns|un)"
FIT_CLASS = r"(?:[123][ab])"
INCH = re.compile(
    rf"(?P<major>{AMOUNT}) ?(?P<inches>{INCHES})?(?P<between> ?[-x*] ?| )(?P<per_inch>{AMOUNT})"
    rf" ?(?P<unit>{PER_INCH})?(?: ?-? ?(?P<series>{SERIES}))?(?:[ -]{FIT_CLASS})?"
)
METRIC = re.compile(
    rf"(?P<m>m)? ?(?P<major>{DECIMAL}) ?(?P<mm>mm)? ?[-x*] ?(?P<pitch>{DECIMAL}) ?(?P<pitch_mm>mm)?"
)
INCH_DIAMETER = re.compile(rf"(?P<major>{AMOUNT}) ?(?P<inches>{INCHES})?")
METRIC_DIAMETER = re.compile(rf"m ?(?P<major>{DECIMAL})")
ONE_SERIES_ONLY = frozenset({"UNC", "UNF", "UNEF", "UNS"})


def parse_thread(text: str) -> Thread:
    """The thread a text names; one that isn't in the list of known threads has no series.

    Raises ThreadError with codes: empty, too_long, unreadable, over_zero, unit_missing, pitch_missing,
    odd_diameter, odd_pitch, odd_threads_per_inch, diameter_out_of_range, pitch_out_of_range,
    threads_per_inch_out_of_range, too_coarse, other_series. Values hold what was read.
    """
    if len(text) > MOST_TEXT:
        raise ThreadError("too_long", most=MOST_TEXT)
    plain = plain_text(text).lower()
    if not plain:
        raise ThreadError("empty")
    try:
        return _read(plain)
    except NumberError as error:
        raise ThreadError("over_zero", text=plain) from error


def _read(plain: str) -> Thread:
    if found := METRIC_DIAMETER.fullmatch(plain):
        return _coarse_thread(parse_number(found["major"]))
    if found := INCH_DIAMETER.fullmatch(plain):
        raise _diameter_alone(parse_number(found["major"]), says_inches=bool(found["inches"]))
    found = METRIC.fullmatch(plain)
    if found and (found["m"] or found["mm"] or found["pitch_mm"]):
        return _metric(found)
    found = INCH.fullmatch(plain)
    if found is None or _runs_together(found):
        raise ThreadError("unreadable", text=plain)
    return _inch(found)


def _runs_together(found: re.Match[str]) -> bool:
    """`3/8 16` with nothing that says which is which."""
    return found["between"] == " " and not (found["inches"] or found["unit"] or found["series"])


def _coarse_thread(major: Fraction) -> Thread:
    known = _known_of_diameter(ThreadSystem.METRIC, major * NM_PER_MM)
    if known:
        return known[0]
    _check_diameter(major)
    diameter = show_decimal(major)
    raise ThreadError("pitch_missing", diameter=f"M{diameter}", example="M33x3.5")


def _diameter_alone(major: Fraction, *, says_inches: bool) -> ThreadError:
    """`3/8` lacks its threads per inch; `33` may be M33, too wide as inches for any lathe."""
    metric = _known_of_diameter(ThreadSystem.METRIC, major * NM_PER_MM)
    if metric and not says_inches:
        return ThreadError("unit_missing", metric=metric[0].designation)
    try:
        _check_diameter(major * NM_PER_INCH / NM_PER_MM)
        _check_inch_parts(major)
    except ThreadError as error:
        return error
    known = _known_of_diameter(ThreadSystem.INCH, major * NM_PER_INCH)
    example = known[0].designation if known else "1 1/4-8"
    return ThreadError("pitch_missing", diameter=show_inches(major), example=example)


def _known_of_diameter(system: ThreadSystem, nm: Fraction) -> list[Thread]:
    return [thread for thread in KNOWN_THREADS.values() if thread.system is system and thread.major_nm == nm]


def _metric(found: re.Match[str]) -> Thread:
    major, pitch = parse_number(found["major"]), parse_number(found["pitch"])
    _check_metric(major, pitch)
    return _listed(metric_thread(major, pitch))


def _inch(found: re.Match[str]) -> Thread:
    major, per_inch = parse_number(found["major"]), parse_number(found["per_inch"])
    if not (found["inches"] or found["unit"] or found["series"]):
        _check_is_not_metric(major, per_inch)
    _check_inch(major, per_inch)
    thread = _listed(inch_thread(major, per_inch))
    series = (found["series"] or "").upper()
    if thread.is_listed and series in ONE_SERIES_ONLY and series != thread.series:
        raise ThreadError("other_series", thread=thread.designation, series=thread.series, typed=series)
    return thread


def _listed(thread: Thread) -> Thread:
    return KNOWN_THREADS.get(thread.designation, thread)


def _check_is_not_metric(major: Fraction, pitch: Fraction) -> None:
    """`33 x 3.5` says neither M nor inch; as inches it makes no sense, so it isn't guessed."""
    if major * NM_PER_INCH <= MOST_MAJOR_MM * NM_PER_MM and pitch >= LEAST_PER_INCH:
        return
    try:
        _check_metric(major, pitch)
    except ThreadError:
        return
    raise ThreadError("unit_missing", metric=metric_thread(major, pitch).designation)


def _check_metric(major: Fraction, pitch: Fraction) -> None:
    _check_diameter(major)
    if not LEAST_PITCH_MM <= pitch <= MOST_PITCH_MM:
        raise ThreadError(
            "pitch_out_of_range",
            pitch=show_number(pitch),
            least=show_decimal(LEAST_PITCH_MM),
            most=MOST_PITCH_MM,
        )
    for code, value in (("odd_diameter", major), ("odd_pitch", pitch)):
        if FINEST_DECIMAL_PART % value.denominator:
            raise ThreadError(code, found=show_number(value))
    _check_coarseness(metric_thread(major, pitch))


def _check_inch(major: Fraction, per_inch: Fraction) -> None:
    _check_diameter(major * NM_PER_INCH / NM_PER_MM)
    _check_inch_parts(major)
    if not LEAST_PER_INCH <= per_inch <= MOST_PER_INCH:
        raise ThreadError(
            "threads_per_inch_out_of_range",
            found=show_number(per_inch),
            least=LEAST_PER_INCH,
            most=MOST_PER_INCH,
        )
    if 2 % per_inch.denominator:
        raise ThreadError("odd_threads_per_inch", found=show_number(per_inch))
    _check_coarseness(inch_thread(major, per_inch))


def _check_diameter(mm: Fraction) -> None:
    if not LEAST_MAJOR_MM <= mm <= MOST_MAJOR_MM:
        raise ThreadError("diameter_out_of_range", least=LEAST_MAJOR_MM, most=MOST_MAJOR_MM)


def _check_inch_parts(major: Fraction) -> None:
    if FINEST_INCH_PART % major.denominator and FINEST_DECIMAL_PART % major.denominator:
        raise ThreadError("odd_diameter", found=show_number(major))


def _check_coarseness(thread: Thread) -> None:
    if thread.pitch_nm > thread.major_nm * COARSEST_PITCH_TO_MAJOR:
        raise ThreadError("too_coarse", thread=thread.designation)


def show_number(value: Fraction) -> str:
    """A number as read, for a sentence: a decimal where nine places hold it, else a mixed number."""
    return show_decimal(value) if 10**9 % value.denominator == 0 else mixed_number(value)
