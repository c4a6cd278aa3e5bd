"""The page on which a drawing is typed, mark by mark, and the drawing that follows."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext

from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest
from club.base.writing import status_of
from projects.library.access import draft_for
from projects.library.domain.places import Place, PlaceError, get, put, read_place
from projects.library.domain.recipe import Recipe
from projects.library.drawing import drawn_piece
from projects.library.forms.marks import MarksForm
from projects.library.forms.typed_marks import RowError, TypedMarks, changed, typed_in, typed_of
from projects.library.models import Edition
from projects.library.page_facts import page_facts
from projects.library.sentences.drafting import ROW_WORDS
from projects.library.sentences.lengths import shown_in
from projects.library.sentences.places import place_words
from projects.library.views.saving import gone, saved

# The piece's own drawing, and those of its variants.
DRAWINGS: tuple[Place, ...] = (("profile",), ("easier", "profile"), ("harder", "profile"))
# What a press does to the table; the others look at what it says.
OF_ROWS = frozenset({"under", "out", "bore", "no_bore"})


def marks(request: HtmxRequest, key: str) -> HttpResponse:
    draft = draft_for(request.user, key, "projects:draft_marks", request.method or "GET")
    place = _place(draft.recipe, request.GET.get("at", "profile"))
    if place is None:
        return gone(request, draft)
    act = request.POST.get("act", "show")
    if request.method != "POST":
        typed = typed_of(get(draft.recipe, place) or draft.recipe.profile)
        return _page(request, draft, place, MarksForm(typed, draft.revision, bound=False), typed)
    typed, revision = typed_in(request.POST), request.POST.get("revision", "")
    if act in OF_ROWS:
        return _with_rows(request, draft, place, typed, act)
    form = MarksForm(typed, revision, bound=True)
    if act == "save" and form.is_valid() and _saved(request, form, draft, place):
        messages.success(request, gettext("The drawing is saved."))
        return redirect("projects:draft", key)
    return _page(request, draft, place, form, typed)


def _place(recipe: Recipe, at: str) -> Place | None:
    """The drawing that is meant, also one that is not drawn yet of a variant that is there."""
    try:
        place = read_place(at)
        get(recipe, place)
    except PlaceError:
        return None
    return place if place in DRAWINGS else None


def _saved(request: HtmxRequest, form: MarksForm, draft: Edition, place: Place) -> Edition | None:
    return saved(request, form, draft, put(draft.recipe, place, form.cleaned_data["drawn"]))


def _with_rows(
    request: HtmxRequest, draft: Edition, place: Place, typed: TypedMarks, act: str
) -> HttpResponse:
    """The table with a row or a run more or less; nothing is said yet of what is typed in it."""
    note: Any = ""
    more = typed
    try:
        more = changed(typed, act)
    except RowError as error:
        note = ROW_WORDS[error.code]
    form = MarksForm(more, request.POST.get("revision", ""), bound=False).to_write_next()
    return _page(request, draft, place, form, typed, note)


def _page(
    request: HtmxRequest,
    draft: Edition,
    place: Place,
    form: MarksForm,
    typed: TypedMarks,
    note: Any = "",
) -> HttpResponse:
    context = {"edition": draft, "key": draft.project.key, "form": form, "note": note}
    context |= {"called": place_words(place), **_shown(request, draft.recipe, typed)}
    template = "_follows_live.html" if request.htmx else "draft_marks.html"
    return render(request, f"projects/library/{template}", context, status=status_of(form))


def _shown(request: HtmxRequest, recipe: Recipe, typed: TypedMarks) -> dict[str, Any]:
    """The drawing of what is typed, and what follows from it, as far as it is a piece of wood."""
    form = MarksForm(typed, "", bound=True)
    if not form.is_valid():
        return {}
    lengths = reader_lengths(request)
    drawn = replace(recipe, profile=form.cleaned_data["drawn"])
    return {"drawing": drawn_piece(drawn, lengths), "facts": page_facts(drawn, shown_in(lengths, drawn)).all}
