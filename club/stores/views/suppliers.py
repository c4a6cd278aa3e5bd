from __future__ import annotations

from functools import partial

from django.contrib import messages
from django.db.models import Count
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext

from club.base.changes import changes_of
from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of, written
from club.people.access import signed_in
from club.stores.access import supplier_for, suppliers_for
from club.stores.actions import add_supplier, mend_supplier, remove_supplier
from club.stores.article_page import offer_lines, terms_of
from club.stores.forms.article import RevisionForm
from club.stores.forms.supplier import SupplierForm
from club.stores.models import Supplier
from club.stores.views.shown import back_or_to, show_for, way_back


def supplier_list(request: HtmxRequest) -> HttpResponse:
    # Counting drops the order of the rows.
    counted = suppliers_for(request.user, "stores:suppliers").annotate(offer_count=Count("offers"))
    suppliers = counted.order_by("name")
    return render(request, "club/stores/suppliers.html", {"lines": [*map(terms_of, suppliers)]})


def supplier(request: HtmxRequest, pk: int) -> HttpResponse:
    found = supplier_for(request.user, pk, "stores:supplier")
    offers = found.offers.select_related("article").order_by("article__name", "label")
    context = {
        "supplier": found,
        "terms": terms_of(found),
        "offers": offer_lines(offers, show_for(request), reader_lengths(request)),
        "changes": changes_of(found),
    }
    return render(request, "club/stores/supplier.html", context)


def new(request: HtmxRequest) -> HttpResponse:
    form = SupplierForm(posted(request), Supplier())
    if form.is_valid():
        kept = written(form, lambda: add_supplier(signed_in(request), form.filled()))
        if kept:
            messages.success(request, gettext("%(supplier)s is saved.") % {"supplier": kept})
            return back_or_to(request, kept)
    context = {"form": form, "back": way_back(request)}
    return render(request, "club/stores/supplier_form.html", context, status=status_of(form))


def mend(request: HtmxRequest, pk: int) -> HttpResponse:
    found = supplier_for(request.user, pk, "stores:supplier_mend", request.method or "GET")
    form = SupplierForm(posted(request), found)
    if form.is_valid():
        write = partial(mend_supplier, signed_in(request), form.filled(), form.cleaned_data["revision"])
        kept = written(form, write)
        if kept:
            messages.success(request, gettext("%(supplier)s is saved.") % {"supplier": kept})
            return redirect(kept)
    context = {"form": form, "supplier": found}
    return render(request, "club/stores/supplier_form.html", context, status=status_of(form))


def remove(request: HtmxRequest, pk: int) -> HttpResponse:
    found = supplier_for(request.user, pk, "stores:supplier_remove", request.method or "GET")
    form = RevisionForm(posted(request), initial={"revision": found.revision})
    if form.is_valid():
        revision = form.cleaned_data["revision"]
        if written(form, lambda: remove_supplier(signed_in(request), found, revision)):
            messages.success(request, gettext("%(supplier)s is out of the list.") % {"supplier": found})
            return redirect("stores:suppliers")
    context = {"form": form, "supplier": found, "offered": found.offers.count()}
    return render(request, "club/stores/supplier_remove.html", context, status=status_of(form))
