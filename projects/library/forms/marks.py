"""The form of a drawing: marks with their shapes, typed into a table."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from django import forms
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.base.quantities.length import Length
from projects.geometry.profile import ProfileError, ShapeKind, check
from projects.library.domain.drawn import DrawnBore, DrawnMark, DrawnProfile, DrawnShape
from projects.library.domain.quantity_form import QUANTITIES
from projects.library.forms.draft import DraftForm
from projects.library.forms.fields import OneOfField, QuantityField
from projects.library.forms.offers import words_of
from projects.library.forms.typed_marks import BORE, CELLS, OUTSIDE, TypedMarks, cell_name
from projects.library.sentences.errors import profile_sentence

CELL_LABELS = {
    "at": _("from left end"),
    "diameter": _("diameter"),
    "kind": _("shape to the next"),
    "measure": _("radius, or depth of a V-cut"),
}
# A fault of a shape names the mark where it ends; the shape is typed in the row before.
OF_SHAPES = frozenset(
    {
        *("radius_unused", "depth_unused", "radius_missing", "radius_too_short", "overhang"),
        *("depth_missing", "v_cut_too_shallow", "v_cut_through_axis"),
        *("bead_through_axis", "cove_through_axis"),
    }
)
OF_DIAMETERS = frozenset({"negative_diameter", "nought_diameter", "wall_gone"})


@dataclass(frozen=True)
class MarkRow:
    """A row as the template draws it; the last one has no shape to a next."""

    name: str
    number: int
    label: str
    at: forms.BoundField
    diameter: forms.BoundField
    kind: forms.BoundField
    measure: forms.BoundField
    is_last: bool
    is_chosen: bool

    @property
    def cells(self) -> tuple[forms.BoundField, ...]:
        return (self.at, self.diameter, self.kind, self.measure)


class MarksForm(DraftForm):
    """Unbound it holds what was typed without a word on it; bound it says what is wrong."""

    def __init__(self, typed: TypedMarks, revision: str | int | None, *, bound: bool) -> None:
        cells: dict[str, Any] = {"revision": revision, **typed.cells()}
        super().__init__(cells if bound else None, initial=cells)
        self.typed = typed
        for run, rows in typed.runs():
            for number, _row in enumerate(rows):
                self._add_row(run, number)

    def _add_row(self, run: str, number: int) -> None:
        for cell, label in CELL_LABELS.items():
            self.fields[cell_name(run, number, cell)] = _cell_field(cell, _label(run, number, label))

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not self.errors:
            cleaned["drawn"] = self._drawn()
            self._check(cleaned["drawn"])
        return cleaned

    def _drawn(self) -> DrawnProfile:
        bore = DrawnBore(*self._run(BORE)) if self.typed.bore else None
        return DrawnProfile(*self._run(OUTSIDE), bore)

    def _run(self, run: str) -> tuple[tuple[DrawnMark, ...], tuple[DrawnShape, ...]]:
        given = [
            [self.cleaned_data[cell_name(run, number, cell)] for cell in CELLS]
            for number in range(len(dict(self.typed.runs())[run]))
        ]
        marks = tuple(DrawnMark(at, diameter) for at, diameter, _kind, _measure in given)
        return marks, tuple(_shape(kind, measure) for _at, _diameter, kind, measure in given[:-1])

    def _check(self, drawn: DrawnProfile) -> None:
        try:
            check(drawn.profile())
        except ProfileError as error:
            self.add_error(self._cell_of(error), profile_sentence(error))

    def _cell_of(self, error: ProfileError) -> str | None:
        """The cell to mend: of the mark that the error names, or of the shape before it."""
        run = BORE if error.inside else OUTSIDE
        if error.code in OF_SHAPES:
            name = cell_name(run, error.mark - 2, "measure")
        else:
            name = cell_name(run, error.mark - 1, "diameter" if error.code in OF_DIAMETERS else "at")
        return name if name in self.fields else None

    def tables(self) -> Iterator[tuple[str, list[MarkRow]]]:
        """The rows of outside and bore for the template."""
        chosen = self.typed.chosen()
        for run, rows in self.typed.runs():
            last = len(rows) - 1
            yield run, [self._row(run, at, at == last, (run, at) == chosen) for at in range(len(rows))]

    def _row(self, run: str, at: int, is_last: bool, is_chosen: bool) -> MarkRow:
        place, diameter, kind, measure = (self[cell_name(run, at, cell)] for cell in CELLS)
        label = _label(run, at, _("this row"))
        return MarkRow(f"{run}-{at}", at + 1, label, place, diameter, kind, measure, is_last, is_chosen)

    def to_write_next(self) -> MarksForm:
        """With the keyboard in the first cell of the chosen row."""
        chosen = self.typed.chosen()
        if chosen:
            self.fields[cell_name(*chosen, "at")].widget.attrs["autofocus"] = True
        return self


def _label(run: str, at: int, cell: Any) -> str:
    said = gettext("bore, mark %(number)s, %(cell)s") if run == BORE else gettext("mark %(number)s, %(cell)s")
    return said % {"number": at + 1, "cell": cell}


def _cell_field(cell: str, label: str) -> forms.Field:
    attrs = {"aria-label": label, "autocomplete": "off"}
    if cell == "kind":
        return OneOfField(words_of(ShapeKind), ShapeKind, label=label, widget=forms.Select(attrs=attrs))
    return QuantityField(
        QUANTITIES[Length],
        above=cell == "measure",
        required=cell != "measure",
        label=label,
        widget=forms.TextInput(attrs=attrs),
    )


def _shape(kind: ShapeKind, measure: Length | None) -> DrawnShape:
    if kind is ShapeKind.V_CUT:
        return DrawnShape(kind, depth=measure)
    return DrawnShape(kind, radius=measure)
