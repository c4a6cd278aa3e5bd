from __future__ import annotations

from django.db import models
from django.urls import reverse
from django.utils.translation import gettext_lazy as _

from projects.library.models.project import Project


class CourseQuerySet(models.QuerySet["Course"]):
    def whole(self) -> CourseQuerySet:
        """With the projects of the lessons in their order."""
        return self.prefetch_related("lessons__project")

    def with_editions(self) -> CourseQuerySet:
        """With every edition of the lessons' projects."""
        return self.prefetch_related("lessons__project__editions")


class Course(models.Model):
    """A series of projects in order, each a lesson; a run settles which edition is taught."""

    key = models.SlugField(_("key"), max_length=60, unique=True)
    title = models.CharField(_("title"), max_length=120)
    summary = models.TextField(_("summary"), max_length=600)

    revision = models.PositiveIntegerField(default=1, editable=False)

    objects = CourseQuerySet.as_manager()
    change_fields = ("key", "title", "summary")

    class Meta:
        ordering = ("title",)
        verbose_name = _("course")
        verbose_name_plural = _("courses")

    def __str__(self) -> str:
        return self.title

    def get_absolute_url(self) -> str:
        return reverse("projects:course", args=[self.key])

    def change_extras(self) -> dict[str, str]:
        keys = self.lessons.values_list("project__key", flat=True)
        return {str(_("lessons")): ", ".join(keys)}


class CourseLesson(models.Model):
    course = models.ForeignKey(Course, models.CASCADE, related_name="lessons")
    place = models.PositiveIntegerField()
    project = models.ForeignKey(Project, models.PROTECT, related_name="lessons")

    class Meta:
        ordering = ("place",)
        constraints = (models.UniqueConstraint("course", "place", name="course_place_once"),)

    def __str__(self) -> str:
        return f"{self.course}: {self.place}"
