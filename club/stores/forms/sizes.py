"""Sizes and amounts as each kind of article asks for them."""

from __future__ import annotations

from django import forms
from django.utils.translation import gettext_lazy as _

from club.base.fields import LengthFormField
from club.base.quantities.mass import Mass
from club.base.quantities.volume import Volume
from club.stores.forms.fields import MassField, VolumeField
from club.stores.kinds import SIZES, Kind, most_of
from club.stores.sentences.forms import AMOUNT, AMOUNT_HELP, COUNT_HELP, HOLDS, HOLDS_HELP
from projects.library.domain.bounds import Whole
from projects.library.forms.fields import WholeField

NAMES = {"thickness": _("thickness"), "width": _("width"), "length": _("length")}
ALONG = {"length": _("Of wood, along the grain.")}
Measured = int | Volume | Mass


def size_fields(kind: str, *, required: bool) -> dict[str, forms.Field]:
    """A field for each size that this kind has."""
    return {
        name: LengthFormField(
            label=NAMES[name],
            required=required,
            help_text=ALONG.get(name) if kind == Kind.BLANK else "",
        )
        for name in SIZES.get(kind, ())
    }


def amount_field(kind: str) -> forms.Field:
    """So much on the shelf, nought allowed."""
    if kind == Kind.LIQUID:
        return VolumeField(zero=True, label=AMOUNT[kind], help_text=AMOUNT_HELP[kind])
    if kind == Kind.ADHESIVE:
        return MassField(zero=True, label=AMOUNT[kind], help_text=AMOUNT_HELP[kind])
    return WholeField(Whole(0, most_of(kind)), label=AMOUNT[kind], help_text=COUNT_HELP)


def holds_field(kind: str) -> forms.Field:
    """So much in a pack of a kind that is sold in packs."""
    if kind == Kind.LIQUID:
        return VolumeField(label=HOLDS[kind], help_text=HOLDS_HELP[kind])
    if kind == Kind.ADHESIVE:
        return MassField(label=HOLDS[kind], help_text=HOLDS_HELP[kind])
    return WholeField(Whole(1, most_of(kind)), label=HOLDS[kind])


def measured(kind: str, amount: int, typed: str) -> Measured:
    """What is kept as a whole number and a text, as the field of this kind has it."""
    if kind == Kind.LIQUID:
        return Volume(amount, typed)
    return Mass(amount, typed) if kind == Kind.ADHESIVE else amount


def kept(value: Measured) -> tuple[int, str]:
    """The whole number that is kept of it, and the text."""
    if isinstance(value, Volume):
        return value.nl, value.typed
    return (value.ng, value.typed) if isinstance(value, Mass) else (value, "")
