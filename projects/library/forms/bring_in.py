"""The form that a library or an edition comes in by."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from projects.library.domain.errors import RecipeError
from projects.library.domain.library_form import MOST_BYTES
from projects.library.sentences.errors import error_sentence
from projects.library.sentences.exchange import CHOOSE

# What a page carries on from one press to the next; a longer file is chosen once more.
MOST_CARRIED = 2_000_000


class BringInForm(forms.Form):
    """A file that was taken away, or its text; a file given takes the place of the text."""

    file = forms.FileField(
        label=_("file"),
        required=False,
        help_text=_("JSON as a library is taken away, up to 10\u00a0MB. Or put its text below."),
    )
    # A plain field: what is no text at all is refused by whoever reads the JSON.
    text = forms.Field(
        label=_("text"),
        required=False,
        widget=forms.Textarea(attrs={"rows": 10, "class": "wide", "spellcheck": "false"}),
        help_text=_("What a file held stands here too, so that it needn't be chosen again."),
    )

    def clean_file(self) -> bytes:
        upload = self.cleaned_data["file"]
        if not upload:
            return b""
        if upload.size > MOST_BYTES:
            raise forms.ValidationError(error_sentence(RecipeError("huge", most=MOST_BYTES)))
        data: bytes = upload.read()
        return data

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        typed = str(cleaned.get("text") or "")
        cleaned["data"] = cleaned.get("file") or typed.encode("utf-8", "surrogatepass")
        if cleaned.get("file"):
            self.data = {**self.data, "text": _carried(cleaned["file"])}
        if not self.errors and not cleaned["data"].strip():
            self.add_error("file", str(CHOOSE))
        return cleaned

    @property
    def is_to_be_chosen_again(self) -> bool:
        """Whether the file is too long to come back with the page."""
        return bool(self.is_bound and self.cleaned_data.get("file") and not self.data.get("text"))


def _carried(data: bytes) -> str:
    """The text of a file, where the page can carry it back; nothing for what is no text."""
    if len(data) > MOST_CARRIED:
        return ""
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return ""
