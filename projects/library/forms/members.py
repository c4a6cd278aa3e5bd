"""The form field of one member of a record."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from enum import Enum
from typing import Any

from django import forms
from django.utils.translation import gettext

from projects.library.domain.structure import (
    ListPart,
    Member,
    QuantityPart,
    TextPart,
    WholePart,
    WordPart,
    YesNoPart,
)
from projects.library.forms.fields import (
    GritsField,
    Offered,
    OneOfField,
    QuantityField,
    RecipeTextField,
    SkillField,
    SkillsField,
    SomeOfField,
    WholeField,
)
from projects.library.forms.groups import Group
from projects.library.forms.offers import Offers, finishes_by_name, species, tapers, words_of
from projects.library.sentences.drafting import NOTHING_OFFERED
from projects.library.sentences.fields import field_help, field_label

# So few words are seen at a glance; more go into a list that opens.
FEW = 4

# Keys of the recipe and of the tables, by the name of the member that holds one.
ONE_KEY: Mapping[str, Callable[[Offers], Offered]] = {
    "species": lambda _offers: species(),
    "finish": lambda _offers: finishes_by_name(),
    "taper": lambda _offers: tapers(),
    "away_from": Offers.steps_here,
    "adhesive": Offers.adhesives,
}
SOME_KEYS: Mapping[str, Callable[[Offers], Offered]] = {
    "leaves_out": Offers.steps_to_leave_out,
    "after": Offers.before,
    "parts": Offers.materials,
}


def field_for(group: Group, member: Member, offers: Offers, value: Any) -> forms.Field:
    """The field of a member of this group's record; TypeError for a member that no form can hold."""
    words: dict[str, Any] = {
        "label": field_label(group.record, member.name),
        "help_text": field_help(group.record, member.name),
        "required": member.required and not group.may_be_empty,
    }
    if member.name in ONE_KEY:
        return _one_of(ONE_KEY[member.name](offers), value, **words)
    match member.part:
        case TextPart() if member.name == "skill":
            return SkillField(**words)
        case TextPart(bounds):
            return RecipeTextField(bounds, **words)
        case WholePart(bounds):
            return WholeField(bounds, **words)
        case YesNoPart():
            return forms.BooleanField(**words | {"required": False})
        case WordPart(of):
            return _word(of, value, **words)
        case QuantityPart(form, above):
            return QuantityField(form, above=above, **words)
        case ListPart():
            return _several(member, member.part, offers, value, **words)
    raise TypeError(member)


def _several(member: Member, part: ListPart, offers: Offers, value: Any, **words: Any) -> forms.Field:
    match part.entry:
        case WordPart(of):
            return SomeOfField(words_of(of), part.bounds, before=value or (), make=of, **words)
        case WholePart(each):
            return GritsField(part.bounds, each, **words)
        case TextPart() if member.name in SOME_KEYS:
            offered = _with_those(SOME_KEYS[member.name](offers), value or ())
            words["help_text"] = words["help_text"] if offered else NOTHING_OFFERED
            return SomeOfField(offered, part.bounds, before=value or (), **words)
        case TextPart():
            return SkillsField(part.bounds, **words)
    raise TypeError(member)


def _word(of: type[Enum], value: Any, *, required: bool, **words: Any) -> forms.Field:
    offered = list(words_of(of))
    if required and len(offered) <= FEW:
        return OneOfField(offered, of, required=True, widget=forms.RadioSelect, **words)
    return _one_of(offered, value, make=of, required=required, **words)


def _one_of(offered: Offered, value: Any, *, make: Any = str, required: bool, **words: Any) -> forms.Field:
    """A list to choose from, its first line for nothing chosen where that may be, or where nothing is yet."""
    every = _with_those(offered, () if value is None else (value,))
    nothing = gettext("none") if not required else gettext("choose one")
    has_line = any(key == "" for key, _label in every)
    if not has_line and not (required and value):
        every = [("", nothing), *every]
    return OneOfField(every, make, required=required, **words)


def _with_those(offered: Offered, values: tuple[Any, ...]) -> list[tuple[str, Any]]:
    """What is offered, and behind it what is there though it is not offered."""
    every = list(offered)
    known = {key for key, _label in every}
    return [*every, *((str(value), str(value)) for value in dict.fromkeys(values) if str(value) not in known)]
