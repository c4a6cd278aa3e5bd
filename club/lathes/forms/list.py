from __future__ import annotations

from typing import Any
from urllib.parse import urlencode

from django import forms
from django.db.models import QuerySet
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.base.csv_rows import MOST_BYTES, CsvError, decode
from club.lathes.models import Lathe, Workshop
from club.lathes.models.lathe import LatheQuerySet
from club.lathes.sentences import csv_sentence


class LatheListForm(forms.Form):
    """A list of lathes, as a file or as typed lines; a file given takes the place of the lines."""

    file = forms.FileField(
        label=_("file"),
        required=False,
        help_text=_("CSV as a spreadsheet saves it, up to 1 MB. Or write the lines below."),
    )
    lines = forms.CharField(
        label=_("lines"),
        required=False,
        strip=False,
        widget=forms.Textarea(attrs={"rows": 10, "class": "wide", "spellcheck": "false"}),
        help_text=_("The first line names the columns. What a file held stands here too, to be mended here."),
    )

    def clean_file(self) -> str:
        upload = self.cleaned_data["file"]
        if not upload:
            return ""
        if upload.size > MOST_BYTES:
            raise forms.ValidationError(csv_sentence(CsvError("too_large", most=MOST_BYTES)))
        try:
            return decode(upload.read())
        except CsvError as error:
            raise forms.ValidationError(csv_sentence(error)) from error

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        cleaned["text"] = cleaned.get("file") or cleaned.get("lines") or ""
        if cleaned.get("file"):
            # The page comes back with the lines of the file, so that they can be mended there.
            self.data = {**self.data, "lines": cleaned["text"]}
        if not self.errors and not cleaned["text"].strip():
            self.add_error("file", gettext("Choose a file, or write the lines below."))
        return cleaned


class LatheFilterForm(forms.Form):
    """What of the list of lathes one wants to see."""

    q = forms.CharField(label=_("number or words"), required=False, max_length=80)
    workshop = forms.ModelChoiceField(
        Workshop.objects.none(), label=_("workshop"), required=False, empty_label=_("every workshop")
    )
    condition = forms.ChoiceField(
        label=_("condition"), required=False, choices=[("", _("any condition")), *Lathe.Condition.choices]
    )

    def __init__(self, data: Any, workshops: QuerySet[Workshop]) -> None:
        super().__init__(data)
        field = self.fields["workshop"]
        assert isinstance(field, forms.ModelChoiceField)
        field.queryset = workshops

    def narrow(self, lathes: LatheQuerySet) -> LatheQuerySet:
        """Those of the lathes that fit what could be read of the form."""
        self.is_valid()
        wanted = self.cleaned_data
        if wanted.get("workshop"):
            lathes = lathes.filter(workshop=wanted["workshop"])
        if wanted.get("condition"):
            lathes = lathes.filter(condition=wanted["condition"])
        return lathes.matching(wanted["q"]) if wanted.get("q") else lathes

    @property
    def narrowed(self) -> str:
        """The query that leads to the same lathes on another page, without the page."""
        return "".join(
            f"{urlencode({name: self[name].value()})}&" for name in self.fields if self[name].value()
        )
