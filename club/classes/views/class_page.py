"""A class's own page, and its jobs called done."""

from __future__ import annotations

from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone

from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest
from club.classes.access import class_for
from club.classes.actions.preparation import mark_done
from club.classes.class_page import page_of
from club.classes.domain.errors import ClassError
from club.people.access import signed_in


def class_page(request: HtmxRequest, pk: int) -> HttpResponse:
    session = class_for(request.user, pk, "classes:class")
    context = page_of(session, reader_lengths(request), timezone.now())
    return render(request, "club/classes/class.html", context)


def done(request: HtmxRequest, pk: int) -> HttpResponse:
    """A job is done, or isn't after all; then back to the page on which it was said."""
    session = class_for(request.user, pk, "classes:done", "POST")
    try:
        key = request.POST.get("key", "")
        mark_done(signed_in(request), session, key, request.POST.get("done") == "yes")
    except ClassError as error:
        raise Http404 from error
    if request.POST.get("back") == "start":
        return redirect("home:start")
    page = session.get_absolute_url()
    return redirect(f"{page}#preparation")
