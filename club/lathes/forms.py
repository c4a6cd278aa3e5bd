"""Text to typed values for lathes and workshops; every message about bad input."""

from __future__ import annotations

import zoneinfo
from collections.abc import Sequence
from typing import Any
from urllib.parse import urlencode

from django import forms
from django.conf import settings
from django.urls import reverse
from django.utils.html import format_html
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.base.csv_rows import MOST_BYTES, CsvError, decode
from club.base.fields import RpmFormField
from club.lathes.domain.own_draw_bars import OwnDrawBar, OwnDrawBarError, parse_own_draw_bars, write_own_draw_bars
from club.lathes.domain.speed_settings import (
    SpeedSetting,
    SpeedSettingError,
    parse_speed_settings,
    write_speed_settings,
)
from club.lathes.domain.threads import SPINDLE_NOSES, ThreadError, parse_thread
from club.lathes.models import Lathe, Workshop
from club.lathes.models.lathe import HIGHEST_NUMBER, LatheQuerySet
from club.lathes.list_sentences import csv_sentence
from club.lathes.sentences import own_draw_bar_sentence, speed_setting_sentence, thread_sentence

YES_NO = (("", _("not known")), ("yes", _("yes")), ("no", _("no")))
# Fields that the page "Where to measure" explains, each under its own name.
MEASURED = (
    "headstock_taper",
    "tailstock_taper",
    "nose_thread",
    "register_diameter",
    "register_length",
    "through_bore",
    "nose_to_handwheel",
    "draw_bars",
    "swing_over_bed",
    "swing_over_banjo",
    "centres_greatest",
    "centres_least",
    "speeds",
    "plate_speed",
    "reverse",
    "spindle_lock",
    "no_volt_release",
    "low_stand",
)


class NoseInput(forms.TextInput):
    """A text field that offers the noses met on wood lathes."""

    template_name = "club/lathes/forms/nose_input.html"

    def get_context(self, name: str, value: Any, attrs: dict[str, Any] | None) -> dict[str, Any]:
        context = super().get_context(name, value, attrs)
        context["noses"] = [thread.designation for thread in SPINDLE_NOSES]
        return context


class NoseThreadField(forms.CharField):
    widget = NoseInput

    def clean(self, value: Any) -> str:
        text = super().clean(value)
        if not text:
            return ""
        try:
            return parse_thread(text).designation
        except ThreadError as error:
            raise forms.ValidationError(thread_sentence(error)) from error


class SpeedsField(forms.CharField):
    def prepare_value(self, value: Any) -> Any:
        return value if isinstance(value, str) or value is None else write_speed_settings(value, "\n")

    def clean(self, value: Any) -> tuple[SpeedSetting, ...]:  # type: ignore[override]
        text = super().clean(value)
        try:
            return parse_speed_settings(text)
        except SpeedSettingError as error:
            raise forms.ValidationError(speed_setting_sentence(error)) from error


class DrawBarsField(forms.CharField):
    def prepare_value(self, value: Any) -> Any:
        return value if isinstance(value, str) or value is None else write_own_draw_bars(value, "\n")

    def clean(self, value: Any) -> tuple[OwnDrawBar, ...]:  # type: ignore[override]
        text = super().clean(value)
        try:
            return parse_own_draw_bars(text)
        except OwnDrawBarError as error:
            raise forms.ValidationError(own_draw_bar_sentence(error)) from error


class NumberField(forms.IntegerField):
    """A whole number in the digits that are painted on a lathe: 0 to 9."""

    def to_python(self, value: Any) -> int | None:
        if isinstance(value, str) and not value.strip().isascii():
            raise forms.ValidationError(self.error_messages["invalid"], code="invalid")
        return super().to_python(value)


class YesNoField(forms.TypedChoiceField):
    def __init__(self, **kwargs: Any) -> None:
        super().__init__(
            choices=YES_NO,
            coerce=lambda word: word == "yes",
            empty_value=None,
            required=False,
            error_messages={"invalid_choice": _("Write yes or no here, or leave it empty when nobody knows.")},
            widget=forms.Select(attrs={"class": "short"}),
            **kwargs,
        )

    def prepare_value(self, value: Any) -> Any:
        return {True: "yes", False: "no"}.get(value, value) if isinstance(value, bool) else value


class WorkshopChoiceField(forms.TypedChoiceField):
    """A workshop out of those the reader may write in, without a query for every form."""

    def offer(self, workshops: Sequence[Workshop]) -> None:
        self._workshops = {str(workshop.pk): workshop for workshop in workshops}
        self.choices = [(key, workshop.name) for key, workshop in self._workshops.items()]
        self.coerce = self._workshops.__getitem__

    def prepare_value(self, value: Any) -> Any:
        return value.pk if isinstance(value, Workshop) else value


