from __future__ import annotations

from functools import cached_property

from django.db import models
from django.urls import reverse
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from projects.library.domain.json_form import from_own, to_json
from projects.library.domain.leaves import leaves
from projects.library.domain.recipe import Recipe
from projects.library.models.project import Project


class EditionQuerySet(models.QuerySet["Edition"]):
    def drafts(self) -> EditionQuerySet:
        return self.filter(state=Edition.State.DRAFT)

    def kept(self) -> EditionQuerySet:
        return self.filter(state=Edition.State.KEPT)

    def newest(self) -> EditionQuerySet:
        """The one edition of each project that people mean: the last one kept, or else its draft."""
        newer = Edition.objects.filter(project=models.OuterRef("project")).order_by("-state", "-number")
        return self.filter(pk=models.Subquery(newer.values("pk")[:1]))

    def with_draft_number(self) -> EditionQuerySet:
        """Each with the number of its project's draft as `draft_number`, if somebody is writing one."""
        draft = Edition.objects.drafts().filter(project=models.OuterRef("project")).values("number")
        return self.annotate(draft_number=models.Subquery(draft[:1]))

    def with_number_before(self) -> EditionQuerySet:
        """Each with the number of the last edition kept before it as `number_before`, if there is one."""
        kept = Edition.objects.kept().filter(
            project=models.OuterRef("project"), number__lt=models.OuterRef("number")
        )
        return self.annotate(number_before=models.Subquery(kept.order_by("-number").values("number")[:1]))


class Edition(models.Model):
    """One numbered edition of a project: a recipe that is written on while draft and never once it is kept.

    `recipe_json` is the document of `projects.library.domain.json_form`; what queries need of it stands in
    rows beside it, written anew with every save of the recipe.
    """

    class State(models.TextChoices):
        # The order of the letters is the order of use: kept editions come before drafts.
        DRAFT = "draft", _("draft")
        KEPT = "kept", _("kept")

    project = models.ForeignKey(Project, models.PROTECT, related_name="editions")
    number = models.PositiveIntegerField(_("edition"))
    state = models.CharField(_("state"), max_length=5, choices=State, default=State.DRAFT)
    title = models.CharField(_("title"), max_length=120, editable=False)
    summary = models.TextField(_("summary"), max_length=600, editable=False)
    recipe_json = models.JSONField(editable=False)
    kept_at = models.DateTimeField(_("kept on"), null=True, editable=False)

    revision = models.PositiveIntegerField(default=1, editable=False)

    objects = EditionQuerySet.as_manager()
    change_fields = ("number", "state")

    class Meta:
        ordering = ("project", "-number")
        verbose_name = _("edition")
        verbose_name_plural = _("editions")
        constraints = (
            models.UniqueConstraint("project", "number", name="edition_number_once_in_a_project"),
            models.UniqueConstraint(
                "project", condition=models.Q(state="draft"), name="one_draft_in_a_project"
            ),
        )

    def __str__(self) -> str:
        return gettext("%(title)s, edition %(number)s") % {"title": self.title, "number": self.number}

    def get_absolute_url(self) -> str:
        return reverse("home:edition", args=[self.project.key, self.number])

    @property
    def is_draft(self) -> bool:
        return self.state == self.State.DRAFT

    @cached_property
    def recipe(self) -> Recipe:
        return from_own(self.recipe_json)

    def take(self, recipe: Recipe) -> None:
        """Hold this recipe, without saving: the document and what is shown in lists."""
        self.recipe_json = to_json(recipe)
        self.title, self.summary = recipe.title, recipe.summary
        self.__dict__["recipe"] = recipe

    def change_extras(self) -> dict[str, str]:
        """Every value of the recipe by the way to it, so that the log tells what was rewritten."""
        return leaves(self.recipe_json)


class EditionWord(models.Model):
    """A word of the trade that an edition's recipe uses, for finding it: derived, never written by hand."""

    class Kind(models.TextChoices):
        HOLDING = "holding", _("way of holding")
        TOOL = "tool", _("tool")
        WOOD = "wood", _("wood")
        FINISH = "finish", _("finish")
        SKILL_NEEDED = "needs", _("skill needed")
        SKILL_TAUGHT = "teaches", _("skill taught")

    edition = models.ForeignKey(Edition, models.CASCADE, related_name="words")
    kind = models.CharField(max_length=8, choices=Kind)
    word = models.CharField(max_length=60)

    class Meta:
        ordering = ("kind", "word")
        constraints = (models.UniqueConstraint("edition", "kind", "word", name="edition_word_once"),)
        indexes = (models.Index(fields=("kind", "word"), name="edition_by_word"),)

    def __str__(self) -> str:
        return self.word
