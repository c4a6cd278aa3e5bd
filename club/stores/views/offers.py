from __future__ import annotations

from functools import partial

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext

from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of, written
from club.people.access import signed_in
from club.stores.access import article_for, offer_for, suppliers_for
from club.stores.actions import add_offer, mend_offer, remove_offer
from club.stores.article_page import offer_lines
from club.stores.forms.article import RevisionForm
from club.stores.forms.offer import OfferForm
from club.stores.models import Offer
from club.stores.views.shown import show_for


def new(request: HtmxRequest, pk: int) -> HttpResponse:
    found = article_for(request.user, pk, "stores:offer_new", request.method or "GET")
    suppliers = suppliers_for(request.user, "stores:offer_new", "POST")
    form = OfferForm(posted(request), Offer(article=found), suppliers)
    if form.is_valid():
        write = partial(add_offer, signed_in(request), form.filled(), form.cleaned_data["revision"])
        kept = written(form, write)
        if kept:
            messages.success(
                request, gettext("The offer of %(supplier)s is saved.") % {"supplier": kept.supplier}
            )
            return redirect(found)
    context = {"form": form, "article": found}
    return render(request, "club/stores/offer_form.html", context, status=status_of(form))


def mend(request: HtmxRequest, article_pk: int, pk: int) -> HttpResponse:
    found = offer_for(request.user, article_pk, pk, "stores:offer_mend", request.method or "GET")
    form = OfferForm(posted(request), found, suppliers_for(request.user, "stores:offer_mend", "POST"))
    if form.is_valid():
        write = partial(mend_offer, signed_in(request), form.filled(), form.cleaned_data["revision"])
        kept = written(form, write)
        if kept:
            messages.success(
                request, gettext("The offer of %(supplier)s is saved.") % {"supplier": kept.supplier}
            )
            return redirect(found.article)
    context = {"form": form, "article": found.article, "offer": found}
    return render(request, "club/stores/offer_form.html", context, status=status_of(form))


def remove(request: HtmxRequest, article_pk: int, pk: int) -> HttpResponse:
    found = offer_for(request.user, article_pk, pk, "stores:offer_remove", request.method or "GET")
    form = RevisionForm(posted(request), initial={"revision": found.article.revision})
    if form.is_valid():
        revision = form.cleaned_data["revision"]
        if written(form, lambda: remove_offer(signed_in(request), found, revision)):
            messages.success(
                request, gettext("The offer of %(supplier)s is gone.") % {"supplier": found.supplier}
            )
            return redirect(found.article)
    context = {
        "form": form,
        "article": found.article,
        "line": offer_lines([found], show_for(request), reader_lengths(request))[0],
    }
    return render(request, "club/stores/offer_remove.html", context, status=status_of(form))
