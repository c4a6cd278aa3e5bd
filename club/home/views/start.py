from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import redirect

from club.base.access import may
from club.base.requests import HtmxRequest


def start(request: HtmxRequest) -> HttpResponse:
    """Staff go to the lathes; whoever is signed in without a role sees their own page; others sign in."""
    if may(request.user, "lathes:list"):
        return redirect("lathes:list")
    return redirect("people:me" if request.user.is_authenticated else "people:sign_in")
