from __future__ import annotations

from django.conf import settings
from django.db import models
from django.utils import timezone
from django.utils.translation import gettext_lazy as _

__all__ = ["Change"]


class Change(models.Model):
    """Who changed what, when, and how it read before and after. Rows are only ever added."""

    class Deed(models.TextChoices):
        MADE = "made", _("made")
        MENDED = "mended", _("mended")
        GONE = "gone", _("taken away")

    at = models.DateTimeField(_("when"), default=timezone.now, editable=False)
    by = models.ForeignKey(
        settings.AUTH_USER_MODEL, models.SET_NULL, null=True, editable=False, related_name="changes_made"
    )
    # Kept as text too, so that the line still reads when the account or the thing is gone.
    by_name = models.CharField(_("who"), max_length=160, blank=True, editable=False)
    kind = models.CharField(max_length=60, editable=False)
    thing_id = models.BigIntegerField(editable=False)
    thing_name = models.CharField(_("what"), max_length=160, editable=False)
    deed = models.CharField(_("deed"), max_length=6, choices=Deed, editable=False)
    # [name, before, after] for each field that differs. A list: PostgreSQL reorders the keys of an object.
    lines = models.JSONField(_("lines"), default=list, editable=False)

    class Meta:
        ordering = ("-at", "-pk")
        verbose_name = _("change")
        verbose_name_plural = _("changes")
        indexes = (models.Index(fields=("kind", "thing_id", "-at"), name="change_by_thing"),)

    def __str__(self) -> str:
        return self.thing_name
