from __future__ import annotations

from django.contrib import messages
from django.core.paginator import Paginator
from django.forms import BaseForm
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext
from django.views.decorators.vary import vary_on_headers

from club.base.changes import changes_of
from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest
from club.lathes.access import lathe_for, lathes_for, may_add_workshops, workshops_for
from club.lathes.actions import StaleLatheError, add_lathe, mend_lathe, remove_lathe, set_condition
from club.lathes.drawing import big_drawing, small_drawings
from club.lathes.forms.condition import ConditionForm, RemoveForm
from club.lathes.forms.lathe import LatheForm
from club.lathes.forms.list import LatheFilterForm
from club.lathes.measuring import measuring_page
from club.lathes.models import Lathe
from club.lathes.sentences import STALE
from club.people.access import signed_in

LATHES_A_PAGE = 40


@vary_on_headers("HX-Request", "HX-History-Restore-Request")
def lathe_list(request: HtmxRequest) -> HttpResponse:
    lathes = lathes_for(request.user, "lathes:list")
    form = LatheFilterForm(request.GET)
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
    form = LatheForm(request.POST or None, workshops=workshops).link_to_measuring()
    if request.method == "POST" and form.is_valid():
        rows = form.cleaned_data["speeds"], form.cleaned_data["draw_bars"]
        return _kept(request, add_lathe(signed_in(request), form.instance, *rows))
    context = {"form": form, "workshops": workshops, "may_add_workshops": may_add_workshops(request.user)}
    return render(request, "club/lathes/form.html", context, status=_status(form))


def mend(request: HtmxRequest, pk: int) -> HttpResponse:
    found = lathe_for(request.user, pk, "lathes:mend", request.method or "GET")
    workshops = workshops_for(request.user, "lathes:mend", "POST")
    form = LatheForm(request.POST or None, instance=found, workshops=workshops).link_to_measuring()
    if request.method == "POST" and form.is_valid():
        data = form.cleaned_data
        try:
            return _kept(
                request,
                mend_lathe(
                    signed_in(request), form.instance, data["revision"], data["speeds"], data["draw_bars"]
                ),
            )
        except StaleLatheError:
            form.add_error(None, STALE)
    context = {"form": form, "lathe": found, "workshops": workshops}
    return render(request, "club/lathes/form.html", context, status=_status(form))


def condition(request: HtmxRequest, pk: int) -> HttpResponse:
    found = lathe_for(request.user, pk, "lathes:condition", request.method or "GET")
    initial = {name: getattr(found, name) for name in ("condition", "condition_reason", "revision")}
    form = ConditionForm(request.POST or None, initial=initial)
    if request.method == "POST" and form.is_valid():
        data = form.cleaned_data
        try:
            return _kept(
                request,
                set_condition(
                    signed_in(request), found, data["revision"], data["condition"], data["condition_reason"]
                ),
            )
        except StaleLatheError:
            form.add_error(None, STALE)
    return render(request, "club/lathes/condition.html", {"form": form, "lathe": found}, status=_status(form))


def remove(request: HtmxRequest, pk: int) -> HttpResponse:
    found = lathe_for(request.user, pk, "lathes:remove", request.method or "GET")
    form = RemoveForm(request.POST or None, initial={"revision": found.revision})
    if request.method == "POST" and form.is_valid():
        try:
            remove_lathe(signed_in(request), found, form.cleaned_data["revision"])
        except StaleLatheError:
            form.add_error(None, STALE)
        else:
            messages.success(request, gettext("%(lathe)s is out of the list.") % {"lathe": found})
            return redirect("lathes:list")
    return render(request, "club/lathes/remove.html", {"form": form, "lathe": found}, status=_status(form))


def measuring(request: HtmxRequest) -> HttpResponse:
    return render(request, "club/lathes/measuring.html", measuring_page())


def _kept(request: HtmxRequest, lathe: Lathe) -> HttpResponse:
    messages.success(request, gettext("%(lathe)s is kept.") % {"lathe": lathe})
    return redirect(lathe)


def _status(form: BaseForm) -> int:
    return 422 if form.is_bound and form.errors else 200
