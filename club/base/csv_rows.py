"""Reading and writing lists as CSV text: pure, and the same for every list of the club.

A cell that a spreadsheet would run as a formula, or take for a date, goes out with an apostrophe before it
and loses that apostrophe when it comes back, so a list survives the round trip and nothing is run.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

MOST_BYTES = 1_000_000
MOST_ROWS = 500
MOST_HEADINGS = 100
MOST_CELL = 2_000
FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")
DELIMITERS = (",", ";", "\t")
# Spreadsheets make a date of a thread like 1-8 or 3/8-16, and do not tell.
DATE_LIKE = re.compile(r"[0-9]{1,2}(?:[-/.][0-9]{1,4}){1,2}")
# What some programs write above the list to name its separator.
SEPARATOR_LINE = re.compile(r"sep=(?P<sign>[,;\t])[ \t]*\r?\n", re.IGNORECASE)


class CsvError(ValueError):
    """The text can't be read as a list. `code` and `values` say why; the room has the sentence."""

    def __init__(self, code: str, **values: object) -> None:
        self.code = code
        self.values = values
        super().__init__(code)


@dataclass(frozen=True)
class CsvRow:
    """One line of a list: the number a text editor shows for its start, and a cell for each heading."""

    line: int
    cells: Mapping[str, str]


@dataclass(frozen=True)
class CsvList:
    headings: tuple[str, ...]
    rows: tuple[CsvRow, ...]


def decode(data: bytes) -> str:
    """Text of a file as spreadsheets save it: UTF-8 with or without a mark, UTF-16, else Windows-1252.

    Raises CsvError when it is too large or holds NUL bytes, which no list does.
    """
    if len(data) > MOST_BYTES:
        raise CsvError("too_large", most=MOST_BYTES)
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return _decoded(data, "utf-16")
    if b"\x00" in data:
        raise CsvError("not_text")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return _decoded(data, "cp1252")


def _decoded(data: bytes, encoding: str) -> str:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError as error:
        raise CsvError("not_text") from error


def read_list(text: str) -> CsvList:
    """Headings and rows of a list whose first line names the columns.

    Comma, semicolon or tab, whichever the first line has most of. Empty lines are skipped.
    Raises CsvError with codes: empty, not_text, too_large, too_many_rows, long_cell, unreadable,
    too_many_headings, heading_twice, no_heading (a cell beyond the last heading), each with its line where
    it has one.
    """
    text = text.removeprefix("\ufeff")
    if len(text) > MOST_BYTES:
        raise CsvError("too_large", most=MOST_BYTES)
    if "\x00" in text:
        raise CsvError("not_text")
    lines = _lines(text)
    if not lines:
        raise CsvError("empty")
    headings = _headings(lines[0][1])
    rows = tuple(_row(line, cells, headings) for line, cells in lines[1:])
    if len(rows) > MOST_ROWS:
        raise CsvError("too_many_rows", most=MOST_ROWS, found=len(rows))
    return CsvList(headings, rows)


def _delimiter(text: str) -> str:
    first = text.lstrip("\r\n").splitlines()[0] if text.strip() else ""
    return max(DELIMITERS, key=first.count)


def _lines(text: str) -> list[tuple[int, list[str]]]:
    """Cells of each line that has any, with the line number where it starts."""
    named = SEPARATOR_LINE.match(text)
    delimiter = named["sign"] if named else _delimiter(text)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    lines = []
    start = 1
    if named:
        next(reader)
        start = 2
    try:
        for cells in reader:
            if any(cell.strip() for cell in cells):
                lines.append((start, [_cell_in(cell, start) for cell in cells]))
            start = reader.line_num + 1
    except csv.Error as error:
        raise CsvError("unreadable", line=start) from error
    return lines


def _cell_in(cell: str, line: int) -> str:
    if len(cell) > MOST_CELL:
        raise CsvError("long_cell", line=line, most=MOST_CELL)
    cell = cell.strip(" \n\u00a0")
    return cell[1:] if cell.startswith("'") and _runs(cell) else cell


def _runs(cell: str) -> bool:
    """Whether a spreadsheet would make something else of it, were it not for apostrophes before it."""
    bare = cell.lstrip("'")
    return bare.startswith(FORMULA_STARTS) or DATE_LIKE.fullmatch(bare) is not None


def _headings(cells: Sequence[str]) -> tuple[str, ...]:
    # Office programs bend the apostrophe somebody typed.
    headings = [" ".join(cell.split()).lower().replace("\u2019", "'") for cell in cells]
    while headings and not headings[-1]:
        headings.pop()
    if len(headings) > MOST_HEADINGS:
        raise CsvError("too_many_headings", most=MOST_HEADINGS, found=len(headings))
    for heading in headings:
        if headings.count(heading) > 1:
            raise CsvError("heading_twice", heading=heading)
    return tuple(headings)


def _row(line: int, cells: Sequence[str], headings: Sequence[str]) -> CsvRow:
    if any(cells[len(headings) :]):
        raise CsvError("no_heading", line=line, found=len(cells), headings=len(headings))
    padded = [*cells, *[""] * (len(headings) - len(cells))]
    return CsvRow(line, dict(zip(headings, padded, strict=False)))


def write_list(headings: Sequence[str], rows: Iterable[Mapping[str, str]]) -> str:
    """CSV text with commas and CRLF (RFC 4180), formulas disarmed."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(headings)
    for row in rows:
        writer.writerow([_cell_out(row[heading]) for heading in headings])
    return out.getvalue()


def _cell_out(cell: str) -> str:
    return f"'{cell}" if _runs(cell) else cell
