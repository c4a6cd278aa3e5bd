"""What everybody who signs in may do for themselves."""

from __future__ import annotations

from django.contrib import messages
from django.contrib.auth import update_session_auth_hash
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext
from django.views.decorators.debug import sensitive_post_parameters

from club.base.requests import posted
from club.people.access import signed_in
from club.people.actions.sign_ins import choose_lengths, choose_password
from club.people.forms import LengthsForm, OwnPasswordForm


def me(request: HttpRequest) -> HttpResponse:
    account = signed_in(request)
    form = LengthsForm(posted(request), instance=account)
    if form.is_valid():
        choose_lengths(account, form.cleaned_data["lengths"])
        messages.success(request, gettext("Lengths are shown that way from now on."))
        return redirect("people:me")
    roles = account.person.role_grants.select_related("workshop")
    context = {"form": form, "person": account.person, "roles": roles}
    return render(request, "club/people/me.html", context, status=422 if form.errors else 200)


@sensitive_post_parameters()
def password(request: HttpRequest) -> HttpResponse:
    account = signed_in(request)
    form = OwnPasswordForm(account, posted(request))
    if form.is_valid():
        choose_password(account, form.cleaned_data["new"])
        # Other places where this account is signed in are signed out; this one stays.
        update_session_auth_hash(request, account)
        messages.success(request, gettext("The new password holds from now on."))
        return redirect("people:me")
    return render(request, "club/people/password.html", {"form": form}, status=422 if form.errors else 200)
