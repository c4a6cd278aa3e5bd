"""The table of marks as it was typed: rows of text that stay as they are whatever is wrong with them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from projects.geometry.profile import ShapeKind
from projects.library.domain.drawn import DrawnBore, DrawnProfile, DrawnShape
from projects.library.forms.fields import quantity_text

OUTSIDE, BORE = "outside", "bore"
MOST_ROWS = 60
LEAST_ROWS = 2
CELLS = ("at", "diameter", "kind", "measure")


@dataclass(frozen=True)
class Row:
    """A mark, and the shape that joins it to the next; `measure` is a radius, or the depth of a V-cut."""

    at: str = ""
    diameter: str = ""
    kind: str = ShapeKind.STRAIGHT.value
    measure: str = ""


@dataclass(frozen=True)
class TypedMarks:
    """Rows of the outside and of the bore, none where the piece has no bore; `row` is the chosen one."""

    outside: tuple[Row, ...]
    bore: tuple[Row, ...] = ()
    row: str = ""

    def runs(self) -> tuple[tuple[str, tuple[Row, ...]], ...]:
        return ((OUTSIDE, self.outside), (BORE, self.bore)) if self.bore else ((OUTSIDE, self.outside),)

    def cells(self) -> dict[str, str]:
        """Every cell by its name on the page: `outside-2-at`."""
        return {
            cell_name(run, number, cell): getattr(row, cell)
            for run, rows in self.runs()
            for number, row in enumerate(rows)
            for cell in CELLS
        }

    def chosen(self) -> tuple[str, int] | None:
        """The run and number of the chosen row, if it is there."""
        run, _dash, number = self.row.partition("-")
        known = [f"{name}-{at}" for name, rows in self.runs() for at in range(len(rows))]
        return (run, int(number)) if self.row in known else None

    def with_row_under(self, run: str, at: int) -> TypedMarks:
        """With an empty row under this one, and that chosen."""
        rows = self._rows(run)
        more = (*rows[: at + 1], Row(), *rows[at + 1 :])
        return replace(self, row=f"{run}-{at + 1}", **{run: more})

    def without_row(self, run: str, at: int) -> TypedMarks:
        rows = self._rows(run)
        left = rows[:at] + rows[at + 1 :]
        return replace(self, row=f"{run}-{min(at, len(left) - 1)}", **{run: left})

    def with_bore(self) -> TypedMarks:
        return replace(self, bore=(Row(),) * LEAST_ROWS, row=f"{BORE}-0")

    def without_bore(self) -> TypedMarks:
        return replace(self, bore=(), row="")

    def _rows(self, run: str) -> tuple[Row, ...]:
        return self.bore if run == BORE else self.outside


def cell_name(run: str, number: int, cell: str) -> str:
    return f"{run}-{number}-{cell}"


def typed_in(data: Mapping[str, str]) -> TypedMarks:
    """What a page sent: as many rows as it says it has, in bounds."""
    return TypedMarks(_rows_in(data, OUTSIDE, LEAST_ROWS), _rows_in(data, BORE, 0), data.get("row", ""))


def _rows_in(data: Mapping[str, str], run: str, least: int) -> tuple[Row, ...]:
    said = data.get(f"{run}-rows", "")
    count = int(said) if said.isascii() and said.isdecimal() and len(said) < 4 else 0
    count = max(LEAST_ROWS, min(count, MOST_ROWS)) if count or least else 0
    return tuple(_row_in(data, run, number) for number in range(count))


def _row_in(data: Mapping[str, str], run: str, number: int) -> Row:
    """The last row has no shape to a next, so the page sends none."""
    typed = {cell: data.get(cell_name(run, number, cell)) for cell in CELLS}
    return Row(**{cell: text for cell, text in typed.items() if text})


def typed_of(drawn: DrawnProfile) -> TypedMarks:
    """The table of a drawing that is there."""
    return TypedMarks(_rows_of(drawn), _rows_of(drawn.bore) if drawn.bore else (), row=f"{OUTSIDE}-0")


def _rows_of(run: DrawnProfile | DrawnBore) -> tuple[Row, ...]:
    shapes = (*run.shapes, DrawnShape(ShapeKind.STRAIGHT))
    return tuple(
        Row(quantity_text(mark.at), quantity_text(mark.diameter), shape.kind.value, _measure(shape))
        for mark, shape in zip(run.marks, shapes, strict=True)
    )


def _measure(shape: DrawnShape) -> str:
    measure = shape.radius or shape.depth
    return quantity_text(measure) if measure else ""


class RowError(ValueError):
    """The table can't be changed so. Codes: no_row (none is chosen), full, short (no more, no fewer rows)."""

    def __init__(self, code: str) -> None:
        self.code = code
        super().__init__(code)


def changed(typed: TypedMarks, act: str) -> TypedMarks:
    """The table with a row more or less, with a bore or without; raises RowError."""
    if act == "bore":
        return typed.with_bore()
    if act == "no_bore":
        return typed.without_bore()
    chosen = typed.chosen()
    if chosen is None:
        raise RowError("no_row")
    count = len(dict(typed.runs())[chosen[0]])
    if act == "under":
        if count >= MOST_ROWS:
            raise RowError("full")
        return typed.with_row_under(*chosen)
    if count <= LEAST_ROWS:
        raise RowError("short")
    return typed.without_row(*chosen)
