from __future__ import annotations

from typing import Any
from urllib.parse import urlencode

from django import forms
from django.utils.translation import gettext_lazy as _

from projects.library.domain.species import WoodGroup
from projects.library.sentences.woods import GROUPS
from projects.library.wood_pages import WoodRow


class WoodFilterForm(forms.Form):
    """Which woods one wants to see."""

    q = forms.CharField(label=_("name or words"), required=False, max_length=80)
    group = forms.ChoiceField(
        label=_("group"),
        required=False,
        choices=[("", _("every group")), *((group.value, word) for group, word in GROUPS.items())],
    )

    def narrow(self, rows: tuple[WoodRow, ...]) -> tuple[WoodRow, ...]:
        """Those that fit what could be read of the form: every word stands somewhere in a row."""
        self.is_valid()
        wanted: dict[str, Any] = self.cleaned_data
        words = wanted.get("q", "").casefold().split()
        group = wanted.get("group")
        return tuple(
            row
            for row in rows
            if all(word in row.words for word in words) and (not group or row.group is WoodGroup(group))
        )

    @property
    def narrowed(self) -> str:
        """The query that leads to the same woods on another page, without the page."""
        return "".join(
            f"{urlencode({name: self[name].value()})}&" for name in self.fields if self[name].value()
        )
