from __future__ import annotations

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext
from django.views.decorators.cache import never_cache
from django.views.decorators.debug import sensitive_variables

from club.base.requests import posted
from club.people import sentences
from club.people.access import person_to_mend, sign_in_to_mend, signed_in
from club.people.actions.roles import LastKeyError, is_last_key
from club.people.actions.sign_ins import (
    NameTakenError,
    bar_sign_in,
    first_password,
    give_sign_in,
    open_sign_in,
    renew_password,
)
from club.people.forms import SignInNameForm
from club.people.models import Account, Person


@never_cache
@sensitive_variables("password")
def give(request: HttpRequest, pk: int) -> HttpResponse:
    account = signed_in(request)
    person = person_to_mend(account, pk)
    if person.sign_in:
        return redirect(person)
    form = SignInNameForm(posted(request))
    if form.is_valid():
        password = first_password()
        try:
            given = give_sign_in(account, person, form.cleaned_data["name"], password)
            return _password_page(request, given, password)
        except NameTakenError:
            form.add_error("name", sentences.NAME_TAKEN)
    context = {"form": form, "person": person}
    return render(request, "club/people/give_sign_in.html", context, status=422 if form.errors else 200)


@never_cache
@sensitive_variables("password")
def renew(request: HttpRequest, pk: int) -> HttpResponse:
    by = signed_in(request)
    account = sign_in_to_mend(by, pk)
    if request.method == "POST":
        password = first_password()
        renew_password(by, account, password)
        return _password_page(request, account, password)
    return render(request, "club/people/renew_password.html", {"person": account.person, "account": account})


def bar(request: HttpRequest, pk: int) -> HttpResponse:
    by = signed_in(request)
    account = sign_in_to_mend(by, pk)
    last = is_last_key(account.person)
    if request.method == "POST":
        try:
            bar_sign_in(by, account)
            messages.success(request, gettext("%(person)s can't sign in any more.") % {"person": account})
            return redirect(account.person)
        except LastKeyError:
            last = True
    return _bar_page(request, account.person, last)


def open_again(request: HttpRequest, pk: int) -> HttpResponse:
    by = signed_in(request)
    account = sign_in_to_mend(by, pk)
    open_sign_in(by, account)
    messages.success(request, gettext("%(person)s can sign in again.") % {"person": account})
    return redirect(account.person)


def _bar_page(request: HttpRequest, person: Person, last: bool) -> HttpResponse:
    context: dict[str, object] = {"person": person}
    if last:
        context["refusal"] = sentences.LAST_KEY % {"person": person}
    status = 422 if last and request.method == "POST" else 200
    return render(request, "club/people/bar_sign_in.html", context, status=status)


def _password_page(request: HttpRequest, account: Account, password: str) -> HttpResponse:
    """The only time this password is shown: it is answered at once and kept nowhere."""
    context = {"person": account.person, "account": account, "password": password}
    return render(request, "club/people/first_password.html", context)
