from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.lathes.forms.fields import reason_field
from club.lathes.models import Lathe


def check_reason(form: forms.BaseForm) -> None:
    """Whoever finds a lathe limited or out of service reads why."""
    given = form.cleaned_data
    is_limited = given.get("condition") in {Lathe.Condition.LIMITED, Lathe.Condition.OUT}
    if is_limited and not given.get("condition_reason") and "condition_reason" not in form.errors:
        form.add_error("condition_reason", gettext("Say in a few words what is wrong with it."))


class ConditionForm(forms.Form):
    condition = forms.ChoiceField(
        label=_("condition"),
        choices=Lathe.Condition.choices,
        widget=forms.RadioSelect,
        error_messages={"required": _("Say which of the three it is.")},
    )
    condition_reason = reason_field()
    revision = forms.IntegerField(widget=forms.HiddenInput)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        check_reason(self)
        return cleaned


class RemoveForm(forms.Form):
    revision = forms.IntegerField(widget=forms.HiddenInput)
