"""The one question before anything is printed."""

from __future__ import annotations

from django import forms
from django.utils.translation import gettext_lazy as _

from club.base.printing import Paper


class PaperForm(forms.Form):
    """On which paper."""

    paper = forms.ChoiceField(
        label=_("paper"),
        choices=[(Paper.A4, _("A4")), (Paper.LETTER, _("Letter"))],
        initial=Paper.A4,
        widget=forms.RadioSelect,
        error_messages={"invalid_choice": _("Choose A4 or Letter."), "required": _("Choose A4 or Letter.")},
    )
