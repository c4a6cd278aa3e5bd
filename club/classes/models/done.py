from __future__ import annotations

from django.db import models
from django.utils import timezone
from django.utils.translation import gettext_lazy as _

from club.classes.models.class_session import ClassSession


class PreparationDone(models.Model):
    """Something that was to be done before a class, and is. `key` is the job's."""

    class_session = models.ForeignKey(ClassSession, models.CASCADE, related_name="done")
    key = models.CharField(max_length=80)
    by_name = models.CharField(_("who"), max_length=160, blank=True)
    at = models.DateTimeField(_("when"), default=timezone.now)

    class Meta:
        ordering = ("at",)
        verbose_name = _("done")
        verbose_name_plural = _("done")
        constraints = (models.UniqueConstraint("class_session", "key", name="job_done_once"),)

    def __str__(self) -> str:
        return self.key
