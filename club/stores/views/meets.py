from __future__ import annotations

from functools import partial
from urllib.parse import urlencode

from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.translation import gettext

from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of, written
from club.people.access import signed_in
from club.stores.access import article_for, articles_for, met_for
from club.stores.actions import meet, meet_all, unmeet
from club.stores.asked_for import asked_for as everything_asked_for
from club.stores.asked_for import asked_of
from club.stores.forms.meets import AskForm, MeetForm, SpecificationsForm, WantedForm
from club.stores.models import Article
from club.stores.views.shown import back_or_to, way_back


def asked_for(request: HtmxRequest) -> HttpResponse:
    """What the projects ask for, and what of it nothing meets."""
    return render(request, "club/stores/asked_for.html", {"asked": everything_asked_for()})


def add(request: HtmxRequest) -> HttpResponse:
    """Choose the article that meets what the address names."""
    wanted = WantedForm(request.GET)
    if not wanted.is_valid():
        raise Http404
    kind, specification = wanted.cleaned_data["kind"], wanted.cleaned_data["specification"]
    articles = articles_for(request.user, "stores:meets_add", "POST").filter(kind=kind)
    form = MeetForm(posted(request), articles)
    if form.is_valid():
        met = written(form, lambda: meet(signed_in(request), form.chosen, specification))
        if met:
            messages.success(request, gettext("%(article)s meets it.") % {"article": met.article})
            return back_or_to(request, met.article)
    context = {**_asked(request, kind, specification), "form": form}
    return render(request, "club/stores/meets_add.html", context, status=status_of(form))


def _asked(request: HtmxRequest, kind: str, specification: str) -> dict[str, object]:
    """What is asked, and where an article that isn't there yet is made."""
    back = way_back(request)
    handed_on = {"kind": kind, "specification": specification, **({"next": back} if back else {})}
    return {
        "specification": specification,
        "kind_words": Article.Kind(kind).label,
        "back": back,
        "new_article": f"{reverse('stores:new')}?{urlencode(handed_on)}",
    }


def of_article(request: HtmxRequest, pk: int) -> HttpResponse:
    """Say of an article what it meets."""
    found = article_for(request.user, pk, "stores:meets_new", request.method or "GET")
    form = SpecificationsForm(posted(request), asked_of(found))
    if form.is_valid():
        write = partial(meet_all, signed_in(request), found, form.specifications)
        if written(form, write):
            messages.success(request, gettext("What %(article)s meets is saved.") % {"article": found})
            return redirect(found)
    context = {"form": form, "article": found}
    return render(request, "club/stores/meets_new.html", context, status=status_of(form))


def remove(request: HtmxRequest, article_pk: int, pk: int) -> HttpResponse:
    found = met_for(request.user, article_pk, pk, "stores:meets_remove", request.method or "GET")
    form = AskForm(posted(request))
    if form.is_valid() and written(form, lambda: bool(unmeet(signed_in(request), found))):
        messages.success(request, gettext("%(article)s meets it no more.") % {"article": found.article})
        return redirect(found.article)
    context = {"form": form, "article": found.article, "met": found}
    return render(request, "club/stores/meets_remove.html", context, status=status_of(form))
