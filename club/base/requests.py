from __future__ import annotations

from django.http import HttpRequest
from django_htmx.middleware import HtmxDetails


class HtmxRequest(HttpRequest):
    """A request as our views get it: django-htmx has been at it."""

    htmx: HtmxDetails
