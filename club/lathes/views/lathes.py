from __future__ import annotations

from copy import copy

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext
from django.views.decorators.vary import vary_on_headers

from club.base.changes import changes_of
from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of, written
from club.lathes.access import lathe_for, lathes_for, may_add_workshops, workshops_for, workshops_in_reach
from club.lathes.actions import (
    add_lathe,
    mend_lathe,
    remove_lathe,
    set_condition,
)
from club.lathes.drawing import big_drawing, small_drawings
from club.lathes.forms.condition import ConditionForm, RemoveForm
from club.lathes.forms.lathe import LatheForm
from club.lathes.forms.list import LatheFilterForm
from club.lathes.measuring import measuring_page
from club.lathes.models import Lathe
from club.people.access import signed_in

LATHES_A_PAGE = 40


@vary_on_headers("HX-Request", "HX-History-Restore-Request")
def lathe_list(request: HtmxRequest) -> HttpResponse:
    lathes = lathes_for(request.user, "lathes:list")
    form = LatheFilterForm(request.GET, workshops_in_reach(request.user, "lathes:list"))
    page = Paginator(form.narrow(lathes.whole()), LATHES_A_PAGE).get_page(request.GET.get("page"))
    rows = small_drawings(page.object_list, reader_lengths(request))
    context = {"form": form, "page": page, "rows": rows, "narrowed": form.narrowed}
    if request.htmx and not request.htmx.history_restore_request:
        return render(request, "club/lathes/_lathes.html", context)
    return render(request, "club/lathes/list.html", {**context, "counts": lathes.counts()})


def lathe(request: HtmxRequest, pk: int) -> HttpResponse:
    found = lathe_for(request.user, pk, "lathes:lathe")
    drawing = big_drawing(found, reader_lengths(request))
    context = {"lathe": found, "drawing": drawing, "changes": changes_of(found)}
    return render(request, "club/lathes/lathe.html", context)


def new(request: HtmxRequest) -> HttpResponse:
    workshops = workshops_for(request.user, "lathes:new", "POST")
    form = LatheForm(posted(request), workshops=workshops).link_to_measuring()
    if form.is_valid():
        rows = form.cleaned_data["speeds"], form.cleaned_data["draw_bars"]
        kept = written(form, lambda: add_lathe(signed_in(request), form.instance, *rows))
        if kept:
            return _kept(request, kept)
    context = {"form": form, "workshops": workshops, "may_add_workshops": may_add_workshops(request.user)}
    return render(request, "club/lathes/form.html", context, status=status_of(form))


def mend(request: HtmxRequest, pk: int) -> HttpResponse:
    found = lathe_for(request.user, pk, "lathes:mend", request.method or "GET")
    workshops = workshops_for(request.user, "lathes:mend", "POST")
    # The form writes into its lathe even where it is wrong; the page goes on naming the one that is kept.
    form = LatheForm(posted(request), instance=copy(found), workshops=workshops).link_to_measuring()
    if form.is_valid():
        given = form.cleaned_data
        rows = given["revision"], given["speeds"], given["draw_bars"]
        kept = written(form, lambda: mend_lathe(signed_in(request), form.instance, *rows))
        if kept:
            return _kept(request, kept)
    context = {"form": form, "lathe": found, "workshops": workshops}
    return render(request, "club/lathes/form.html", context, status=status_of(form))


def condition(request: HtmxRequest, pk: int) -> HttpResponse:
    found = lathe_for(request.user, pk, "lathes:condition", request.method or "GET")
    initial = {name: getattr(found, name) for name in ("condition", "condition_reason", "revision")}
    form = ConditionForm(posted(request), initial=initial)
    if form.is_valid():
        given = form.cleaned_data
        facts = given["revision"], given["condition"], given["condition_reason"]
        kept = written(form, lambda: set_condition(signed_in(request), found, *facts))
        if kept:
            words = {"lathe": kept, "condition": kept.get_condition_display()}
            messages.success(request, gettext("%(lathe)s is now %(condition)s.") % words)
            return redirect(kept)
    return render(
        request, "club/lathes/condition.html", {"form": form, "lathe": found}, status=status_of(form)
    )


def remove(request: HtmxRequest, pk: int) -> HttpResponse:
    found = lathe_for(request.user, pk, "lathes:remove", request.method or "GET")
    form = RemoveForm(posted(request), initial={"revision": found.revision})
    if form.is_valid():
        revision = form.cleaned_data["revision"]
        if written(form, lambda: remove_lathe(signed_in(request), found, revision)):
            messages.success(request, gettext("%(lathe)s is out of the list.") % {"lathe": found})
            return redirect("lathes:list")
    return render(request, "club/lathes/remove.html", {"form": form, "lathe": found}, status=status_of(form))


def measuring(request: HtmxRequest) -> HttpResponse:
    return render(request, "club/lathes/measuring.html", measuring_page())


def _kept(request: HtmxRequest, lathe: Lathe) -> HttpResponse:
    messages.success(request, gettext("%(lathe)s is saved.") % {"lathe": lathe})
    return redirect(lathe)
