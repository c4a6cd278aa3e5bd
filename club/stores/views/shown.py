"""What views of the stores share: how lengths are shown to this reader, and where a form leads back to."""

from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import redirect
from django.utils.http import url_has_allowed_host_and_scheme

from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest
from club.stores.models import Article, Supplier
from club.stores.sentences.amounts import Show
from projects.library.sentences.lengths import shown_in


def show_for(request: HtmxRequest) -> Show:
    return shown_in(reader_lengths(request))


def way_back(request: HtmxRequest) -> str:
    """The path from which somebody came here for a moment; nothing for one that isn't of this club."""
    path = request.GET.get("next", "")
    is_ours = path.startswith("/") and url_has_allowed_host_and_scheme(path, allowed_hosts=None)
    return path if is_ours else ""


def back_or_to(request: HtmxRequest, thing: Article | Supplier) -> HttpResponse:
    return redirect(way_back(request) or thing)
