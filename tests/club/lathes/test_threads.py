from __future__ import annotations

from fractions import Fraction

import pytest
from screw_thread_lib.data import ASME_M_6g6H_dict, ASME_UN_2A2B_dict  # type: ignore[import-untyped]
from screw_thread_lib.threads import Assembly  # type: ignore[import-untyped]

from club.lathes.domain.threads import KNOWN_THREADS, SPINDLE_NOSES, Thread, ThreadSystem, parse_thread
from tests.reference.tables import half_of_last_digit, rows

TABLE = rows("02a_threads.csv")
UNIT = {"in": 25_400_000, "mm": 1_000_000}
PROFILE_COLUMNS = {
    "pitch_dia_basic_native_unit": "pitch_diameter_nm",
    "minor_dia_internal_basic_native_unit": "internal_minor_diameter_nm",
    "minor_dia_external_root_native_unit": "external_root_diameter_nm",
}
INCH_ROWS = [row for row in TABLE if row["system"] == "inch"]
METRIC_ROWS = [row for row in TABLE if row["system"] == "metric"]
PRINTED_ROWS = [row for row in TABLE if row["confidence"] == "published-confirmed"]
RECALLED_ROWS = [row for row in TABLE if row["confidence"] == "published-from-memory"]


def each(table: list[dict[str, str]]) -> pytest.MarkDecorator:
    return pytest.mark.parametrize("row", table, ids=[row["designation"] for row in table])


def thread_of(row: dict[str, str]) -> Thread:
    return KNOWN_THREADS[row["designation"]]


def assert_as_printed(value: Fraction, printed: str) -> None:
    assert abs(value - Fraction(printed)) <= half_of_last_digit(printed)


def test_the_known_threads_are_those_of_the_table():
    assert list(KNOWN_THREADS) == [row["designation"] for row in TABLE]


@each(INCH_ROWS)
def test_an_inch_thread_equals_asme_b1_1_in_diameter_and_threads_per_inch(row):
    thread = thread_of(row)

    assert thread.system is ThreadSystem.INCH
    assert thread.major_nm == Fraction(row["major_dia_in"]) * UNIT["in"]
    assert thread.threads_per_inch == int(row["threads_per_inch"])
    assert_as_printed(thread.pitch_nm / UNIT["in"], row["pitch_in"])
    assert thread.standard == "ASME B1.1"


@each(METRIC_ROWS)
def test_a_metric_thread_equals_iso_724_in_diameter_and_pitch(row):
    thread = thread_of(row)

    assert thread.system is ThreadSystem.METRIC
    assert thread.major_nm == Fraction(row["major_dia_mm"]) * UNIT["mm"]
    assert thread.pitch_nm == Fraction(row["pitch_mm"]) * UNIT["mm"]
    assert thread.standard == "ISO 724; ISO 898-1"


@each(TABLE)
def test_a_record_keeps_series_and_whether_it_was_recalled(row):
    thread = thread_of(row)

    assert thread.series == row["series"]
    assert (thread.source == "from memory") is (row["confidence"] == "published-from-memory")


@pytest.mark.parametrize(("column", "measure"), PROFILE_COLUMNS.items())
@each(PRINTED_ROWS)
def test_pitch_and_minor_diameters_equal_the_basic_profile_of_asme_b1_1_and_iso_724(row, column, measure):
    in_native_unit = Fraction(getattr(thread_of(row), measure), UNIT[row["native_unit"]])

    assert_as_printed(in_native_unit, row[column])


@pytest.mark.parametrize(
    "column",
    ["tensile_stress_area_computed_native_unit_sq", "tensile_stress_area_published_native_unit_sq"],
)
@each(PRINTED_ROWS)
def test_the_stress_area_equals_asme_b1_1_for_inch_and_iso_898_1_for_metric_threads(row, column):
    in_native_unit = Fraction(thread_of(row).stress_area_nm2, UNIT[row["native_unit"]] ** 2)

    assert_as_printed(in_native_unit, row[column])


@each(RECALLED_ROWS)
def test_a_thread_recalled_from_memory_is_in_the_range_of_what_was_recalled(row):
    """Recalled numbers of ASME B1.1 and ISO 898-1: within one in a hundred, no digit is asserted."""
    thread, unit = thread_of(row), UNIT[row["native_unit"]]
    recalled_area = float(row["tensile_stress_area_computed_native_unit_sq"])

    for column, measure in PROFILE_COLUMNS.items():
        assert getattr(thread, measure) / unit == pytest.approx(float(row[column]), rel=0.01)
    assert thread.stress_area_nm2 / unit**2 == pytest.approx(recalled_area, rel=0.01)


@pytest.mark.parametrize("name", sorted({*ASME_UN_2A2B_dict} - {"10-24", "10-32"}))
def test_inch_threads_agree_with_an_independent_library_of_asme_b1_1_2019(name):
    """screw_thread_lib 0.0.6 (MIT): an internal 2B pitch diameter is least at the basic one."""
    printed, assembly = ASME_UN_2A2B_dict[name], Assembly.from_ASME_B11_UN_2A2B(name)

    thread = parse_thread(name)

    assert thread.pitch_diameter_nm / UNIT["in"] == pytest.approx(printed["D2min"], abs=0.00006)
    assert thread.internal_minor_diameter_nm / UNIT["in"] == pytest.approx(printed["D1min"], abs=0.001)
    assert thread.stress_area_nm2 / UNIT["in"] ** 2 == pytest.approx(assembly.As_FEDSTD_1b(), rel=1e-4)


@pytest.mark.parametrize("name", sorted(ASME_M_6g6H_dict))
def test_metric_threads_agree_with_an_independent_library_of_asme_b1_13m(name):
    """screw_thread_lib 0.0.6 (MIT), which gives inches, and no stress area of ISO 898-1."""
    printed = ASME_M_6g6H_dict[name]

    thread = parse_thread(name)

    assert thread.pitch_diameter_nm / UNIT["in"] == pytest.approx(printed["D2min"], abs=0.00002)
    assert thread.internal_minor_diameter_nm / UNIT["in"] == pytest.approx(printed["D1min"], abs=0.00002)


def test_inch_and_metric_stress_areas_have_a_formula_each():
    """0.9743/n after ASME B1.1, 0.9382 P after ISO 898-1: the same bar measured either way differs."""
    inch, metric = parse_thread("1-8"), parse_thread("M25.4x3.175")

    assert (inch.major_nm, inch.pitch_nm) == (metric.major_nm, metric.pitch_nm)
    assert metric.stress_area_nm2 > inch.stress_area_nm2 * 1.01


def test_the_noses_to_choose_from_are_those_met_on_wood_lathes():
    """Common practice, no standard."""
    met = [parse_thread(row["designation"]) for row in rows("02c_spindle_noses.csv")]

    assert list(SPINDLE_NOSES) == met


def test_the_draw_bar_threads_of_iso_296_are_known_and_one_taper_has_several():
    """ISO 296:1991, recalled; on Morse No. 2 a 1/4-20 bar is common practice besides."""
    table = rows("01b_morse_ends_and_drawbars.csv")
    table = [row for row in table if row["size"] != "MT0"]
    columns = ("drawbar_thread_metric", "drawbar_thread_inch")
    named = {(row["size"][:3], row[column]) for row in table for column in columns if row[column]}

    threads = {(size, parse_thread(text)) for size, text in named}
    on_no_2 = {thread.designation for size, thread in threads if size == "MT2"}

    assert all(thread.is_listed for _, thread in threads)
    assert on_no_2 == {"M10x1.5", "3/8-16", "1/4-20"}
