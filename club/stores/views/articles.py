from __future__ import annotations

from functools import partial

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext
from django.views.decorators.vary import vary_on_headers

from club.base.changes import changes_of
from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of, written
from club.people.access import signed_in
from club.stores.access import article_for, articles_for, whole_article_for
from club.stores.actions import add_article, mend_article, remove_article
from club.stores.article_page import held_lines, offer_lines
from club.stores.forms.article import ArticleForm, RevisionForm
from club.stores.forms.filters import ArticleFilterForm
from club.stores.forms.meets import offered_kind, wanted_specification
from club.stores.models import Article
from club.stores.sentences.amounts import lying_there
from club.stores.sentences.forms import kinds_to_choose
from club.stores.stock_list import counts_of, lines_of, narrowed_down
from club.stores.views.shown import back_or_to, show_for, way_back

ARTICLES_A_PAGE = 60


@vary_on_headers("HX-Request", "HX-History-Restore-Request")
def article_list(request: HtmxRequest) -> HttpResponse:
    articles = articles_for(request.user, "stores:list")
    form = ArticleFilterForm(request.GET)
    page = Paginator(narrowed_down(articles, form.wanted), ARTICLES_A_PAGE).get_page(request.GET.get("page"))
    lines = lines_of(page.object_list, show_for(request))
    context = {"form": form, "page": page, "lines": lines, "narrowed": form.narrowed}
    if request.htmx and not request.htmx.history_restore_request:
        return render(request, "club/stores/_articles.html", context)
    return render(request, "club/stores/list.html", {**context, "counts": counts_of(articles)})


def article(request: HtmxRequest, pk: int) -> HttpResponse:
    found = whole_article_for(request.user, pk, "stores:article")
    show = show_for(request)
    context = {
        "article": found,
        "lying": lying_there(found.held.all(), show),
        "held": held_lines(found.held.all(), show),
        "offers": offer_lines(found.offers.all(), show, reader_lengths(request)),
        "changes": changes_of(found),
    }
    return render(request, "club/stores/article.html", context)


def new(request: HtmxRequest) -> HttpResponse:
    """The kind is chosen first: it says what the form asks for."""
    kind = offered_kind(request.GET)
    back = way_back(request)
    if not kind:
        return render(request, "club/stores/new.html", {"kinds": kinds_to_choose()})
    specification = wanted_specification(request.GET)
    form = ArticleForm(posted(request), Article(kind=kind, name=specification), specification)
    if form.is_valid():
        kept = written(form, lambda: add_article(signed_in(request), form.filled(), form.met))
        if kept:
            messages.success(request, gettext("%(article)s is saved.") % {"article": kept})
            return back_or_to(request, kept)
    context = {"form": form, "article": form.article, "back": back}
    return render(request, "club/stores/article_form.html", context, status=status_of(form))


def mend(request: HtmxRequest, pk: int) -> HttpResponse:
    found = article_for(request.user, pk, "stores:mend", request.method or "GET")
    form = ArticleForm(posted(request), found)
    if form.is_valid():
        write = partial(mend_article, signed_in(request), form.filled(), form.cleaned_data["revision"])
        kept = written(form, write)
        if kept:
            messages.success(request, gettext("%(article)s is saved.") % {"article": kept})
            return redirect(kept)
    context = {"form": form, "article": found}
    return render(request, "club/stores/article_form.html", context, status=status_of(form))


def remove(request: HtmxRequest, pk: int) -> HttpResponse:
    found = whole_article_for(request.user, pk, "stores:remove", request.method or "GET")
    form = RevisionForm(posted(request), initial={"revision": found.revision})
    if form.is_valid():
        revision = form.cleaned_data["revision"]
        if written(form, lambda: remove_article(signed_in(request), found, revision)):
            messages.success(request, gettext("%(article)s is out of the stores.") % {"article": found})
            return redirect("stores:list")
    context = {"form": form, "article": found, "lying": lying_there(found.held.all(), show_for(request))}
    return render(request, "club/stores/remove.html", context, status=status_of(form))
