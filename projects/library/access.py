"""The only way a view gets a project, an edition or a course: the access check is in the query."""

from __future__ import annotations

from django.contrib.auth.base_user import AbstractBaseUser
from django.contrib.auth.models import AnonymousUser
from django.shortcuts import get_object_or_404

from club.base.access import may
from projects.library.models import Course, Edition, Project
from projects.library.models.course import CourseQuerySet
from projects.library.models.edition import EditionQuerySet

Reader = AbstractBaseUser | AnonymousUser


def editions_for(account: Reader, address: str, method: str = "GET") -> EditionQuerySet:
    """Every edition, since one library serves all workshops; none where the table says no."""
    editions = Edition.objects.select_related("project")
    return editions if may(account, address, method) else editions.none()


def edition_for(account: Reader, key: str, number: int, address: str, method: str = "GET") -> Edition:
    return get_object_or_404(editions_for(account, address, method), project__key=key, number=number)


def newest_for(account: Reader, key: str, address: str, method: str = "GET") -> Edition:
    """The edition of a project that people mean: the last one kept, or else its draft."""
    editions = editions_for(account, address, method).order_by("-state", "-number")
    found = editions.filter(project__key=key).first()
    return found or get_object_or_404(editions.none())


def draft_for(account: Reader, key: str, address: str, method: str = "GET") -> Edition:
    editions = editions_for(account, address, method).with_number_before()
    return get_object_or_404(editions, project__key=key, state=Edition.State.DRAFT)


def project_for(account: Reader, key: str, address: str, method: str = "GET") -> Project:
    projects = Project.objects.all() if may(account, address, method) else Project.objects.none()
    return get_object_or_404(projects, key=key)


def courses_for(account: Reader, address: str, method: str = "GET") -> CourseQuerySet:
    return Course.objects.whole() if may(account, address, method) else Course.objects.none()


def course_for(account: Reader, key: str, address: str, method: str = "GET") -> Course:
    return get_object_or_404(courses_for(account, address, method).with_editions(), key=key)
