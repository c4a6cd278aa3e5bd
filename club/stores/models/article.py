from __future__ import annotations

from django.db import models
from django.db.models.functions import Lower
from django.urls import reverse
from django.utils.translation import gettext_lazy as _

from club.base.fields import LengthField


class Article(models.Model):
    """A thing of the stores that is bought, kept and used up. `kind` is the kind of need it can meet."""

    class Kind(models.TextChoices):
        """As `projects.library.domain.materials` names them."""

        LENGTH_STOCK = "length_stock", _("length stock")
        BLANK = "blank", _("boards and blanks")
        PIECE = "piece", _("pieces")
        SHEET = "sheet", _("sheets")
        LIQUID = "liquid", _("liquid")
        ADHESIVE = "adhesive", _("glue")
        CONSUMED = "consumed", _("used up by a head")

    name = models.CharField(_("name"), max_length=120, help_text=_("As it is asked for: maple dowel 1/2 in."))
    kind = models.CharField(_("kind"), max_length=12, choices=Kind)
    kerf = LengthField(
        _("kerf"), null=True, blank=True, zero=True, help_text=_("How much wood one cut of your saw takes.")
    )
    trim = LengthField(
        _("trimmed ends"),
        null=True,
        blank=True,
        zero=True,
        help_text=_("Cut off both ends all told, those cuts with it."),
    )
    note = models.CharField(_("note"), max_length=160, blank=True)

    revision = models.PositiveIntegerField(default=1, editable=False)

    change_fields = ("name", "kind", "kerf", "trim", "note")

    class Meta:
        ordering = ("name",)
        verbose_name = _("article")
        verbose_name_plural = _("articles")
        constraints = (models.UniqueConstraint(Lower("name"), name="article_name_once_in_any_case"),)

    def __str__(self) -> str:
        return self.name

    def get_absolute_url(self) -> str:
        return reverse("stores:article", args=[self.pk])


class MetSpecification(models.Model):
    """A specification of the projects that an article meets. `key` is its text without case and spacing."""

    article = models.ForeignKey(Article, models.CASCADE, related_name="met")
    specification = models.CharField(_("specification"), max_length=200)
    key = models.CharField(max_length=200, editable=False, db_index=True)

    class Meta:
        ordering = ("specification",)
        verbose_name = _("specification met")
        verbose_name_plural = _("specifications met")
        constraints = (models.UniqueConstraint("article", "key", name="specification_once_for_an_article"),)

    def __str__(self) -> str:
        return self.specification
