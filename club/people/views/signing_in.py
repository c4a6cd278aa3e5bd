from __future__ import annotations

from typing import Any

from django.contrib.auth import login, logout
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.views.decorators.cache import never_cache
from django.views.decorators.debug import sensitive_post_parameters

from club.base.requests import posted
from club.people.forms import SignInForm
from club.people.throttle import minutes_to_wait
from club.people.ways_back import own_address


@never_cache
@sensitive_post_parameters("password")
def sign_in(request: HttpRequest) -> HttpResponse:
    back = own_address(request, request.POST.get("next") or request.GET.get("next", ""))
    if request.user.is_authenticated:
        return redirect(back)
    form = SignInForm(request, posted(request))
    if form.is_valid() and form.account:
        login(request, form.account)
        return redirect(back)
    context = {"form": form, "back": back}
    return render(request, "club/people/sign_in.html", context, status=422 if form.errors else 200)


def sign_out(request: HttpRequest) -> HttpResponse:
    logout(request)
    return redirect("home:start")


def locked_out(
    request: HttpRequest, response: HttpResponseBase | None, credentials: dict[str, Any]
) -> HttpResponse:
    """What the throttle answers after too many wrong passwords for one name from one place."""
    context = {"minutes": minutes_to_wait(request, credentials)}
    return render(request, "club/people/locked_out.html", context, status=429)
