"""Lathes in from a list and out to one: a plan first, then all of it or nothing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256

from django.db import transaction
from django.utils.translation import gettext

from club.base.csv_rows import CsvError, CsvList, CsvRow, read_list, write_list
from club.lathes.actions import add_lathe, mend_lathe
from club.lathes.domain.lathe_row import (
    COLUMNS,
    NEEDED,
    form_fields,
    missing_headings,
    plain_heading,
    unknown_headings,
    with_unit,
    words_of,
)
from club.lathes.domain.own_draw_bars import write_own_draw_bars
from club.lathes.domain.speed_settings import write_speed_settings
from club.lathes.forms.lathe import LatheRowForm
from club.lathes.models import Lathe, Workshop
from club.lathes.sentences import csv_sentence, field_sentence, line_sentence
from club.people.models import Account

HEADING_OF = {field: heading for heading, field in COLUMNS.items()}


@dataclass(frozen=True)
class CellChange:
    heading: str
    before: str
    after: str


@dataclass(frozen=True)
class LinePlan:
    """What one line would do: add a lathe, change one, leave it, or nothing because it is wrong."""

    line: int
    workshop: str
    number: str
    form: LatheRowForm
    changes: tuple[CellChange, ...]
    problems: tuple[str, ...]

    @property
    def kind(self) -> str:
        if self.problems:
            return "wrong"
        if not self.form.instance.pk:
            return "new"
        return "changed" if self.changes else "same"


@dataclass(frozen=True)
class ListPlan:
    lines: tuple[LinePlan, ...] = ()
    problems: tuple[str, ...] = ()

    @property
    def all_problems(self) -> tuple[str, ...]:
        return (*self.problems, *(problem for line in self.lines for problem in line.problems))

    @property
    def is_good(self) -> bool:
        return bool(self.lines) and not self.all_problems

    @property
    def new_count(self) -> int:
        return self._count("new")

    @property
    def changed_count(self) -> int:
        return self._count("changed")

    @property
    def same_count(self) -> int:
        return self._count("same")

    def _count(self, kind: str) -> int:
        return sum(line.kind == kind for line in self.lines)

    @property
    def has_changes(self) -> bool:
        return any(line.kind in {"new", "changed"} for line in self.lines)

    @property
    def mark(self) -> str:
        """Changes when the lines or the lathes they touch change: what was looked over is what is written."""
        facts = [(line.line, line.kind, line.form.data, line.form.instance.revision) for line in self.lines]
        return sha256(repr(facts).encode()).hexdigest()


def plan_list(text: str, workshops: Sequence[Workshop]) -> ListPlan:
    """What the list would do in these workshops, line by line; nothing is written.

    At most six queries, whatever the length of the list.
    """
    try:
        found = _in_columns(read_list(text))
    except CsvError as error:
        return ListPlan(problems=(csv_sentence(error),))
    problems = [
        csv_sentence(CsvError("unknown_heading", heading=name)) for name in unknown_headings(found.headings)
    ]
    problems += [
        csv_sentence(CsvError("missing_heading", heading=name)) for name in missing_headings(found.headings)
    ]
    if problems:
        return ListPlan(problems=tuple(problems))
    if not found.rows:
        return ListPlan(problems=(csv_sentence(CsvError("no_rows")),))
    return ListPlan(tuple(_plan_lines(found.rows, workshops)))


def _in_columns(found: CsvList) -> CsvList:
    """The list with the units of its headings put to the bare numbers below them."""
    plain = {heading: plain_heading(heading) for heading in found.headings}
    names = [name for name, _ in plain.values()]
    for name in names:
        if names.count(name) > 1:
            raise CsvError("heading_twice", heading=name)
    rows = (
        CsvRow(
            row.line, {plain[name][0]: with_unit(cell, plain[name][1]) for name, cell in row.cells.items()}
        )
        for row in found.rows
    )
    return CsvList(tuple(names), tuple(rows))


def _plan_lines(rows: Iterable[CsvRow], workshops: Sequence[Workshop]) -> Iterable[LinePlan]:
    by_name = {workshop.name.casefold(): workshop for workshop in workshops}
    lathes = {
        (lathe.workshop_id, lathe.number): lathe
        for lathe in Lathe.objects.filter(workshop__in=workshops).whole()
    }
    first_lines: dict[tuple[str, str], int] = {}
    for row in rows:
        workshop = by_name.get(row.cells["workshop"].casefold())
        number = row.cells["number"]
        lathe = lathes.get((workshop.pk, int(number))) if workshop and _is_number(number) else None
        earlier = first_lines.setdefault((row.cells["workshop"].casefold(), number.lstrip("0")), row.line)
        yield _plan_line(row, workshop, lathe, workshops, None if earlier == row.line else earlier)


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdecimal() and len(text) <= 6


def _plan_line(
    row: CsvRow,
    workshop: Workshop | None,
    lathe: Lathe | None,
    workshops: Sequence[Workshop],
    earlier: int | None,
) -> LinePlan:
    before = fields_of(lathe) if lathe else {}
    typed = before | form_fields(row.cells) | {"workshop": str(workshop.pk) if workshop else ""}
    typed.setdefault("condition", Lathe.Condition.IN_SERVICE)
    form = LatheRowForm(typed, instance=lathe or Lathe(), workshops=workshops)
    problems = tuple(_problems(row, form, workshop, workshops, earlier))
    changes = () if problems else tuple(_changes(before, fields_of_form(form)))
    return LinePlan(row.line, row.cells["workshop"], row.cells["number"], form, changes, problems)


def _problems(
    row: CsvRow,
    form: LatheRowForm,
    workshop: Workshop | None,
    workshops: Sequence[Workshop],
    earlier: int | None,
) -> Iterable[str]:
    if earlier is not None:
        yield line_sentence("twice", line=row.line, earlier=earlier, number=row.cells["number"])
    if workshop is None:
        yield line_sentence(
            "no_workshop" if row.cells["workshop"] else "no_workshop_named",
            line=row.line,
            number=row.cells["number"] or "?",
            workshop=row.cells["workshop"],
            known=", ".join(known.name for known in workshops) or gettext("none yet"),
        )
    for field, errors in form.errors.items():
        if field not in {"workshop", "__all__"}:
            for error in errors:
                heading = HEADING_OF[field]
                yield field_sentence(
                    row.line, row.cells["number"], heading, row.cells.get(heading, ""), str(error)
                )


def _changes(before: Mapping[str, str], after: Mapping[str, str]) -> Iterable[CellChange]:
    words_before = words_of(before) if before else dict.fromkeys(COLUMNS, "")
    words_after = words_of(after)
    for heading in COLUMNS:
        if heading not in NEEDED and words_before[heading] != words_after[heading]:
            yield CellChange(heading, words_before[heading], words_after[heading])


@transaction.atomic
def bring_in(by: Account, plan: ListPlan) -> None:
    """Write the whole plan or nothing; raises StaleError or TakenError
    when the lathes changed since it was made."""
    for line in plan.lines:
        form = line.form
        speeds, bars = form.cleaned_data["speeds"], form.cleaned_data["draw_bars"]
        if line.kind == "changed":
            mend_lathe(by, form.instance, form.instance.revision, speeds, bars)
        elif line.kind == "new":
            add_lathe(by, form.instance, speeds, bars)


def write_lathes(lathes: Iterable[Lathe]) -> str:
    """The list that `plan_list` reads back as no change at all."""
    return write_list(list(COLUMNS), (words_of(fields_of(lathe)) for lathe in lathes))


def fields_of(lathe: Lathe) -> dict[str, str]:
    """A lathe as somebody would have typed it into its form, with the workshop by name."""
    return {
        field: _text(getattr(lathe, field))
        for field in COLUMNS.values()
        if field not in {"workshop", "speeds", "draw_bars"}
    } | {
        "workshop": lathe.workshop.name,
        "speeds": write_speed_settings(lathe.speeds, "; "),
        "draw_bars": write_own_draw_bars(lathe.draw_bars, "; "),
    }


def fields_of_form(form: LatheRowForm) -> dict[str, str]:
    """The same for what a good form would make of the lathe, which is not written yet."""
    return {field: _text(form.cleaned_data.get(field)) for field in COLUMNS.values()} | {
        "workshop": form.cleaned_data["workshop"].name,
        "speeds": write_speed_settings(form.cleaned_data["speeds"], "; "),
        "draw_bars": write_own_draw_bars(form.cleaned_data["draw_bars"], "; "),
    }


def _text(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    typed = getattr(value, "typed", None)
    return str(value) if typed is None else str(typed)
