from __future__ import annotations

import zoneinfo
from typing import Any

from django import forms
from django.conf import settings
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.lathes.domain.opening_hours import OpeningError, parse_openings, write_openings
from club.lathes.models import Workshop
from club.lathes.sentences import TOO_LONG, opening_sentence

NAME_TAKEN = _("There is a workshop of this name already: give this one another.")


class WorkshopForm(forms.ModelForm[Workshop]):
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    class Meta:
        model = Workshop
        fields = ("name", "address", "zone", "opening")
        help_texts = {
            "zone": _("Dates and times of classes here are kept in it. Write it as Europe/Dublin."),
            "opening": _(
                "When somebody can work here before a class, a line to each stretch: Mon 18:00-22:00 or "
                "Mon-Fri 9:00-17:00. Empty: at any hour."
            ),
        }
        widgets = {
            "address": forms.Textarea(attrs={"rows": 3}),
            "opening": forms.Textarea(attrs={"rows": 4, "class": "short"}),
        }
        error_messages = {
            "name": {
                "required": _("A workshop needs a name, as people call it."),
                "unique": NAME_TAKEN,
                "max_length": TOO_LONG,
            },
            "address": {"max_length": TOO_LONG},
            "opening": {"max_length": TOO_LONG},
            "zone": {"required": _("Write the time zone as Europe/Dublin or America/Chicago.")},
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        # The zone nobody set is no offer: it would be saved unseen, and every class would start wrong.
        if not self.instance.zone and settings.TIME_ZONE != "UTC":
            self.initial["zone"] = settings.TIME_ZONE
        self.fields["revision"].initial = self.instance.revision

    def clean_name(self) -> str:
        """Lists name a workshop in whatever case, so two that differ in capitals only would be mistaken."""
        name = str(self.cleaned_data["name"])
        others = Workshop.objects.exclude(pk=self.instance.pk).values_list("name", flat=True)
        if name.casefold() in {other.casefold() for other in others}:
            raise forms.ValidationError(NAME_TAKEN)
        return name

    def clean_zone(self) -> str:
        zone = str(self.cleaned_data["zone"])
        if zone not in zoneinfo.available_timezones():
            raise forms.ValidationError(gettext("Write the time zone as Europe/Dublin or America/Chicago."))
        return zone

    def clean_opening(self) -> str:
        """Kept as it is read, so that the page shows what was understood."""
        try:
            return write_openings(parse_openings(str(self.cleaned_data["opening"])))
        except OpeningError as error:
            raise forms.ValidationError(opening_sentence(error)) from error
