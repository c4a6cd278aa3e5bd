from __future__ import annotations

from django import forms


class RevisionForm(forms.Form):
    """A question with one answer: the revision says to which state of the draft."""

    revision = forms.IntegerField(widget=forms.HiddenInput)
