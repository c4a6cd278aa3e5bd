"""Fields that only lathes have: text to threads, settings, bars, and the workshops one may write in."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from club.lathes.domain.own_draw_bars import (
    OwnDrawBar,
    OwnDrawBarError,
    parse_own_draw_bars,
    write_own_draw_bars,
)
from club.lathes.domain.speed_settings import (
    SpeedSetting,
    SpeedSettingError,
    parse_speed_settings,
    write_speed_settings,
)
from club.lathes.domain.threads import SPINDLE_NOSES, ThreadError, parse_thread
from club.lathes.models import Lathe, Workshop
from club.lathes.sentences import (
    DATE_FOR_THREAD,
    TOO_LONG,
    own_draw_bar_sentence,
    speed_setting_sentence,
    thread_sentence,
)

# What spreadsheets make of 1-8: 01. Aug, Jan 8, 8-Jan, 2026-08-01, 01.08.2026.
DATE = re.compile(
    r"\b(?:jan|feb|m[aä]r|a[pv]r|ma[iy]|ju[nl]|aug|ao[uû]|sep|o[ck]t|nov|de[cz])|\b[0-9]{4}-[0-9]{2}-[0-9]{2}\b"
    r"|\b[0-9]{1,2}[./][0-9]{1,2}[./][0-9]{2,4}\b",
    re.IGNORECASE,
)
YES_NO = (("", _("not known")), ("yes", _("yes")), ("no", _("no")))


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
            is_date = DATE.search(text) is not None
            raise forms.ValidationError(DATE_FOR_THREAD if is_date else thread_sentence(error)) from error


class SpeedsField(forms.CharField):
    def prepare_value(self, value: Any) -> Any:
        return value if isinstance(value, str) or value is None else write_speed_settings(value, "\n")

    def clean(self, value: Any) -> tuple[SpeedSetting, ...]:
        text = super().clean(value)
        try:
            return parse_speed_settings(text)
        except SpeedSettingError as error:
            raise forms.ValidationError(speed_setting_sentence(error)) from error


class DrawBarsField(forms.CharField):
    def prepare_value(self, value: Any) -> Any:
        return value if isinstance(value, str) or value is None else write_own_draw_bars(value, "\n")

    def clean(self, value: Any) -> tuple[OwnDrawBar, ...]:
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
            error_messages={
                "invalid_choice": _("Write yes or no here, or leave it empty when nobody knows.")
            },
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


def taper_field(label: Any) -> forms.ChoiceField:
    return forms.ChoiceField(
        label=label,
        choices=[("", _("not known")), *Lathe.Taper.choices],
        required=False,
        error_messages={
            "invalid_choice": _("Write the taper as Morse No. 2, or no taper, or leave it empty.")
        },
        widget=forms.Select(attrs={"class": "short"}),
    )


def reason_field() -> forms.CharField:
    return forms.CharField(
        label=_("reason, or what to mind"),
        required=False,
        max_length=160,
        error_messages={"max_length": TOO_LONG},
        help_text=_("Everyone at the lathe reads it: name no person."),
    )
