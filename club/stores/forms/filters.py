"""Narrowing the list of articles down."""

from __future__ import annotations

from urllib.parse import urlencode

from django import forms
from django.utils.translation import gettext_lazy as _

from club.stores.models import Article

LACKS = (
    ("", _("whatever they lack")),
    ("shelf", _("nothing on the shelf")),
    ("supplier", _("no supplier")),
    ("specification", _("no specification met")),
)


class ArticleFilterForm(forms.Form):
    """What of the stores one wants to see."""

    q = forms.CharField(label=_("words"), required=False, max_length=80)
    kind = forms.ChoiceField(
        label=_("kind"), required=False, choices=[("", _("every kind")), *Article.Kind.choices]
    )
    lacks = forms.ChoiceField(label=_("what is missing"), required=False, choices=LACKS)

    @property
    def wanted(self) -> dict[str, str]:
        """What could be read of it."""
        self.is_valid()
        return {name: value for name, value in self.cleaned_data.items() if value}

    @property
    def narrowed(self) -> str:
        """The query that leads to the same articles on another page, without the page."""
        return "".join(
            f"{urlencode({name: self[name].value()})}&" for name in self.fields if self[name].value()
        )
