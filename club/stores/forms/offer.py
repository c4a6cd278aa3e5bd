"""An offer: a pack as one supplier sells it, with the sizes its kind has."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from club.stores.forms.fields import MoneyField
from club.stores.forms.sizes import holds_field, kept, measured, size_fields
from club.stores.kinds import SIZES
from club.stores.models import Offer, Supplier
from club.stores.sentences.forms import CHOOSE_SUPPLIER, HOLDS, PACK_NEEDED, PACK_TAKEN
from projects.library.domain.bounds import Text
from projects.library.forms.fields import RecipeTextField


class OfferForm(forms.Form):
    """`suppliers` are those to choose from; the revision is the article's."""

    revision = forms.IntegerField(widget=forms.HiddenInput)

    def __init__(self, data: Any, offer: Offer, suppliers: Iterable[Supplier]) -> None:
        self.offer, self.kind = offer, offer.article.kind
        self.suppliers = {str(supplier.pk): supplier for supplier in suppliers}
        super().__init__(data, initial=_initial(offer))
        self.fields["supplier"] = forms.ChoiceField(
            label=_("supplier"),
            choices=[("", _("choose one")), *((key, each.name) for key, each in self.suppliers.items())],
            error_messages={"required": CHOOSE_SUPPLIER, "invalid_choice": CHOOSE_SUPPLIER},
        )
        self.fields["label"] = _label()
        self.fields.update(size_fields(self.kind, required=True))
        if self.kind in HOLDS:
            self.fields["holds"] = holds_field(self.kind)
        self.fields["price"] = MoneyField(label=_("price of the pack") if self.kind in HOLDS else _("price"))

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        others = Offer.objects.filter(article=self.offer.article).exclude(pk=self.offer.pk)
        named = {"supplier": cleaned.get("supplier"), "label": cleaned.get("label")}
        if all(named.values()) and others.filter(**named).exists():
            self.add_error("label", str(PACK_TAKEN))
        return cleaned

    def filled(self) -> Offer:
        """The offer as it was typed, not saved."""
        given = self.cleaned_data
        holds, typed = kept(given.get("holds", 1))
        return Offer(
            pk=self.offer.pk,
            article=self.offer.article,
            supplier=self.suppliers[given["supplier"]],
            label=given["label"],
            holds=holds,
            holds_typed=typed,
            price=given["price"],
            **{name: given[name] for name in SIZES.get(self.kind, ())},
        )


def _initial(offer: Offer) -> dict[str, Any]:
    sizes = {name: getattr(offer, name) for name in SIZES.get(offer.article.kind, ())}
    found = {"revision": offer.article.revision, "label": offer.label, **sizes}
    if offer.pk is None:
        return found
    holds = measured(offer.article.kind, offer.holds, offer.holds_typed)
    return {**found, "supplier": str(offer.supplier_id), "price": offer.price, "holds": holds}


def _label() -> forms.Field:
    return RecipeTextField(
        Text(60),
        label=_("pack"),
        help_text=_("As the supplier calls it, with the order number if it has one."),
        error_messages={"required": PACK_NEEDED},
    )
