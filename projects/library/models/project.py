from __future__ import annotations

from django.db import models
from django.urls import reverse
from django.utils.translation import gettext_lazy as _


class ProjectQuerySet(models.QuerySet["Project"]):
    def whole(self) -> ProjectQuerySet:
        """With all editions, without the recipes in them: a recipe is read where it is shown."""
        return self.prefetch_related("editions")


class Project(models.Model):
    """One lesson's piece by its own name, the same in every edition."""

    key = models.SlugField(_("key"), max_length=60, unique=True)

    objects = ProjectQuerySet.as_manager()

    class Meta:
        ordering = ("key",)
        verbose_name = _("project")
        verbose_name_plural = _("projects")

    def __str__(self) -> str:
        return self.key

    def get_absolute_url(self) -> str:
        return reverse("home:project", args=[self.key])
