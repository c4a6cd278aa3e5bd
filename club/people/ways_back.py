from __future__ import annotations

from django.conf import settings
from django.http import HttpRequest
from django.shortcuts import resolve_url
from django.utils.http import url_has_allowed_host_and_scheme


def own_address(request: HttpRequest, wanted: str) -> str:
    """Where to go after signing in: the page that was wanted if it is one of ours, else the start."""
    # A bare word would be taken for the name of an address.
    is_whole = wanted.startswith("/") or "://" in wanted
    ours = {request.get_host()}
    if is_whole and url_has_allowed_host_and_scheme(wanted, ours, require_https=request.is_secure()):
        return wanted
    return resolve_url(settings.LOGIN_REDIRECT_URL)
