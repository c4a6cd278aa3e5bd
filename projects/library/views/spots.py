"""One page of a draft: a record is mended, added or taken out."""

from __future__ import annotations

from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.text import capfirst
from django.utils.translation import gettext

from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of
from projects.library.access import draft_for
from projects.library.domain.errors import RecipeError
from projects.library.domain.places import Place, PlaceError, get, place_of, still_there, write_place
from projects.library.domain.recipe import Recipe
from projects.library.forms.draft import DraftForm
from projects.library.forms.record import RecordForm
from projects.library.forms.spots import Spot, out_at, spot_at
from projects.library.models import Edition
from projects.library.sentences.places import hindrance_sentence, place_words
from projects.library.spot_page import entry_words, kind_choices, spot_context
from projects.library.views.saving import checked, gone, saved
from projects.library.ways import anchor_of, way_to_place


def mend(request: HtmxRequest, key: str) -> HttpResponse:
    draft = draft_for(request.user, key, "projects:draft_mend", request.method or "GET")
    return _at_spot(request, draft, adding=False)


def add(request: HtmxRequest, key: str) -> HttpResponse:
    draft = draft_for(request.user, key, "projects:draft_add", request.method or "GET")
    return _at_spot(request, draft, adding=True)


def _at_spot(request: HtmxRequest, draft: Edition, *, adding: bool) -> HttpResponse:
    asked = request.GET
    try:
        spot = spot_at(draft.recipe, asked.get("at", ""), asked.get("kind"), adding=adding)
    except PlaceError:
        return gone(request, draft)
    return _written(request, draft, spot)


def _written(request: HtmxRequest, draft: Edition, spot: Spot) -> HttpResponse:
    context = {"edition": draft, "key": draft.project.key, "called": place_words(spot.page)}
    context |= {"anchor": anchor_of(spot.page), "at": write_place(spot.page), "adding": spot.adding}
    if spot.kinds:
        context["kinds"] = kind_choices(spot)
        return render(request, "projects/library/draft_kinds.html", context)
    form = RecordForm(posted(request), spot.group, spot.offers, draft.revision)
    if form.is_valid():
        record = form.record(spot.new_values(form.cleaned_data))
        if saved(request, form, draft, spot.recipe_with(record)):
            words = gettext("%(thing)s is saved.") % {"thing": capfirst(place_words(spot.page))}
            return _back(request, draft, spot.page, words)
    context |= spot_context(spot, form)
    return render(request, "projects/library/draft_form.html", context, status=status_of(form))


def take_out(request: HtmxRequest, key: str) -> HttpResponse:
    """Asks, or says what stands in the way; a POST takes out."""
    draft = draft_for(request.user, key, "projects:draft_take_out", request.method or "GET")
    place, less = _out(draft, request)
    form = DraftForm(posted(request), initial={"revision": draft.revision})
    hindrance, way = _hindrance(draft, place, less)
    if hindrance and form.is_bound:
        form.add_error(None, hindrance)
    if form.is_valid() and saved(request, form, draft, less):
        words = gettext("%(thing)s is taken out.") % {"thing": capfirst(place_words(place))}
        return _back(request, draft, place[:-1], words)
    said = entry_words(get(draft.recipe, place))
    context = {"edition": draft, "key": key, "form": form, "called": place_words(place), "said": said}
    context |= {"hindrance": hindrance, "way": way, "anchor": anchor_of(place)}
    return render(request, "projects/library/draft_take_out.html", context, status=status_of(form))


def _out(draft: Edition, request: HtmxRequest) -> tuple[Place, Recipe]:
    try:
        return out_at(draft.recipe, request.GET.get("at", ""))
    except PlaceError as error:
        raise Http404 from error


def _hindrance(draft: Edition, taken: Place, less: Recipe) -> tuple[str, str]:
    """Why the recipe can't be without it, and the address of what stands in the way; or nothing."""
    try:
        checked(less)
    except RecipeError as error:
        place = still_there(taken, place_of(error.path))
        return hindrance_sentence(error, place), way_to_place(draft.project.key, place)
    return "", ""


def _back(request: HtmxRequest, draft: Edition, place: Place, words: str) -> HttpResponse:
    messages.success(request, words)
    return redirect(f"{reverse('projects:draft', args=[draft.project.key])}#{anchor_of(place)}")
