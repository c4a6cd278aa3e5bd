"""Which article meets which specification, asked from either side."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from django import forms
from django.http import QueryDict
from django.utils.translation import gettext_lazy as _

from club.base.quantities.shown import unbroken
from club.stores.forms.article import SPECIFICATION
from club.stores.models import Article
from club.stores.sentences.forms import CHOOSE_ARTICLE, NO_SPECIFICATION
from club.stores.specifications import specification_key
from projects.library.forms.fields import RecipeTextField
from projects.library.sentences.drafting import CHOOSE


class WantedForm(forms.Form):
    """What an address asks for: a specification of a kind."""

    kind = forms.ChoiceField(choices=Article.Kind.choices)
    specification = RecipeTextField(SPECIFICATION)


class MeetForm(forms.Form):
    """One of the articles of the kind."""

    def __init__(self, data: Any, articles: Iterable[Article]) -> None:
        super().__init__(data)
        self.articles = {str(article.pk): article for article in articles}
        self.fields["article"] = forms.ChoiceField(
            label=_("article"),
            choices=[(key, article.name) for key, article in self.articles.items()],
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
                choices=[(each, unbroken(each)) for each in offered],
                widget=forms.CheckboxSelectMultiple,
                error_messages={"invalid_choice": CHOOSE},
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
