"""What lies on the shelf: counted for the first time, or anew."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from club.base.fields import LengthFormField
from club.base.quantities.shown import unbroken
from club.stores.forms.sizes import amount_field, kept, measured, size_fields
from club.stores.kinds import CUT_BEFOREHAND, SIZES, Kind
from club.stores.models import Held
from club.stores.sentences.forms import CUT_FOR_HELP, NOT_CUT, SIZES_OF_CUT
from projects.library.domain.bounds import Text, Whole
from projects.library.forms.fields import RecipeTextField, WholeField
from projects.library.sentences.drafting import CHOOSE

WETTEST = 200


class HeldForm(forms.Form):
    """Asks only for what its kind has. `met` are the specifications for which some may have been cut.

    The revision is that of the row, or of the article for a row that is new.
    """

    revision = forms.IntegerField(widget=forms.HiddenInput)

    def __init__(self, data: Any, held: Held, met: Iterable[str]) -> None:
        self.held, self.kind = held, held.article.kind
        super().__init__(data, initial=_initial(held))
        cut_for = [*dict.fromkeys((*met, *([held.cut_for] if held.cut_for else [])))]
        is_cut = self.kind in CUT_BEFOREHAND and bool(cut_for)
        self.fields["amount"] = amount_field(self.kind)
        if is_cut:
            self.fields["cut_for"] = _cut_for(cut_for)
        self.fields.update(size_fields(self.kind, required=not is_cut))
        self.fields.update(_particulars(self.kind))

    @property
    def counted(self) -> Iterator[forms.BoundField]:
        """What somebody counts at the shelf."""
        return (self[name] for name in ("amount", "fit"))

    @property
    def described(self) -> Iterator[forms.BoundField]:
        """How it is told from others."""
        return (field for field in self.visible_fields() if field.name not in {"amount", "fit"})

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if "cut_for" not in self.fields or "cut_for" in self.errors:
            return cleaned
        is_cut = bool(cleaned["cut_for"])
        typed = [name for name in SIZES[self.kind] if cleaned.get(name) or name in self.errors]
        if is_cut and typed:
            self.add_error("cut_for", str(SIZES_OF_CUT))
        for name in SIZES[self.kind]:
            if not is_cut and name not in typed:
                self.add_error(name, self.fields[name].error_messages["required"])
        return cleaned

    def filled(self) -> Held:
        """The row as it was typed, not saved."""
        given = dict(self.cleaned_data)
        del given["revision"]
        amount, typed = kept(given.pop("amount"))
        return Held(pk=self.held.pk, article=self.held.article, amount=amount, amount_typed=typed, **given)


def _initial(held: Held) -> dict[str, Any]:
    if held.pk is None:
        return {"revision": held.article.revision, "fit": True}
    names = ("label", *SIZES.get(held.article.kind, ()), "across", "moisture", "cut_for", "fit", "where")
    amount = measured(held.article.kind, held.amount, held.amount_typed)
    return {"revision": held.revision, "amount": amount, **{name: getattr(held, name) for name in names}}


def _cut_for(specifications: Iterable[str]) -> forms.Field:
    return forms.ChoiceField(
        label=_("cut for"),
        required=False,
        choices=[("", NOT_CUT), *((each, unbroken(each)) for each in specifications)],
        help_text=CUT_FOR_HELP,
        error_messages={"invalid_choice": CHOOSE},
    )


def _particulars(kind: str) -> dict[str, forms.Field]:
    fields: dict[str, forms.Field] = {}
    if kind == Kind.LENGTH_STOCK:
        fields["across"] = LengthFormField(
            label=_("measured across"),
            required=False,
            help_text=_("With a calliper: a collet asks for it."),
        )
    if kind == Kind.BLANK:
        fields["moisture"] = WholeField(
            Whole(0, WETTEST), label=_("moisture in percent"), required=False, help_text=_("As measured.")
        )
    fields["label"] = RecipeTextField(
        Text(40, least=0),
        label=_("mark"),
        required=False,
        help_text=_("What is written on it, to tell lots apart: R1."),
    )
    fields["where"] = RecipeTextField(Text(80, least=0), label=_("where it lies"), required=False)
    fields["fit"] = forms.BooleanField(label=_("fit for use"), required=False)
    return fields
