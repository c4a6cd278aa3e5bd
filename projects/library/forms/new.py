"""The form that a project begins with."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any, cast

from django import forms
from django.utils.text import capfirst
from django.utils.translation import gettext_lazy as _

from club.base.quantities.length import Length
from projects.library.domain.beginning import begun, cylinder, nothing_yet
from projects.library.domain.blank import Blank, RoundBlank, SlabBlank, SquareBlank
from projects.library.domain.holding import (
    BetweenCentres,
    Collet,
    Faceplate,
    JamChuck,
    Mandrel,
    ScrewChuck,
    ScrollChuck,
    TaperOnly,
)
from projects.library.domain.keys import key_from
from projects.library.domain.mountings import Mounting
from projects.library.domain.quantity_form import QUANTITIES
from projects.library.domain.recipe import Recipe
from projects.library.domain.structure import Member, kind_of, members
from projects.library.forms.fields import QuantityField
from projects.library.forms.groups import Group, fields_of, group_of, made
from projects.library.forms.members import field_for
from projects.library.forms.offers import Offers
from projects.library.forms.spots import first_step
from projects.library.models import Project
from projects.library.sentences.drafting import TITLE_TAKEN
from projects.library.sentences.fields import kind_choice

# A heading, and the fields under it.
Headed = tuple[Any, tuple[forms.BoundField, ...]]
BLANKS = (SquareBlank, RoundBlank, SlabBlank)
HOLDINGS = (
    BetweenCentres,
    ScrollChuck,
    Faceplate,
    ScrewChuck,
    Collet,
    Mandrel,
    JamChuck,
    TaperOnly,
)


class KindsForm(forms.Form):
    """What the wood is and how it is held first, since the fields depend on both."""

    blank = forms.ChoiceField(label=_("wood"), widget=forms.RadioSelect)
    held = forms.ChoiceField(label=_("held first"), widget=forms.RadioSelect)

    def __init__(self, data: Any) -> None:
        super().__init__(data)
        for name, kinds in (("blank", BLANKS), ("held", HOLDINGS)):
            field = self.fields[name]
            assert isinstance(field, forms.ChoiceField)
            field.choices = [(kind_of(kind), capfirst(str(kind_choice(kind)))) for kind in kinds]

    def kinds(self) -> tuple[type, type]:
        return _kind(BLANKS, self.cleaned_data["blank"]), _kind(HOLDINGS, self.cleaned_data["held"])


def _kind(kinds: Iterable[type], word: str) -> type:
    return next(kind for kind in kinds if kind_of(kind) == word)


class NewProjectForm(forms.Form):
    """Title, wood, size and first mounting: as much as a recipe can't be without."""

    piece_length = QuantityField(QUANTITIES[Length], above=True, label=_("length of the piece"))
    piece_diameter = QuantityField(QUANTITIES[Length], above=True, label=_("greatest diameter"))

    def __init__(self, data: Any, blank: type, holding: type) -> None:
        super().__init__(data)
        self.held_as = holding
        self.about = Group(Recipe, "", "", _named(Recipe, "title", "summary"))
        wood = group_of(blank, prefix="blank-")
        self.wood = replace(wood, members=tuple(member for member in wood.members if member.required))
        mounting = group_of(Mounting, chosen=holding)
        held = tuple(group for group in mounting.groups if group.name == "holding")
        self.mounting = replace(mounting, members=_named(Mounting, "stands_out"), groups=held)
        for part in (self.about, self.wood, self.mounting):
            for name, group, member in part.fields():
                self.fields[name] = field_for(group, member, Offers(nothing_yet(), ()), None)

    def clean_title(self) -> str:
        title: str = self.cleaned_data["title"]
        if Project.objects.filter(key=project_key(title)).exists():
            raise forms.ValidationError(TITLE_TAKEN, "taken")
        return title

    def recipe(self) -> Recipe:
        """What was given as a recipe; the piece is a plain cylinder until its marks are typed."""
        given = self.cleaned_data
        title = capfirst(str(kind_choice(self.held_as)))
        key = key_from(title, (), "mounting")
        new = {"key": key, "title": title, "minutes": 0, "steps": (first_step({key}),)}
        return begun(
            project_key(given["title"]),
            given["title"],
            given["summary"],
            cast(Blank, made(self.wood, given, None, {})),
            cylinder(given["piece_length"], given["piece_diameter"]),
            cast(Mounting, made(self.mounting, given, None, new)),
        )

    def columns(self) -> tuple[tuple[Headed, ...], ...]:
        """The fields under their headings, in two columns."""
        piece = (self["piece_length"], self["piece_diameter"])
        (holding,) = self.mounting.groups
        held = (*fields_of(self, holding), *fields_of(self, self.mounting))
        return (
            ((_("What it is"), fields_of(self, self.about)), (_("Piece"), piece)),
            ((_("Blank"), fields_of(self, self.wood)), (_("Held first"), held)),
        )


def project_key(title: str) -> str:
    return key_from(title, (), "project")


def _named(record: type, *names: str) -> tuple[Member, ...]:
    return tuple(member for member in members(record) if member.name in names)
