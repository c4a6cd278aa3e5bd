"""A supplier: where an order goes and what its way costs."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from club.stores.forms.fields import LinesField, MoneyField
from club.stores.models import Supplier
from club.stores.models.supplier import LONGEST_DELIVERY
from club.stores.sentences.forms import SUPPLIER_NAME_NEEDED, SUPPLIER_TAKEN
from projects.library.domain.bounds import Text, Whole
from projects.library.forms.fields import RecipeTextField, WholeField


class SupplierForm(forms.Form):
    name = RecipeTextField(Text(80), label=_("name"), error_messages={"required": SUPPLIER_NAME_NEEDED})
    address = LinesField(
        300, label=_("address"), required=False, help_text=_("Where an order goes: a line to each part.")
    )
    our_number = RecipeTextField(
        Text(40, least=0),
        label=_("our customer number"),
        required=False,
        help_text=_("It stands on the order."),
    )
    delivery_days = WholeField(
        Whole(0, LONGEST_DELIVERY),
        label=_("days to deliver"),
        help_text=_("From the order to the shelf. 0 where it is fetched the same day."),
    )
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    def __init__(self, data: Any, supplier: Supplier) -> None:
        self.supplier = supplier
        names = (*Supplier.change_fields, "revision")
        super().__init__(data, initial={name: getattr(supplier, name) for name in names})
        self.fields["delivery"] = MoneyField(
            label=_("delivery"), help_text=_("Paid once for each order. 0 where it is free or fetched.")
        )
        self.fields["least_order"] = MoneyField(
            label=_("least order"),
            help_text=_("What the goods have to come to. 0 where there is no least."),
        )
        self.order_fields(("name", "address", "our_number", "delivery", "least_order"))

    def clean_name(self) -> str:
        name = str(self.cleaned_data["name"])
        others = Supplier.objects.exclude(pk=self.supplier.pk).values_list("name", flat=True)
        if name.casefold() in {other.casefold() for other in others}:
            raise forms.ValidationError(SUPPLIER_TAKEN)
        return name

    def filled(self) -> Supplier:
        """The supplier as it was typed, not saved."""
        given = {name: self.cleaned_data[name] for name in Supplier.change_fields}
        return Supplier(pk=self.supplier.pk, **given)
