from __future__ import annotations

from copy import copy

from django.contrib import messages
from django.core.exceptions import PermissionDenied
from django.db.models import Count
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext

from club.base.changes import changes_of
from club.base.requests import HtmxRequest, posted
from club.base.writing import written
from club.lathes.access import may_add_workshops, workshop_for, workshops_in_reach
from club.lathes.actions import add_workshop, mend_workshop
from club.lathes.forms.workshop import WorkshopForm
from club.lathes.models import Workshop
from club.people.access import signed_in


def workshop_list(request: HtmxRequest) -> HttpResponse:
    workshops = workshops_in_reach(request.user, "lathes:workshops").annotate(lathe_count=Count("lathes"))
    context = {"workshops": workshops, "may_add": may_add_workshops(request.user)}
    return render(request, "club/lathes/workshops.html", context)


def workshop(request: HtmxRequest, pk: int) -> HttpResponse:
    found = workshop_for(request.user, pk, "lathes:workshop")
    context = {"workshop": found, "lathe_count": found.lathes.count(), "changes": changes_of(found)}
    return render(request, "club/lathes/workshop.html", context)


def new(request: HtmxRequest) -> HttpResponse:
    if not may_add_workshops(request.user):
        raise PermissionDenied
    form = WorkshopForm(posted(request))
    if form.is_valid():
        kept = written(form, lambda: add_workshop(signed_in(request), form.instance))
        if kept:
            return _kept(request, kept)
    return _form_page(request, form, Workshop())


def mend(request: HtmxRequest, pk: int) -> HttpResponse:
    found = workshop_for(request.user, pk, "lathes:workshop_mend", request.method or "GET")
    form = WorkshopForm(posted(request), instance=copy(found))
    if form.is_valid():
        revision = form.cleaned_data["revision"]
        kept = written(form, lambda: mend_workshop(signed_in(request), form.instance, revision))
        if kept:
            return _kept(request, kept)
    return _form_page(request, form, found)


def _kept(request: HtmxRequest, workshop: Workshop) -> HttpResponse:
    messages.success(request, gettext("%(workshop)s is saved.") % {"workshop": workshop})
    return redirect(workshop)


def _form_page(request: HtmxRequest, form: WorkshopForm, workshop: Workshop) -> HttpResponse:
    status = 422 if form.errors else 200
    context = {"form": form, "workshop": workshop}
    return render(request, "club/lathes/workshop_form.html", context, status=status)
