from __future__ import annotations

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext

from club.base.requests import posted
from club.people import sentences
from club.people.access import grant_to_withdraw, person_for, signed_in, workshops_to_grant
from club.people.actions.roles import LastKeyError, RoleHeldError, give_role, is_last_key, withdraw_role
from club.people.forms import RoleForm
from club.people.models import Account, Person, RoleGrant


def give(request: HttpRequest, pk: int) -> HttpResponse:
    account = signed_in(request)
    person = person_for(account, pk)
    form = RoleForm(posted(request), *workshops_to_grant(account))
    if form.is_valid() and _given(account, person, form):
        messages.success(request, gettext("%(person)s has the role.") % {"person": person})
        return redirect(person)
    context = {"form": form, "person": person}
    return render(request, "club/people/give_role.html", context, status=422 if form.errors else 200)


def _given(account: Account, person: Person, form: RoleForm) -> bool:
    try:
        give_role(account, person, form.cleaned_data["role"], form.cleaned_data["workshop"])
    except RoleHeldError:
        form.add_error(None, sentences.ROLE_HELD % {"person": person})
        return False
    return True


def withdraw(request: HttpRequest, person_pk: int, pk: int) -> HttpResponse:
    account = signed_in(request)
    grant = grant_to_withdraw(account, person_pk, pk)
    last = grant.workshop_id is None and grant.role == "coordinator" and is_last_key(grant.person)
    if request.method == "POST":
        try:
            withdraw_role(account, grant)
            return _withdrawn(request, grant.person)
        except LastKeyError:
            last = True
    return _ask_page(request, grant, last)


def _withdrawn(request: HttpRequest, person: Person) -> HttpResponse:
    messages.success(request, gettext("The role is withdrawn."))
    # Whoever gave up their own role may not be let in here any more.
    return redirect("home:start") if person == signed_in(request).person else redirect(person)


def _ask_page(request: HttpRequest, grant: RoleGrant, last: bool) -> HttpResponse:
    context: dict[str, object] = {"grant": grant, "person": grant.person}
    if last:
        context["refusal"] = sentences.LAST_KEY % {"person": grant.person}
    status = 422 if last and request.method == "POST" else 200
    return render(request, "club/people/withdraw_role.html", context, status=status)
