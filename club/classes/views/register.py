"""The list of a class, as a page and on paper."""

from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import render
from django.utils import timezone

from club.base.paper_form import PaperForm
from club.base.printing import Paper, PrintingUnavailable, render_pdf
from club.base.requests import HtmxRequest
from club.classes.access import class_for
from club.classes.register import register_of


def register(request: HtmxRequest, pk: int) -> HttpResponse:
    session = class_for(request.user, pk, "classes:register")
    context = {**register_of(session, timezone.now()), "form": PaperForm()}
    return render(request, "club/classes/register.html", context)


def register_pdf(request: HtmxRequest, pk: int) -> HttpResponse:
    session = class_for(request.user, pk, "classes:register_pdf")
    form, context = PaperForm(request.GET), register_of(session, timezone.now())
    if form.is_valid() and context["listed"]:
        try:
            paper = Paper(form.cleaned_data["paper"])
            pdf = render_pdf("print/register.html", context, paper=paper)
            return HttpResponse(pdf, content_type="application/pdf")
        except PrintingUnavailable as error:
            form.add_error(None, str(error))
    status = 422 if "paper" in form.errors or not context["listed"] else 503
    return render(request, "club/classes/register.html", {**context, "form": form}, status=status)
