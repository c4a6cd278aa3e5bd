from __future__ import annotations

from collections.abc import Callable

from django.http import HttpRequest, HttpResponseBadRequest, HttpResponseBase, QueryDict
from django_htmx.middleware import HtmxDetails


def posted(request: HttpRequest) -> QueryDict | None:
    """What a form is bound to: the fields of a POST, also of an empty one, and nothing for a GET."""
    return request.POST if request.method == "POST" else None


class HtmxRequest(HttpRequest):
    """A request as our views get it: django-htmx has been at it."""

    htmx: HtmxDetails


class Utf8Middleware:
    """Refuses a form in another encoding: Python knows some that turn bytes into no text at all."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        charset = (request.content_params or {}).get("charset", "utf-8")
        if charset.lower() not in {"utf-8", "utf8"}:
            return HttpResponseBadRequest()
        return self.get_response(request)
