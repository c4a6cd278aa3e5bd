"""One form for any record of a recipe, its fields made from the description of the dataclasses."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from projects.library.domain.materials import BlankNeed
from projects.library.domain.places import place_of
from projects.library.forms.draft import DraftForm
from projects.library.forms.groups import Group, is_empty, made
from projects.library.forms.members import field_for
from projects.library.forms.offers import Offers

# A figure of the tables goes with the wood or finish that it belongs to.
FIGURES = (("species", "density_kg_per_m3"), ("finish", "spread_cm2_per_ml"))


class RecordForm(DraftForm):
    """Everything of a record that is typed, chosen or ticked; `record` is the record it makes."""

    def __init__(self, data: Any, group: Group, offers: Offers, revision: int | None) -> None:
        initial = dict(_initial(group, offers.current))
        super().__init__(data, initial={"revision": revision, **initial})
        self.group, self.offers = group, offers
        for name, of, member in group.fields():
            self.fields[name] = field_for(of, member, offers, initial[name])

    def clean(self) -> dict[str, Any]:
        """A group that may be empty is either empty or whole."""
        cleaned = super().clean() or self.cleaned_data
        for group in self.group.groups:
            if group.may_be_empty and not group.is_empty(cleaned):
                self._check_whole(group)
        return cleaned

    def _check_whole(self, group: Group) -> None:
        for name, _of, member in group.fields():
            if member.required and name not in self.errors and is_empty(self.cleaned_data.get(name)):
                self.add_error(name, self.fields[name].error_messages["required"])

    def record(self, new: Mapping[str, Any]) -> Any:
        """The record that was typed; `new` holds what no field of a new one asks for."""
        current = self.offers.current
        return settled(made(self.group, self.cleaned_data, current, new), current)

    def field_at(self, path: str) -> str | None:
        """The field that an error means by its path in the recipe, None where it is not on this form."""
        place, here = place_of(path), self.offers.place
        inner = [step for step in place[len(here) :] if isinstance(step, str)]
        name = "-".join(inner)
        return name if place[: len(here)] == here and name in self.fields else None


def _initial(group: Group, current: object) -> Iterator[tuple[str, Any]]:
    """What stands in each field at first: the value there is, or the usual one."""
    for member in group.members:
        usual = None if member.required else getattr(group.record, member.name)
        yield group.prefix + member.name, getattr(current, member.name, usual)
    for inner in group.groups:
        yield from _initial(inner, getattr(current, inner.name, None))


def settled(record: Any, before: object) -> Any:
    """The record without a density or spread that was another wood's or finish's."""
    if isinstance(record, BlankNeed) and record.blank is not None:
        return replace(record, blank=settled(record.blank, getattr(before, "blank", None)))
    for key, figure in FIGURES:
        is_other = getattr(record, key, None) != getattr(before, key, None)
        left = getattr(record, figure, None)
        if is_other and left is not None and left == getattr(before, figure, None):
            record = replace(record, **{figure: None})
    return record
