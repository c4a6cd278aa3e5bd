"""The form of a course: what it is called, and its lessons one under the other."""

from __future__ import annotations

import typing
from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from projects.library.domain.bounds import Many, Text
from projects.library.domain.keys import key_from
from projects.library.domain.library_form import LibraryCourse
from projects.library.domain.structure import ListPart, TextPart, members
from projects.library.forms.fields import OneOfField, RecipeTextField
from projects.library.models import Course, Edition
from projects.library.plans import PAGES_OF_COURSES

PARTS = {member.name: member.part for member in members(LibraryCourse)}
# Rows that are empty, for lessons to come.
SPARE_ROWS = 4
NO_LESSON = _("Choose at least one lesson.")


def _bounds(name: str) -> Text:
    return typing.cast(TextPart, PARTS[name]).bounds


def _most_lessons() -> int:
    bounds: Many = typing.cast(ListPart, PARTS["lessons"]).bounds
    return bounds.most


class CourseForm(forms.Form):
    """Lessons are chosen row by row; an empty row between two is passed over."""

    title = RecipeTextField(_bounds("title"), label=_("title"))
    summary = RecipeTextField(
        _bounds("summary"), label=_("summary"), help_text=_("What is learned in it, and for whom it is.")
    )
    revision = forms.IntegerField(widget=forms.HiddenInput, required=False)

    def __init__(self, data: Any, course: Course | None = None) -> None:
        self.course = course
        keys = [lesson.project.key for lesson in course.lessons.all()] if course else []
        super().__init__(data, initial=_initial(course, keys))
        projects = _projects()
        self.has_projects = bool(projects)
        offered = [("", _("no lesson")), *projects]
        for number in range(1, self._rows(keys) + 1):
            label = _("lesson %(number)s") % {"number": number}
            self.fields[f"lesson_{number}"] = OneOfField(offered, label=label, required=False)

    def _rows(self, keys: list[str]) -> int:
        """As many as there are lessons and some more, or as many as were posted."""
        posted = sum(name.startswith("lesson_") for name in self.data)
        return min(max(posted, len(keys) + SPARE_ROWS, 2 * SPARE_ROWS), _most_lessons())

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        names = [name for name in self.fields if name.startswith("lesson_")]
        cleaned["lessons"] = [cleaned[name] for name in names if cleaned.get(name)]
        if not cleaned["lessons"] and not any(name in self.errors for name in names):
            self.add_error("lesson_1", str(NO_LESSON))
        return cleaned

    def lesson_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in self.fields if name.startswith("lesson_")]

    def filled(self) -> Course:
        """What was typed as a course that is not saved; a new one gets its key from its title."""
        title, summary = self.cleaned_data["title"], self.cleaned_data["summary"]
        if self.course is not None:
            return Course(pk=self.course.pk, key=self.course.key, title=title, summary=summary)
        taken = {*PAGES_OF_COURSES, *Course.objects.values_list("key", flat=True)}
        return Course(key=key_from(title, taken, "course"), title=title, summary=summary)


def _initial(course: Course | None, keys: list[str]) -> dict[str, Any]:
    if course is None:
        return {}
    lessons = {f"lesson_{number}": key for number, key in enumerate(keys, 1)}
    return {"title": course.title, "summary": course.summary, "revision": course.revision, **lessons}


def _projects() -> list[tuple[str, str]]:
    """Every project by the title of the edition that people mean."""
    newest = Edition.objects.newest().order_by("title", "pk")
    return list(newest.values_list("project__key", "title"))
