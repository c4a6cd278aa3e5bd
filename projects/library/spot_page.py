"""The page of a spot: its fields under their headings, the kinds to choose from, and what else leads on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django import forms
from django.utils.text import Truncator

from projects.library.domain.places import part_at, write_place
from projects.library.domain.structure import ChoicePart, kind_of, members
from projects.library.forms.groups import Group, fields_of
from projects.library.forms.record import RecordForm
from projects.library.forms.spots import Spot
from projects.library.sentences.fields import field_label, kind_choice
from projects.library.sentences.places import save_words

SAID_IN = ("title", "specification", "text", "finish")


@dataclass(frozen=True)
class FieldGroup:
    """Fields under a heading, "" for the record's own. `kinds_at` is where another kind is chosen."""

    anchor: str
    heading: Any
    fields: tuple[forms.BoundField, ...]
    may_be_empty: bool
    kinds_at: str


@dataclass(frozen=True)
class KindChoice:
    """A kind by its word and its name for people."""

    word: str
    name: Any
    is_now: bool
    is_chosen: bool


@dataclass(frozen=True)
class Missing:
    """Something that may be added to the record, with the place where it would stand."""

    words: Any
    at: str


def spot_context(spot: Spot, form: RecordForm) -> dict[str, Any]:
    return {
        "form": form,
        "columns": _columns(spot, form),
        "save": save_words(spot.page),
        "missing": _missing(spot),
        "under": _under(spot),
    }


def _columns(spot: Spot, form: RecordForm) -> tuple[tuple[FieldGroup, ...], ...]:
    """The record's own fields, and beside them those of what lies inside it."""
    own, inner = _group(spot, form, spot.group), [_group(spot, form, group) for group in spot.group.groups]
    return tuple(column for column in ((own,) if own.fields else (), tuple(inner)) if column)


def _group(spot: Spot, form: RecordForm, group: Group) -> FieldGroup:
    heading = kind_choice(group.record) or (group.name and field_label(spot.group.record, group.name))
    fields, kinds_at = fields_of(form, group), _kinds_at(spot, group)
    return FieldGroup(f"id_{group.name}", heading, fields, group.may_be_empty, kinds_at)


def _kinds_at(spot: Spot, group: Group) -> str:
    """Where the kind of what is there already is chosen anew; of what is new, on this very page."""
    place = (*spot.place, group.name) if group.name else spot.place
    has_kinds = place and not spot.adding and isinstance(part_at(spot.recipe, place), ChoicePart)
    return write_place(place) if has_kinds else ""


def _missing(spot: Spot) -> list[Missing]:
    """Choices that may be made and are not."""
    if spot.current is None or not spot.place:
        return []
    return [
        Missing(field_label(spot.group.record, member.name), write_place((*spot.place, member.name)))
        for member in members(spot.group.record)
        if isinstance(member.part, ChoicePart) and getattr(spot.current, member.name, None) is None
    ]


def _under(spot: Spot) -> str:
    """Where one more entry under this one would stand."""
    if spot.adding or not spot.place or not isinstance(spot.place[-1], int):
        return ""
    return write_place((*spot.place[:-1], spot.place[-1] + 1))


def kind_choices(spot: Spot) -> list[KindChoice]:
    """Every kind; chosen beforehand is the one there is, else the first."""
    now = next((kind for kind in spot.kinds if type(spot.current) is kind), None)
    return [
        KindChoice(kind_of(kind), kind_choice(kind), kind is now, kind is (now or spot.kinds[0]))
        for kind in spot.kinds
    ]


def entry_words(thing: object) -> str:
    """What people know a record by, in a few words."""
    said = next((str(getattr(thing, name)) for name in SAID_IN if getattr(thing, name, "")), "")
    return Truncator(said).chars(160)
