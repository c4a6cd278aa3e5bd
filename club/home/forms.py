from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from club.base.printing import Paper
from club.lathes.models import Lathe
from club.lathes.models.lathe import LatheQuerySet

# Four cards a sheet: 25 sheets, a few seconds of work for the server.
MOST_CARDS = 100


class LathesField(forms.ModelMultipleChoiceField[Lathe]):
    def clean(self, value: Any) -> Any:
        try:
            return super().clean(value)
        except OverflowError as error:
            # A number that no row can have; Django asks SQLite for it all the same.
            raise forms.ValidationError(self.error_messages["invalid_choice"]) from error


class CardsForm(forms.Form):
    """Which lathes' cards, on which paper."""

    lathe = LathesField(
        Lathe.objects.none(),
        label=_("lathes"),
        widget=forms.CheckboxSelectMultiple,
        error_messages={
            "required": _("Tick the lathes whose cards are wanted."),
            "invalid_choice": _("One of these lathes is not in the list any more: tick again."),
            "invalid_pk_value": _("One of these lathes is not in the list any more: tick again."),
        },
    )
    paper = forms.ChoiceField(
        label=_("paper"),
        choices=[(Paper.A4, _("A4, cards of A6")), (Paper.LETTER, _("Letter, cards of a quarter sheet"))],
        widget=forms.RadioSelect,
        error_messages={"invalid_choice": _("Choose A4 or Letter."), "required": _("Choose A4 or Letter.")},
    )

    def __init__(self, *args: Any, lathes: LatheQuerySet, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        field = self.fields["lathe"]
        assert isinstance(field, forms.ModelMultipleChoiceField)
        field.queryset = lathes
        field.label_from_instance = lambda lathe: f"{lathe}, {lathe.workshop}"  # type: ignore[assignment]

    @property
    def has_lathes(self) -> bool:
        field = self.fields["lathe"]
        assert isinstance(field, forms.ModelMultipleChoiceField)
        return bool(field.queryset and field.queryset.exists())

    def clean_lathe(self) -> list[Lathe]:
        lathes = list(self.cleaned_data["lathe"])
        if len(lathes) > MOST_CARDS:
            raise forms.ValidationError(_("At most 100 cards at a time: tick fewer."))
        return lathes
