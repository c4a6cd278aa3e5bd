from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.csv_rows import MOST_BYTES, MOST_ROWS, CsvError, decode, read_list, write_list

CELLS = st.text(st.characters(codec="utf-8", exclude_characters="\x00\ufeff"), max_size=40).map(
    lambda text: text.replace("\r\n", "\n").strip(" \n\u00a0")
)


@given(st.lists(st.tuples(CELLS, CELLS).filter(lambda row: any(cell.strip() for cell in row)), max_size=6))
def test_what_is_written_is_read_back(rows):
    text = write_list(["first", "second"], ({"first": one, "second": two} for one, two in rows))

    read = read_list(text)

    assert [tuple(row.cells.values()) for row in read.rows] == rows


def test_a_heading_with_a_bent_apostrophe_is_the_same_heading():
    assert read_list("Maker\u2019s plate\nBench lathe\n").headings == ("maker's plate",)


@pytest.mark.parametrize("cell", ["'=1+1", "''-5", "'", "'twas", "=1+1"])
def test_apostrophes_somebody_typed_come_back(cell):
    text = write_list(["only"], [{"only": cell}])

    assert read_list(text).rows[0].cells["only"] == cell


@given(CELLS)
def test_no_written_cell_begins_as_a_formula(cell):
    """Spreadsheets run cells that begin with these signs (common practice of their makers, no standard)."""
    text = write_list(["only"], [{"only": cell}])

    written = text.removeprefix("only\r\n").removeprefix('"')

    assert not written.startswith(("=", "+", "-", "@", "\t"))


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_any_of_three_delimiters_is_recognised(delimiter):
    text = delimiter.join(("Number", "Swing  over bed")) + "\n" + delimiter.join(("7", "12 in"))

    read = read_list(text)

    assert read.headings == ("number", "swing over bed")
    assert dict(read.rows[0].cells) == {"number": "7", "swing over bed": "12 in"}


def test_a_line_that_names_the_separator_is_no_line_of_the_list():
    read = read_list("sep=;\r\nnumber;plate\r\n7;one, two\r\n")

    assert [(row.line, dict(row.cells)) for row in read.rows] == [(3, {"number": "7", "plate": "one, two"})]


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_a_file_is_read_as_spreadsheets_save_it(encoding):
    data = "plate\r\nSöhne ½\r\n".encode(encoding)

    read = read_list(decode(data))

    assert read.rows[0].cells["plate"] == "Söhne ½"


def test_a_row_is_known_by_the_line_it_starts_on():
    read = read_list('number,plate\n\n1,"two\nlines"\n2,one\n')

    assert [row.line for row in read.rows] == [3, 5]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "empty"),
        (" \n\n", "empty"),
        ("a,b\n1,\x00", "not_text"),
        ("a,b\n" + "x" * MOST_BYTES, "too_large"),
        ("a\n" + "1\n" * (MOST_ROWS + 1), "too_many_rows"),
        ("a\n" + "1" * 2001, "long_cell"),
        ('a\n"1', "unreadable"),
        ('a\n"1"2', "unreadable"),
        ("a,A\n1,2", "heading_twice"),
        (",".join(str(number) for number in range(101)), "too_many_headings"),
        ("a,b\n1,2,3", "no_heading"),
    ],
)
def test_what_is_no_list_is_refused_with_its_reason(text, code):
    with pytest.raises(CsvError) as caught:
        read_list(text)

    assert caught.value.code == code


def test_columns_without_a_name_at_the_end_are_no_columns():
    """As spreadsheets save a sheet somebody once wrote far to the right in."""
    read = read_list("a" + "," * 400_000 + "\n1\n")

    assert read.headings == ("a",)


@pytest.mark.parametrize("data", [b"PK\x03\x04\x00\x00", b"\xff\xfe\x00", b"caf\x81"])
def test_a_file_that_is_no_text_is_refused(data):
    with pytest.raises(CsvError, match="not_text"):
        decode(data)
