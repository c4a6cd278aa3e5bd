from __future__ import annotations

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from club.stores.models.article import Article
from club.stores.models.sized import Sized
from club.stores.models.supplier import Supplier


class Offer(Sized):
    """One pack of an article as one supplier sells it; the price in minor units.

    `holds` is in the kind's own unit: sticks and boards (always 1), sheets, pieces, nanolitres, nanograms;
    `holds_typed` is how somebody wrote an amount of liquid or glue.
    """

    article = models.ForeignKey(Article, models.CASCADE, related_name="offers", verbose_name=_("article"))
    supplier = models.ForeignKey(Supplier, models.PROTECT, related_name="offers", verbose_name=_("supplier"))
    label = models.CharField(
        _("pack"),
        max_length=60,
        help_text=_("As the supplier calls it, with the order number if it has one."),
    )
    holds = models.PositiveBigIntegerField(_("holds"), default=1)
    holds_typed = models.CharField(max_length=40, blank=True, editable=False)
    price = models.PositiveBigIntegerField(_("price"))

    change_fields = ("article", "supplier", "label", "holds", "price", "thickness", "width", "length")

    class Meta:
        ordering = ("article", "supplier__name", "label")
        verbose_name = _("offer")
        verbose_name_plural = _("offers")
        constraints = (
            models.UniqueConstraint("article", "supplier", "label", name="offer_pack_once_at_a_supplier"),
            models.CheckConstraint(condition=Q(holds__gte=1), name="offer_holds_something"),
        )

    def __str__(self) -> str:
        return self.label