def _taper_field(label: Any) -> forms.ChoiceField:
    return forms.ChoiceField(
        label=label,
        choices=[("", _("not known")), *Lathe.Taper.choices],
        required=False,
        error_messages={"invalid_choice": _("Write the taper as Morse No. 2, or no taper, or leave it empty.")},
        widget=forms.Select(attrs={"class": "short"}),
    )


class LatheForm(forms.ModelForm[Lathe]):
    workshop = WorkshopChoiceField(
        label=_("workshop"), error_messages={"required": _("Say which workshop it stands in.")}
    )
    number = NumberField(
        label=_("number"),
        min_value=1,
        max_value=HIGHEST_NUMBER,
        widget=forms.TextInput(attrs={"class": "short", "inputmode": "numeric"}),
        help_text=_("The one painted on it. No two in a workshop share one."),
        error_messages={
            "required": _("A lathe needs a number: write a whole one, as 7."),
            "invalid": _("Write the number as a whole one from 1 to 999, as 7."),
            "min_value": _("Write the number as a whole one from 1 to 999, as 7."),
            "max_value": _("Write the number as a whole one from 1 to 999, as 7."),
        },
    )
    headstock_taper = _taper_field(_("headstock taper"))
    tailstock_taper = _taper_field(_("tailstock taper"))
    nose_thread = NoseThreadField(
        label=_("nose thread"),
        required=False,
        max_length=40,
        help_text=_("Diameter and threads an inch, as 1-8 or 1 1/4-8; or metric, as M33 x 3.5."),
    )
    speeds = SpeedsField(
        label=_("speeds"),
        required=False,
        max_length=600,
        widget=forms.Textarea(attrs={"rows": 5, "class": "short"}),
        help_text=_("One setting to a line, slowest first: belt 1: 620, or belt 2: 250-1 450, or dial: 250-3 200."),
    )
    draw_bars = DrawBarsField(
        label=_("its own draw bars"),
        required=False,
        max_length=600,
        widget=forms.Textarea(attrs={"rows": 2, "class": "short"}),
        help_text=_("One to a line, name, thread, length: A: 3/8-16, 14 1/4 in"),
    )
    plate_speed = RpmFormField(
        label=_("greatest speed on the plate"), required=False, help_text=_("In rpm, as 3 200.")
    )
    reverse = YesNoField(label=_("runs in reverse"))
    spindle_lock = YesNoField(label=_("spindle lock"))
    no_volt_release = YesNoField(
        label=_("no-volt release"), help_text=_("After a power cut it stays off until it is switched on again.")
    )
    low_stand = YesNoField(label=_("low stand"), help_text=_("Can be worked from a chair."))
    condition = forms.ChoiceField(
        label=_("condition"),
        choices=Lathe.Condition.choices,
        widget=forms.RadioSelect,
        error_messages={
            "invalid_choice": _("Write the condition as in service, limited or out of service."),
            "required": _("Write the condition as in service, limited or out of service."),
        },
    )
    condition_reason = forms.CharField(
        label=_("reason, or what to mind"),
        required=False,
        max_length=160,
        help_text=_("Everyone at the lathe reads it: name no person."),
    )
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    class Meta:
        model = Lathe
        fields = (*Lathe.change_fields,)

    def __init__(self, *args: Any, workshops: Sequence[Workshop], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self._offer(workshops)
        if self.instance.pk:
            self.initial |= {
                "speeds": self.instance.speeds,
                "draw_bars": self.instance.draw_bars,
                "revision": self.instance.revision,
                "workshop": self.instance.workshop_id,
            }
        self.initial.setdefault("condition", Lathe.Condition.IN_SERVICE)

    def _offer(self, workshops: Sequence[Workshop]) -> None:
        field = self.fields["workshop"]
        assert isinstance(field, WorkshopChoiceField)
        field.offer(workshops)

    def link_to_measuring(self) -> LatheForm:
        """Each measured field says where to measure it; the page opens beside, so nothing typed goes."""
        for name in MEASURED:
            field = self.fields[name]
            field.help_text = format_html(
                '{} <a href="{}#{}" target="_blank" rel="noopener">{}<span class="hidden"> {}</span></a>',
                field.help_text,
                reverse("lathes:measuring"),
                name,
                gettext("where to measure"),
                gettext("%(field)s, opens beside this page") % {"field": field.label},
            )
        return self

    def _get_validation_exclusions(self) -> set[str]:
        """All of it: these fields and `clean` check everything, and the model would ask the database for each line."""
        return {field.name for field in Lathe._meta.fields}

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        self._check_number()
        self._check_reach()
        self._check_bore()
        if cleaned.get("condition") not in {None, Lathe.Condition.IN_SERVICE} and not cleaned.get("condition_reason"):
            if "condition_reason" not in self.errors:
                self.add_error("condition_reason", gettext("Say in a few words what is wrong with it."))
        return cleaned

    def number_is_taken(self) -> bool:
        workshop, number = self.cleaned_data["workshop"], self.cleaned_data["number"]
        return Lathe.objects.filter(workshop=workshop, number=number).exclude(pk=self.instance.pk).exists()

    def _check_number(self) -> None:
        if {"workshop", "number"} <= self.cleaned_data.keys() and self.number_is_taken():
            sentence = gettext("%(workshop)s has a lathe %(number)s already: give this one another number.")
            self.add_error("number", sentence % self.cleaned_data)

    def _check_reach(self) -> None:
        """The lesser of two measures can't be the greater one."""
        pairs = (
            ("centres_least", "centres_greatest", _("The least distance is more than the greatest: look at both again.")),
            ("swing_over_banjo", "swing_over_bed", _("It can't swing more over the banjo than over the bed: look at both again.")),
        )
        for lesser, greater, sentence in pairs:
            low, high = self.cleaned_data.get(lesser), self.cleaned_data.get(greater)
            if low is not None and high is not None and low.nm > high.nm:
                self.add_error(lesser, sentence)

    def _check_bore(self) -> None:
        bore, nose = self.cleaned_data.get("through_bore"), self.cleaned_data.get("nose_thread")
        if bore is not None and nose and bore.nm >= parse_thread(nose).major_nm:
            sentence = gettext("A bore as wide as the nose thread (%(nose)s) leaves no spindle: measure it again.")
            self.add_error("through_bore", sentence % {"nose": nose})


class LatheRowForm(LatheForm):
    """The same form for a line of a list, where a number already there means: mend that lathe."""

    def number_is_taken(self) -> bool:
        return False


class ConditionForm(forms.Form):
    condition = forms.ChoiceField(
        label=_("condition"),
        choices=Lathe.Condition.choices,
        widget=forms.RadioSelect,
        error_messages={"required": _("Say which of the three it is.")},
    )
    condition_reason = forms.CharField(
        label=_("reason, or what to mind"),
        required=False,
        max_length=160,
        help_text=_("Everyone at the lathe reads it: name no person."),
    )
    revision = forms.IntegerField(widget=forms.HiddenInput)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if cleaned.get("condition") in {Lathe.Condition.LIMITED, Lathe.Condition.OUT}:
            if not cleaned.get("condition_reason") and "condition_reason" not in self.errors:
                self.add_error("condition_reason", gettext("Say in a few words what is wrong with it."))
        return cleaned


class RemoveForm(forms.Form):
    revision = forms.IntegerField(widget=forms.HiddenInput)


class WorkshopForm(forms.ModelForm[Workshop]):
    class Meta:
        model = Workshop
        fields = ("name", "address", "zone")
        widgets = {"address": forms.Textarea(attrs={"rows": 3})}
        error_messages = {
            "name": {
                "required": _("A workshop needs a name, as people call it."),
                "unique": _("There is a workshop of this name already: give this one another."),
            },
            "zone": {"required": _("Write the time zone as Europe/Dublin or America/Chicago.")},
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["zone"].initial = settings.TIME_ZONE

    def clean_zone(self) -> str:
        zone = str(self.cleaned_data["zone"])
        if zone not in zoneinfo.available_timezones():
            raise forms.ValidationError(gettext("Write the time zone as Europe/Dublin or America/Chicago."))
        return zone


class LatheListForm(forms.Form):
    """A list of lathes, as a file or as typed lines; a file given takes the place of the lines."""

    file = forms.FileField(
        label=_("file"), required=False, help_text=_("CSV as a spreadsheet saves it, up to 1 MB.")
    )
    lines = forms.CharField(
        label=_("lines"),
        required=False,
        strip=False,
        widget=forms.Textarea(attrs={"rows": 10, "class": "wide", "spellcheck": "false"}),
        help_text=_("The first line names the columns. What a file held stands here too, so that it can be mended here."),
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
        # The page comes back with the lines of the file, so that they can be mended there.
        self.data = {**self.data.dict(), "lines": cleaned["text"]}
        if not self.errors and not cleaned["text"].strip():
            self.add_error("file", gettext("Choose a file, or write the lines below."))
        return cleaned


class LatheFilterForm(forms.Form):
    """What of the list of lathes one wants to see."""

    q = forms.CharField(label=_("number or words"), required=False, max_length=80)
    workshop = forms.ModelChoiceField(
        Workshop.objects.all(), label=_("workshop"), required=False, empty_label=_("every workshop")
    )
    condition = forms.ChoiceField(
        label=_("condition"), required=False, choices=[("", _("any condition")), *Lathe.Condition.choices]
    )

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
        return "".join(f"{urlencode({name: self[name].value()})}&" for name in self.fields if self[name].value())
