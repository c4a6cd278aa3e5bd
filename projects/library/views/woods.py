"""The tables of woods and finishes as pages."""

from __future__ import annotations

from django.core.paginator import Paginator
from django.http import Http404, HttpResponse
from django.shortcuts import render
from django.views.decorators.vary import vary_on_headers

from club.base.requests import HtmxRequest
from projects.library.finish_pages import finish_rows, finish_sources
from projects.library.forms.woods import WoodFilterForm
from projects.library.tables import finishes, woods
from projects.library.wood_pages import wood_page, wood_rows

WOODS_A_PAGE = 40


@vary_on_headers("HX-Request", "HX-History-Restore-Request")
def wood_list(request: HtmxRequest) -> HttpResponse:
    form = WoodFilterForm(request.GET)
    page = Paginator(form.narrow(wood_rows(woods())), WOODS_A_PAGE).get_page(request.GET.get("page"))
    context = {"form": form, "page": page, "narrowed": form.narrowed}
    if request.htmx and not request.htmx.history_restore_request:
        return render(request, "projects/library/_woods.html", context)
    return render(request, "projects/library/woods.html", context)


def wood(request: HtmxRequest, key: str) -> HttpResponse:
    if not woods().knows(key):
        raise Http404
    return render(request, "projects/library/wood.html", {"wood": wood_page(woods(), key)})


def finish_list(request: HtmxRequest) -> HttpResponse:
    every = finishes().values()
    context = {"finishes": finish_rows(every), "sources": finish_sources(every)}
    return render(request, "projects/library/finishes.html", context)
