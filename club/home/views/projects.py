"""A project's page and its handout: the recipe, with what is always said at the lathe."""

from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import render

from club.base.pages import reader_lengths
from club.base.paper_form import PaperForm
from club.base.printing import Paper, PrintingUnavailable, render_pdf
from club.base.requests import HtmxRequest
from club.home.project_page import handout_of, handout_page_of, page_of
from projects.library.access import edition_for, newest_for
from projects.library.models import Edition


def project(request: HtmxRequest, key: str) -> HttpResponse:
    return _page(request, newest_for(request.user, key, "home:project"))


def edition(request: HtmxRequest, key: str, number: int) -> HttpResponse:
    return _page(request, edition_for(request.user, key, number, "home:edition"))


def _page(request: HtmxRequest, found: Edition) -> HttpResponse:
    context = page_of(found, reader_lengths(request))
    return render(request, "club/home/project.html", context)


def handout(request: HtmxRequest, key: str, number: int) -> HttpResponse:
    found = edition_for(request.user, key, number, "home:handout")
    context = handout_page_of(found, reader_lengths(request))
    return render(request, "club/home/handout.html", {**context, "form": PaperForm()})


def handout_pdf(request: HtmxRequest, key: str, number: int) -> HttpResponse:
    found = edition_for(request.user, key, number, "home:handout_pdf")
    form = PaperForm(request.GET)
    lengths = reader_lengths(request)
    if form.is_valid():
        paper = Paper(form.cleaned_data["paper"])
        context = handout_of(found, lengths, paper)
        try:
            pdf = render_pdf("print/handout.html", context, paper=paper)
            return HttpResponse(pdf, content_type="application/pdf")
        except PrintingUnavailable as error:
            form.add_error(None, str(error))
    context = handout_page_of(found, lengths)
    status = 422 if "paper" in form.errors else 503
    return render(request, "club/home/handout.html", {**context, "form": form}, status=status)
