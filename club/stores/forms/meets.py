"""Which article meets which specification, asked from either side."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from django import forms
from django.http import QueryDict
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.stores.forms.article import SPECIFICATION
from club.stores.models import Article
from club.stores.sentences.forms import CHOOSE_ARTICLE, NO_SPECIFICATION
from club.stores.specifications import specification_key
from club.stores.stock_list import ArticleLine
from projects.library.forms.fields import RecipeTextField


class WantedForm(forms.Form):
    """What an address asks for: a specification of a kind."""

    kind = forms.ChoiceField(choices=Article.Kind.choices)
    specification = RecipeTextField(SPECIFICATION)


class MeetForm(forms.Form):
    """One of the articles of the kind."""

    def __init__(self, data: Any, lines: Sequence[ArticleLine]) -> None:
        super().__init__(data)
        self.articles = {str(line.article.pk): line.article for line in lines}
        self.fields["article"] = forms.ChoiceField(
            label=_("article"),
            choices=[(str(line.article.pk), _choice(line)) for line in lines],
            widget=forms.RadioSelect,
            error_messages={"required": CHOOSE_ARTICLE, "invalid_choice": CHOOSE_ARTICLE},
        )

    @property
    def chosen(self) -> Article:
        return self.articles[self.cleaned_data["article"]]


class SpecificationsForm(forms.Form):
    """Those that projects ask for, to be ticked, and one more in words."""

    def __init__(self, data: Any, asked_for: Iterable[str]) -> None:
        super().__init__(data)
        offered = [*asked_for]
        if offered:
            self.fields["asked_for"] = forms.MultipleChoiceField(
                label=_("asked for by projects"),
                required=False,
                choices=[(each, each) for each in offered],
                widget=forms.CheckboxSelectMultiple,
            )
        self.fields["other"] = RecipeTextField(
            SPECIFICATION,
            label=_("another one"),
            required=False,
            help_text=_("As a project has it among its material."),
        )

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not self.errors and not self._given(cleaned):
            self.add_error("other", str(NO_SPECIFICATION))
        return cleaned

    @property
    def specifications(self) -> list[str]:
        """All that was ticked and written, each once."""
        given = self._given(self.cleaned_data)
        return [*{specification_key(each): each for each in given}.values()]

    def _given(self, cleaned: dict[str, Any]) -> list[str]:
        return [*cleaned.get("asked_for", ()), *filter(None, [cleaned.get("other")])]


def _choice(line: ArticleLine) -> str:
    values = {"article": line.article, "lying": line.lying}
    return gettext("%(article)s (on the shelf: %(lying)s)") % values


class AskForm(forms.Form):
    """A question with one answer."""


def offered_kind(asked: QueryDict) -> str:
    """The kind that an address names, or nothing where it names none that there is."""
    kind = asked.get("kind", "")
    return kind if kind in Article.Kind.values else ""


def wanted_specification(asked: QueryDict) -> str:
    """The specification that an address names, or nothing where it can't be one."""
    form = WantedForm(asked)
    form.is_valid()
    return str(form.cleaned_data.get("specification", ""))
