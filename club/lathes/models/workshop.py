from __future__ import annotations

from django.db import models
from django.db.models.functions import Lower
from django.urls import reverse
from django.utils.translation import gettext_lazy as _

from club.lathes.domain.opening_hours import Opening, parse_openings


class Workshop(models.Model):
    """A room with lathes in it, in its own time zone."""

    name = models.CharField(_("name"), max_length=60, help_text=_("As people call it: Kiln Room"))
    address = models.TextField(
        _("address"), max_length=300, blank=True, help_text=_("As a driver needs it, a line to each part.")
    )
    zone = models.CharField(
        _("time zone"), max_length=64, help_text=_("Dates and times of classes here are kept in it.")
    )
    opening = models.TextField(
        _("opening hours"),
        max_length=400,
        blank=True,
        help_text=_("When somebody can work here before a class, a line to each stretch: Mon 18:00-22:00."),
    )

    revision = models.PositiveIntegerField(default=1, editable=False)

    change_fields = ("name", "address", "zone", "opening")

    class Meta:
        ordering = ("name",)
        verbose_name = _("workshop")
        verbose_name_plural = _("workshops")
        constraints = (models.UniqueConstraint(Lower("name"), name="workshop_name_once_in_any_case"),)

    def __str__(self) -> str:
        return self.name

    def get_absolute_url(self) -> str:
        return reverse("lathes:workshop", args=[self.pk])

    @property
    def openings(self) -> tuple[Opening, ...]:
        """When it is open every week; none where it is open at any hour."""
        return parse_openings(self.opening)
