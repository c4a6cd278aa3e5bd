"""The lists of the demonstration club, and how a line of them goes through a form."""

from __future__ import annotations

from pathlib import Path
from typing import TypeVar

from django.db.models import Model
from django.forms import ModelForm

from club.base.csv_rows import CsvRow, read_list

FOLDER = Path(__file__).resolve().parent.parent.parent / "management" / "demonstration"
Row = TypeVar("Row", bound=Model)


def text_of(name: str) -> str:
    return (FOLDER / name).read_text(encoding="utf-8")


def lines_of(name: str) -> tuple[CsvRow, ...]:
    return read_list(text_of(name)).rows


def good(form: ModelForm[Row]) -> Row:
    """The row as the form has it, not kept yet; ValueError where the form refuses something."""
    if not form.is_valid():
        raise ValueError(form.errors.as_json())
    return form.instance


def words_in(cell: str) -> list[str]:
    """What stands in a cell between commas: `1, 2, 6`."""
    return [word.strip() for word in cell.split(",") if word.strip()]
