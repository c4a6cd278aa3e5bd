from __future__ import annotations

from collections.abc import Iterable
from typing import Any
from urllib.parse import urlencode

from django import forms
from django.db.models import Q, QuerySet
from django.utils.translation import gettext_lazy as _

from projects.library.models import Edition, EditionWord
from projects.library.sentences.words import holding_words
from projects.library.tables import woods

Kind = EditionWord.Kind


class ProjectFilterForm(forms.Form):
    """What of the library one wants to see."""

    q = forms.CharField(label=_("words"), required=False, max_length=80)
    holding = forms.ChoiceField(label=_("held in"), required=False)
    wood = forms.ChoiceField(label=_("wood"), required=False)
    state = forms.ChoiceField(
        label=_("state"),
        required=False,
        choices=[("", _("kept or draft")), *[(s.value, s.label) for s in reversed(Edition.State)]],
    )

    def __init__(self, data: Any) -> None:
        super().__init__(data)
        used = {kind: set[str]() for kind in Kind.values}
        for kind, word in EditionWord.objects.values_list("kind", "word").distinct():
            used[kind].add(word)
        species = woods().species
        labels = {key: species[key].label if key in species else key for key in used[Kind.WOOD]}
        self._choices("holding", _("any way of holding"), holding_words(used[Kind.HOLDING]).items())
        self._choices("wood", _("any wood"), labels.items())

    def _choices(self, name: str, every: Any, words: Iterable[tuple[str, Any]]) -> None:
        field = self.fields[name]
        assert isinstance(field, forms.ChoiceField)
        field.choices = [("", every), *sorted(words, key=lambda pair: str(pair[1]))]

    def narrow(self, editions: QuerySet[Edition]) -> QuerySet[Edition]:
        """Those of the editions that fit what could be read of the form."""
        self.is_valid()
        wanted = self.cleaned_data
        for name, kind in (("holding", Kind.HOLDING), ("wood", Kind.WOOD)):
            if wanted.get(name):
                editions = editions.filter(words__kind=kind, words__word=wanted[name])
        if wanted.get("state"):
            # A draft written beside a kept edition counts: it is what somebody looks for who goes on writing.
            editions = editions.filter(project__editions__state=wanted["state"]).distinct()
        if wanted.get("q"):
            editions = editions.filter(Q(title__icontains=wanted["q"]) | Q(summary__icontains=wanted["q"]))
        return editions

    @property
    def narrowed(self) -> str:
        """The query that leads to the same projects on another page, without the page."""
        return "".join(
            f"{urlencode({name: self[name].value()})}&" for name in self.fields if self[name].value()
        )
