from __future__ import annotations

from django.core.validators import MaxValueValidator
from django.db import models
from django.db.models.functions import Lower
from django.urls import reverse
from django.utils.translation import gettext_lazy as _

LONGEST_DELIVERY = 365


class Supplier(models.Model):
    """Somebody the club buys from. Money is in minor units of the installation's currency."""

    name = models.CharField(_("name"), max_length=80)
    address = models.TextField(
        _("address"), max_length=300, blank=True, help_text=_("Where an order goes: a line to each part.")
    )
    our_number = models.CharField(
        _("our customer number"), max_length=40, blank=True, help_text=_("It stands on the order.")
    )
    delivery = models.PositiveBigIntegerField(
        _("delivery"), default=0, help_text=_("Paid once for each order. 0 where it is free or fetched.")
    )
    least_order = models.PositiveBigIntegerField(
        _("least order"), default=0, help_text=_("What the goods have to come to. 0 where there is no least.")
    )
    delivery_days = models.PositiveSmallIntegerField(
        _("days to deliver"),
        default=0,
        validators=[MaxValueValidator(LONGEST_DELIVERY)],
        help_text=_("From the order to the shelf. 0 where it is fetched the same day."),
    )

    revision = models.PositiveIntegerField(default=1, editable=False)

    change_fields = ("name", "address", "our_number", "delivery", "least_order", "delivery_days")

    class Meta:
        ordering = ("name",)
        verbose_name = _("supplier")
        verbose_name_plural = _("suppliers")
        constraints = (models.UniqueConstraint(Lower("name"), name="supplier_name_once_in_any_case"),)

    def __str__(self) -> str:
        return self.name

    def get_absolute_url(self) -> str:
        return reverse("stores:supplier", args=[self.pk])
