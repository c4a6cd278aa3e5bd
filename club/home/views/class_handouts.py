"""Handouts of a class: for every student in one document, or for one of them."""

from __future__ import annotations

from typing import Any

from django.http import HttpResponse
from django.shortcuts import render
from django.utils import timezone

from club.base.pages import reader_lengths
from club.base.paper_form import PaperForm
from club.base.printing import Paper, PrintingUnavailable, render_pdf
from club.base.requests import HtmxRequest
from club.classes.access import class_for
from club.classes.models import ClassSession
from club.classes.register import Listed, listed, still_asked
from club.home.class_handouts import page_of, paper_of, student_of


def handouts(request: HtmxRequest, pk: int) -> HttpResponse:
    session = class_for(request.user, pk, "home:class_handouts")
    return render(request, "club/home/class_handouts.html", _page(session, PaperForm()))


def handouts_pdf(request: HtmxRequest, pk: int) -> HttpResponse:
    session = class_for(request.user, pk, "home:class_handouts_pdf")
    students = listed(session, timezone.now())
    form = PaperForm(request.GET)
    printed = _printed(request, session, students, form)
    return printed or _not_printed(request, "club/home/class_handouts.html", _page(session, form))


def _page(session: ClassSession, form: PaperForm) -> dict[str, Any]:
    now = timezone.now()
    return {
        "session": session,
        "students": listed(session, now),
        "asked": still_asked(session, now),
        "form": form,
    }


def handout(request: HtmxRequest, pk: int, number: int) -> HttpResponse:
    session = class_for(request.user, pk, "home:class_handout")
    context = page_of(session, student_of(session, number, timezone.now()), reader_lengths(request))
    return render(request, "club/home/class_handout.html", {**context, "form": PaperForm()})


def handout_pdf(request: HtmxRequest, pk: int, number: int) -> HttpResponse:
    session = class_for(request.user, pk, "home:class_handout_pdf")
    student = student_of(session, number, timezone.now())
    form = PaperForm(request.GET)
    printed = _printed(request, session, [student], form)
    if printed:
        return printed
    context = {**page_of(session, student, reader_lengths(request)), "form": form}
    return _not_printed(request, "club/home/class_handout.html", context)


def _printed(
    request: HtmxRequest, session: ClassSession, students: list[Listed], form: PaperForm
) -> HttpResponse | None:
    """The document; None, with the reason on the form, where there is none. Nobody's is no document."""
    if not students or not form.is_valid():
        return None
    paper = Paper(form.cleaned_data["paper"])
    context = paper_of(session, students, reader_lengths(request), paper)
    try:
        pdf = render_pdf("print/class_handouts.html", context, paper=paper)
    except PrintingUnavailable as error:
        form.add_error(None, str(error))
        return None
    return HttpResponse(pdf, content_type="application/pdf")


def _not_printed(request: HtmxRequest, template: str, context: dict[str, Any]) -> HttpResponse:
    status = 503 if context["form"].non_field_errors() else 422
    return render(request, template, context, status=status)
