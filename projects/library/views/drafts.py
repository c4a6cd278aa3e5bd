"""The page of a draft: everything in it, and entries moved up and down."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any
from urllib.parse import urlencode

from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django_htmx.http import HttpResponseClientRedirect

from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest
from projects.library.access import draft_for
from projects.library.domain.places import PlaceError, write_place
from projects.library.domain.places import move as moved
from projects.library.domain.recipe import Recipe
from projects.library.drawing import drawn_piece
from projects.library.forms.draft import MovedForm, MoveForm
from projects.library.looked_over import Remark, looked_over
from projects.library.models import Edition
from projects.library.outline import focused, outline
from projects.library.sentences.lengths import shown_in
from projects.library.views.saving import saved
from projects.library.ways import way_to


def draft(request: HtmxRequest, key: str) -> HttpResponse:
    found = draft_for(request.user, key, "projects:draft")
    drawing = drawn_piece(found.recipe, reader_lengths(request))
    context = writing_context(request, found) | {"drawing": drawing}
    moved_now = MovedForm(request.GET)
    if moved_now.is_valid():
        context["sections"] = focused(context["sections"], **moved_now.cleaned_data)
    return render(request, "projects/library/draft.html", context)


def move(request: HtmxRequest, key: str) -> HttpResponse:
    """An entry one place up or down. Without scripts back to the page, else what changed of it."""
    found = draft_for(request.user, key, "projects:draft_move", "POST")
    form = MoveForm(request.POST)
    if not form.is_valid():
        raise Http404
    kept = saved(request, form, found, _moved(found, form))
    if kept is None:
        return _with_reason(request, form, key)
    entry = write_place(form.moved_to())
    if request.htmx:
        context = writing_context(request, kept)
        context["sections"] = focused(context["sections"], entry, form.cleaned_data["by"])
        return render(request, "projects/library/_writing.html", context)
    # No fragment: with one, a browser leaves the keyboard where it was.
    query = urlencode({"at": entry, "by": form.cleaned_data["by"]})
    return redirect(f"{reverse('projects:draft', args=[key])}?{query}")


def _moved(found: Edition, form: MoveForm) -> Recipe:
    """Moved, if it can be; a page that is out of date may ask for what is not there, and is told so."""
    try:
        return moved(found.recipe, form.cleaned_data["place"], form.cleaned_data["by"])
    except PlaceError as error:
        if form.cleaned_data["revision"] == found.revision:
            raise Http404 from error
        return found.recipe


def _with_reason(request: HtmxRequest, form: MoveForm, key: str) -> HttpResponse:
    messages.warning(request, " ".join(str(sentence) for sentence in form.non_field_errors()))
    address = reverse("projects:draft", args=[key])
    return HttpResponseClientRedirect(address) if request.htmx else redirect(address)


def writing_context(request: HtmxRequest, found: Edition) -> dict[str, Any]:
    lengths = reader_lengths(request)
    look = looked_over(found.recipe)
    return {
        "edition": found,
        "key": found.project.key,
        "refused": _with_ways(found, look.refused),
        "mind": _with_ways(found, look.mind),
        "sections": outline(found.recipe, shown_in(lengths)),
    }


def _with_ways(found: Edition, remarks: Iterable[Remark]) -> list[tuple[str, str]]:
    """Each sentence with the address of the page that mends it."""
    return [(remark.sentence, way_to(found.project.key, remark.path)) for remark in remarks]
