"""A project is begun."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext

from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of, written
from projects.library.actions import add_project
from projects.library.forms.new import KindsForm, NewProjectForm


def new(request: HtmxRequest) -> HttpResponse:
    """First what wood and how it is held, then the fields that go with both."""
    asked = KindsForm(request.GET or None)
    if not asked.is_valid():
        return render(request, "projects/library/new_kinds.html", {"form": asked}, status=status_of(asked))
    form = NewProjectForm(posted(request), *asked.kinds())
    if form.is_valid():
        begun = written(form, lambda: add_project(request.user, form.recipe()))
        if begun:
            messages.success(request, gettext("%(project)s is begun.") % {"project": begun.title})
            return redirect("projects:draft", begun.project.key)
    return render(request, "projects/library/new.html", {"form": form}, status=status_of(form))
