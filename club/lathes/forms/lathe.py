from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from django import forms
from django.urls import reverse
from django.utils.html import format_html
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.base.fields import RpmFormField
from club.lathes.domain.labelled_lines import MOST_TEXT
from club.lathes.domain.threads import parse_thread
from club.lathes.forms.condition import check_reason
from club.lathes.forms.fields import (
    DrawBarsField,
    NoseThreadField,
    NumberField,
    SpeedsField,
    WorkshopChoiceField,
    YesNoField,
    reason_field,
    taper_field,
)
from club.lathes.models import Lathe, Workshop
from club.lathes.models.lathe import HIGHEST_NUMBER
from club.lathes.sentences import TOO_LONG

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
    headstock_taper = taper_field(_("headstock taper"))
    tailstock_taper = taper_field(_("tailstock taper"))
    nose_thread = NoseThreadField(
        label=_("nose thread"),
        required=False,
        max_length=40,
        error_messages={"max_length": TOO_LONG},
        help_text=_(
            "Diameter and threads an inch, as 1-8 or 1\u00a01/4-8; or metric, as M33\u00a0x\u00a03.5."
        ),
    )
    speeds = SpeedsField(
        label=_("speeds"),
        required=False,
        max_length=MOST_TEXT,
        error_messages={"max_length": TOO_LONG},
        widget=forms.Textarea(attrs={"rows": 5, "class": "short"}),
        help_text=_(
            "One setting to a line, slowest first, "
            "as belt 1: 620, or belt 2: 250-1\u00a0450, or dial: 250-3\u00a0200."
        ),
    )
    draw_bars = DrawBarsField(
        label=_("its own draw bars"),
        required=False,
        max_length=MOST_TEXT,
        error_messages={"max_length": TOO_LONG},
        widget=forms.Textarea(attrs={"rows": 2, "class": "short"}),
        help_text=_("One to a line: name, thread, length, as A: 3/8-16, 14\u00a01/4\u00a0in."),
    )
    plate_speed = RpmFormField(
        label=_("greatest speed on the plate"), required=False, help_text=_("In rpm, as 3\u00a0200.")
    )
    reverse = YesNoField(label=_("runs in reverse"))
    spindle_lock = YesNoField(label=_("spindle lock"))
    no_volt_release = YesNoField(
        label=_("no-volt release"),
        help_text=_("After a power cut it stays off until it is switched on again."),
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
    condition_reason = reason_field()
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    # As they stand on the page, so that the message on top lists what is wrong in the order one meets it.
    field_order = ("workshop", "number", "plate", "condition", "condition_reason", *MEASURED)

    class Meta:
        model = Lathe
        fields = (*Lathe.change_fields,)
        error_messages = {"plate": {"max_length": TOO_LONG}}

    def __init__(self, *args: Any, workshops: Sequence[Workshop], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self._offer(workshops)
        if self.instance.pk:
            self.initial = {
                **self.initial,
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
            link = format_html(
                '<a href="{}#{}" target="_blank" rel="noopener">{}<span class="hidden"> {}</span></a>',
                reverse("lathes:measuring"),
                name,
                gettext("where to measure"),
                gettext("%(field)s, opens beside this page") % {"field": field.label},
            )
            field.help_text = format_html("{} {}", field.help_text, format_html(gettext("See {}."), link))
        return self

    def _get_validation_exclusions(self) -> set[str]:
        """All: fields and `clean` check everything, and the model would ask the database for each line."""
        return {field.name for field in Lathe._meta.fields}

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        self._check_number()
        self._check_reach()
        self._check_bore()
        check_reason(self)
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
            (
                "centres_least",
                "centres_greatest",
                _("The least distance is more than the greatest: look at both again."),
            ),
            (
                "swing_over_banjo",
                "swing_over_bed",
                _("It can't swing more over the banjo than over the bed: look at both again."),
            ),
        )
        for lesser, greater, sentence in pairs:
            low, high = self.cleaned_data.get(lesser), self.cleaned_data.get(greater)
            if low is not None and high is not None and low.nm > high.nm:
                self.add_error(lesser, sentence)

    def _check_bore(self) -> None:
        bore, nose = self.cleaned_data.get("through_bore"), self.cleaned_data.get("nose_thread")
        if bore is not None and nose and bore.nm >= parse_thread(nose).major_nm:
            sentence = gettext(
                "A bore as wide as the nose thread (%(nose)s) leaves no spindle: measure it again."
            )
            self.add_error("through_bore", sentence % {"nose": nose})


class LatheRowForm(LatheForm):
    """The same form for a line of a list, where a number already there means: mend that lathe."""

    def number_is_taken(self) -> bool:
        return False
