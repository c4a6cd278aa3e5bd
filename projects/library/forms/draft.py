"""What every form of a draft carries, and the small ones: moving an entry, taking one out."""

from __future__ import annotations

from typing import Any

from django import forms

from projects.library.domain.places import Place, PlaceError, read_place


class DraftForm(forms.Form):
    """Says which state of the draft it was opened on, and which of its fields a path in the recipe means."""

    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    def field_at(self, path: str) -> str | None:
        """The field, None where the sentence belongs on top."""
        return None


class MoveForm(DraftForm):
    """One of the words up or down, with the place of the entry that moves."""

    up = forms.CharField(required=False)
    down = forms.CharField(required=False)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        text = cleaned.get("up") or cleaned.get("down") or ""
        try:
            cleaned["place"] = read_place(text)
        except PlaceError:
            cleaned["place"] = ()
        cleaned["by"] = -1 if cleaned.get("up") else 1
        return cleaned

    def moved_to(self) -> Place:
        """Where the entry stands afterwards."""
        *before, at = self.cleaned_data["place"]
        return (*before, at + self.cleaned_data["by"])


class MovedForm(forms.Form):
    """Which entry moved last and which way, so that the keyboard goes on from it."""

    at = forms.CharField()
    by = forms.IntegerField()
