from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone

from club.base.access import may
from club.base.requests import HtmxRequest
from club.home.start_page import page_of
from club.people.access import signed_in


def start(request: HtmxRequest) -> HttpResponse:
    """Staff see the next class; whoever is signed in without a role sees their own page; others sign in."""
    if may(request.user, "classes:class"):
        return render(request, "club/home/start.html", page_of(signed_in(request), timezone.now()))
    return redirect("people:me" if request.user.is_authenticated else "people:sign_in")
