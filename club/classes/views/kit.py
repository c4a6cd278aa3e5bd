"""The kit of a class and its material order."""

from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import render
from django.utils import timezone

from club.base.pages import reader_lengths
from club.base.paper_form import PaperForm
from club.base.printing import Paper, PrintingUnavailable, render_pdf
from club.base.requests import HtmxRequest
from club.classes.access import class_for
from club.classes.kit import kit_of
from club.people.access import signed_in


def kit(request: HtmxRequest, pk: int) -> HttpResponse:
    session = class_for(request.user, pk, "classes:kit")
    page = kit_of(session, reader_lengths(request))
    return render(request, "club/classes/kit.html", {"session": session, "kit": page})


def order(request: HtmxRequest, pk: int) -> HttpResponse:
    session = class_for(request.user, pk, "classes:order")
    page = kit_of(session, reader_lengths(request))
    context = {"session": session, "kit": page, "form": PaperForm()}
    return render(request, "club/classes/order.html", context)


def order_pdf(request: HtmxRequest, pk: int) -> HttpResponse:
    session = class_for(request.user, pk, "classes:order_pdf")
    form = PaperForm(request.GET)
    context = {"session": session, "kit": kit_of(session, reader_lengths(request)), "form": form}
    if form.is_valid() and not session.is_cancelled:
        paper = Paper(form.cleaned_data["paper"])
        on_paper = {**context, "day": timezone.localdate(), "asks": signed_in(request).person}
        try:
            pdf = render_pdf("print/order.html", on_paper, paper=paper)
            return HttpResponse(pdf, content_type="application/pdf")
        except PrintingUnavailable as error:
            form.add_error(None, str(error))
    status = 422 if "paper" in form.errors or session.is_cancelled else 503
    return render(request, "club/classes/order.html", context, status=status)
