"""An article, what it meets, and the question whether it is to go."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from club.base.fields import LengthFormField
from club.stores.kinds import SAWN
from club.stores.models import Article
from club.stores.sentences.forms import ARTICLE_TAKEN, KERF_NEEDED, NAME_NEEDED
from projects.library.domain.bounds import Text
from projects.library.forms.fields import RecipeTextField

# As long as a project may write it.
SPECIFICATION = Text(120)


class RevisionForm(forms.Form):
    """A question with one answer: the revision says to which state of the thing."""

    revision = forms.IntegerField(widget=forms.HiddenInput)


class ArticleForm(forms.Form):
    """Asks only for what its kind has; the kind is chosen before and stays."""

    name = RecipeTextField(
        Text(120),
        label=_("name"),
        help_text=_("As it is asked for: maple dowel 1/2\u00a0in."),
        error_messages={"required": NAME_NEEDED},
    )
    note = RecipeTextField(Text(160, least=0), label=_("note"), required=False, widget=forms.TextInput())
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    def __init__(self, data: Any, article: Article, specification: str = "") -> None:
        self.article = article
        names = ("name", "kerf", "trim", "note", "revision")
        initial = {name: getattr(article, name) for name in names}
        super().__init__(data, initial=initial | {"specification": specification})
        if article.kind in SAWN:
            self.fields.update(_sawing())
        if article.pk is None:
            self.fields["specification"] = _specification()
        self.order_fields(("name", "specification", "kerf", "trim", "note"))

    def clean_name(self) -> str:
        name = str(self.cleaned_data["name"])
        others = Article.objects.exclude(pk=self.article.pk).values_list("name", flat=True)
        if name.casefold() in {other.casefold() for other in others}:
            raise forms.ValidationError(ARTICLE_TAKEN)
        return name

    def filled(self) -> Article:
        """The article as it was typed, not saved."""
        given = self.cleaned_data
        return Article(
            pk=self.article.pk,
            kind=self.article.kind,
            name=given["name"],
            kerf=given.get("kerf"),
            trim=given.get("trim"),
            note=given["note"],
        )

    @property
    def met(self) -> tuple[str, ...]:
        """The specification that was written beside a new article, if there is one."""
        specification = self.cleaned_data.get("specification")
        return (specification,) if specification else ()


def _sawing() -> dict[str, forms.Field]:
    return {
        "kerf": LengthFormField(
            zero=True,
            label=_("kerf"),
            help_text=_("How much wood one cut of your saw takes: 1/8\u00a0in or 3\u00a0mm."),
            error_messages={"required": KERF_NEEDED},
        ),
        "trim": LengthFormField(
            zero=True,
            required=False,
            label=_("trimmed ends"),
            help_text=_("Cut off both ends all told, those cuts with it. Empty where the ends are good."),
        ),
    }


def _specification() -> forms.Field:
    return RecipeTextField(
        SPECIFICATION,
        label=_("specification it meets"),
        required=False,
        help_text=_("As a project has it among its material; more can be said afterwards."),
    )
