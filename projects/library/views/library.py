"""The library: every project by the edition that people mean."""

from __future__ import annotations

from django.core.paginator import Paginator
from django.db.models import Count
from django.http import HttpResponse
from django.shortcuts import render
from django.views.decorators.vary import vary_on_headers

from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest
from projects.library.access import editions_for
from projects.library.forms.library import ProjectFilterForm
from projects.library.listing import counts_of, rows_of
from projects.library.models import Course

PROJECTS_A_PAGE = 20


@vary_on_headers("HX-Request", "HX-History-Restore-Request")
def project_list(request: HtmxRequest) -> HttpResponse:
    editions = editions_for(request.user, "projects:list").newest().order_by("title", "pk")
    form = ProjectFilterForm(request.GET)
    listed = form.narrow(editions.with_draft_number())
    page = Paginator(listed, PROJECTS_A_PAGE).get_page(request.GET.get("page"))
    rows = rows_of(page.object_list, reader_lengths(request))
    context = {"form": form, "page": page, "rows": rows, "narrowed": form.narrowed}
    if request.htmx and not request.htmx.history_restore_request:
        return render(request, "projects/library/_projects.html", context)
    context |= {
        "counts": counts_of(editions),
        "courses": Course.objects.annotate(lesson_count=Count("lessons")),
    }
    return render(request, "projects/library/list.html", context)
