from __future__ import annotations

from functools import partial

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext

from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of, written
from club.people.access import signed_in
from club.stores.access import article_for, held_for
from club.stores.actions import add_held, mend_held, remove_held
from club.stores.forms.article import RevisionForm
from club.stores.forms.held import HeldForm
from club.stores.models import Article, Held
from club.stores.sentences.amounts import held_amount
from club.stores.views.shown import show_for


def new(request: HtmxRequest, pk: int) -> HttpResponse:
    found = article_for(request.user, pk, "stores:held_new", request.method or "GET")
    form = HeldForm(posted(request), Held(article=found), _met(found))
    if form.is_valid():
        write = partial(add_held, signed_in(request), form.filled(), form.cleaned_data["revision"])
        if written(form, write):
            messages.success(request, gettext("What lies there is saved."))
            return redirect(found)
    context = {"form": form, "article": found}
    return render(request, "club/stores/held_form.html", context, status=status_of(form))


def mend(request: HtmxRequest, article_pk: int, pk: int) -> HttpResponse:
    """Count it anew."""
    found = held_for(request.user, article_pk, pk, "stores:held_mend", request.method or "GET")
    form = HeldForm(posted(request), found, _met(found.article))
    if form.is_valid():
        write = partial(mend_held, signed_in(request), form.filled(), form.cleaned_data["revision"])
        if written(form, write):
            messages.success(request, gettext("What lies there is saved."))
            return redirect(found.article)
    was = held_amount(found, show_for(request))
    context = {"form": form, "article": found.article, "held": found, "was": was}
    return render(request, "club/stores/held_form.html", context, status=status_of(form))


def remove(request: HtmxRequest, article_pk: int, pk: int) -> HttpResponse:
    found = held_for(request.user, article_pk, pk, "stores:held_remove", request.method or "GET")
    form = RevisionForm(posted(request), initial={"revision": found.revision})
    if form.is_valid():
        revision = form.cleaned_data["revision"]
        if written(form, lambda: remove_held(signed_in(request), found, revision)):
            messages.success(request, gettext("It is off the shelf's list."))
            return redirect(found.article)
    was = held_amount(found, show_for(request))
    context = {"form": form, "article": found.article, "held": found, "was": was}
    return render(request, "club/stores/held_remove.html", context, status=status_of(form))


def _met(article: Article) -> list[str]:
    return [met.specification for met in article.met.all()]
