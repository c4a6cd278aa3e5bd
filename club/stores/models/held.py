from __future__ import annotations

from django.core.validators import MaxValueValidator
from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from club.base.fields import LengthField
from club.stores.models.article import Article
from club.stores.models.sized import Sized


class Held(Sized):
    """So much of an article on the shelf, all of one size.

    `amount` is in the kind's own unit: sticks, boards, blanks, sheets, pieces, nanolitres, nanograms.
    `cut_for` is the specification it has been cut for already (sheets torn, blanks sawn); `amount` counts
    those then.
    """

    article = models.ForeignKey(Article, models.CASCADE, related_name="held", verbose_name=_("article"))
    label = models.CharField(
        _("mark"), max_length=40, blank=True, help_text=_("What is written on it, to tell lots apart: R1.")
    )
    amount = models.PositiveBigIntegerField(_("amount"))
    amount_typed = models.CharField(max_length=40, blank=True, editable=False)
    across = LengthField(
        _("measured across"), null=True, blank=True, help_text=_("With a calliper: a collet asks for it.")
    )
    moisture = models.PositiveSmallIntegerField(
        _("moisture in percent"), null=True, blank=True, validators=[MaxValueValidator(200)]
    )
    cut_for = models.CharField(_("cut for"), max_length=200, blank=True)
    fit = models.BooleanField(_("fit for use"), default=True)
    where = models.CharField(_("where it lies"), max_length=80, blank=True)

    revision = models.PositiveIntegerField(default=1, editable=False)

    change_fields = (
        "article",
        "label",
        "amount",
        "thickness",
        "width",
        "length",
        "across",
        "moisture",
        "cut_for",
        "fit",
        "where",
    )

    class Meta:
        ordering = ("article", "label", "pk")
        verbose_name = _("on the shelf")
        verbose_name_plural = _("on the shelf")
        indexes = (models.Index(fields=("article",), condition=Q(fit=True), name="held_fit_by_article"),)

    def __str__(self) -> str:
        return f"{self.article} {self.label}".strip()
