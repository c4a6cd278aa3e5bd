"""Courses: looked at, put together, mended and deleted."""

from __future__ import annotations

from functools import partial

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext

from club.base.changes import changes_of
from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of, written
from projects.library.access import course_for
from projects.library.course_actions import add_course, delete_course, mend_course
from projects.library.course_page import lessons_of
from projects.library.forms.course import CourseForm
from projects.library.forms.lifecycle import RevisionForm


def course(request: HtmxRequest, key: str) -> HttpResponse:
    found = course_for(request.user, key, "projects:course")
    context = {"course": found, "lessons": lessons_of(found), "changes": changes_of(found)}
    return render(request, "projects/library/course.html", context)


def new(request: HtmxRequest) -> HttpResponse:
    form = CourseForm(posted(request))
    if form.is_valid():
        made = written(form, partial(add_course, request.user, form.filled(), form.cleaned_data["lessons"]))
        if made:
            messages.success(request, gettext("%(course)s is put together.") % {"course": made})
            return redirect(made)
    return render(request, "projects/library/course_form.html", {"form": form}, status=status_of(form))


def mend(request: HtmxRequest, key: str) -> HttpResponse:
    found = course_for(request.user, key, "projects:course_mend", request.method or "GET")
    form = CourseForm(posted(request), found)
    if form.is_valid():
        given = form.cleaned_data
        write = partial(mend_course, request.user, form.filled(), given["revision"], given["lessons"])
        mended = written(form, write)
        if mended:
            messages.success(request, gettext("%(course)s is saved.") % {"course": mended})
            return redirect(mended)
    context = {"form": form, "course": found}
    return render(request, "projects/library/course_form.html", context, status=status_of(form))


def delete(request: HtmxRequest, key: str) -> HttpResponse:
    found = course_for(request.user, key, "projects:course_delete", request.method or "GET")
    form = RevisionForm(posted(request), initial={"revision": found.revision})
    if form.is_valid():
        revision = form.cleaned_data["revision"]
        if written(form, lambda: delete_course(request.user, found, revision)):
            messages.success(request, gettext("The course %(title)s is deleted.") % {"title": found.title})
            return redirect("projects:list")
    context = {"form": form, "course": found}
    return render(request, "projects/library/course_delete.html", context, status=status_of(form))
