"""What is in the way is shown before anything is saved, and let through only as it was read."""

from __future__ import annotations

from collections.abc import Sequence

from django import forms
from django.utils.translation import gettext

from club.classes.clashing import mark_of


class ClashForm(forms.BaseForm):
    """`clashes` are sentences; a form with some is refused until they have been ticked as they read."""

    clashes: Sequence[str] = ()

    @property
    def clash_mark(self) -> str:
        return mark_of(self.clashes)

    def show_clashes(self, clashes: Sequence[str]) -> None:
        """Refuses the form unless exactly these were ticked."""
        self.clashes = clashes
        if clashes and self.data.get("anyway") != self.clash_mark:
            self.add_error(None, gettext("Something is in the way at that time. Read it, then decide."))
