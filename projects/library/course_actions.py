"""Writes to courses: each one short transaction with its change row."""

from __future__ import annotations

from collections.abc import Sequence

from django.contrib.auth.base_user import AbstractBaseUser
from django.contrib.auth.models import AnonymousUser
from django.db import transaction

from club.base.changes import record_change, snapshot
from club.base.writing import StaleError, unless_taken
from projects.library.models import Course, CourseLesson, Project

By = AbstractBaseUser | AnonymousUser | None


@transaction.atomic
def add_course(by: By, course: Course, lessons: Sequence[str]) -> Course:
    """A new course with the projects of these keys as lessons, in their order.

    Raises TakenError when its key is taken, StaleError when a project isn't there any more.
    """
    with unless_taken():
        course.save(force_insert=True)
    _write_lessons(course, lessons)
    record_change(by, course, None, snapshot(course))
    return course


@transaction.atomic
def mend_course(by: By, course: Course, revision: int | None, lessons: Sequence[str]) -> Course:
    """Write title, summary and lessons.

    Raises StaleError when the course was mended or deleted since, or a project isn't there any more.
    """
    current = _locked(course.pk, revision)
    before = snapshot(current)
    current.title, current.summary = course.title, course.summary
    current.revision += 1
    current.save(update_fields=("title", "summary", "revision"))
    current.lessons.all().delete()
    _write_lessons(current, lessons)
    record_change(by, current, before, snapshot(current))
    return current


@transaction.atomic
def delete_course(by: By, course: Course, revision: int | None) -> Course:
    """The course that is gone now; its projects stay. Raises StaleError."""
    current = _locked(course.pk, revision)
    record_change(by, current, snapshot(current), None)
    current.delete()
    return current


def _locked(pk: int, revision: int | None) -> Course:
    current = Course.objects.select_for_update().filter(pk=pk).first()
    if current is None or current.revision != revision:
        raise StaleError
    return current


def _write_lessons(course: Course, lessons: Sequence[str]) -> None:
    wanted = Project.objects.filter(key__in=lessons).order_by("key").select_for_update()
    projects = {project.key: project for project in wanted}
    if set(lessons) - projects.keys():
        raise StaleError
    CourseLesson.objects.bulk_create(
        CourseLesson(course=course, place=place, project=projects[key])
        for place, key in enumerate(lessons, 1)
    )
