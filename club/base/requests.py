from __future__ import annotations

from django.http import HttpRequest, QueryDict
from django_htmx.middleware import HtmxDetails


def posted(request: HttpRequest) -> QueryDict | None:
    """What a form is bound to: the fields of a POST, also of an empty one, and nothing for a GET."""
    return request.POST if request.method == "POST" else None


class HtmxRequest(HttpRequest):
    """A request as our views get it: django-htmx has been at it."""

    htmx: HtmxDetails
