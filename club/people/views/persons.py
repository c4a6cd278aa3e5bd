from __future__ import annotations

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext
from django.views.decorators.vary import vary_on_headers

from club.base.changes import changes_of
from club.base.requests import HtmxRequest, posted
from club.people import sentences
from club.people.access import oversees, people_for, person_for, person_to_mend, reaches, signed_in
from club.people.actions.persons import StalePersonError, add_person, mend_person
from club.people.forms import PersonForm
from club.people.models import Person

PEOPLE_A_PAGE = 25
LONGEST_SEARCH = 100


@vary_on_headers("HX-Request", "HX-History-Restore-Request")
def person_list(request: HtmxRequest) -> HttpResponse:
    words = request.GET.get("name", "")[:LONGEST_SEARCH]
    found = people_for(signed_in(request)).matching(words)
    page = Paginator(found, PEOPLE_A_PAGE).get_page(request.GET.get("page"))
    fragment = request.htmx and not request.htmx.history_restore_request
    context = {"page": page, "words": words}
    if fragment:
        return render(request, "club/people/_people.html", context)
    everybody = Person.objects.all()
    counts = {"known": everybody.count(), "signing_in": everybody.who_can_sign_in().count()}
    return render(request, "club/people/list.html", {**context, **counts})


def person(request: HttpRequest, pk: int) -> HttpResponse:
    account = signed_in(request)
    found = person_for(account, pk)
    context = {
        "person": found,
        "overseen": oversees(account, found),
        "withdrawable": [grant.pk for grant in found.role_grants.all() if reaches(account, grant)],
        "changes": changes_of(found),
    }
    return render(request, "club/people/person.html", context)


def new(request: HttpRequest) -> HttpResponse:
    form = PersonForm(posted(request))
    if form.is_valid():
        return _kept(request, add_person(signed_in(request), form.instance))
    return _form_page(request, form)


def mend(request: HttpRequest, pk: int) -> HttpResponse:
    account = signed_in(request)
    form = PersonForm(posted(request), instance=person_to_mend(account, pk))
    if form.is_valid():
        try:
            return _kept(request, mend_person(account, form.instance, form.cleaned_data["revision"]))
        except StalePersonError:
            form.add_error(None, sentences.STALE)
    return _form_page(request, form)


def _form_page(request: HttpRequest, form: PersonForm) -> HttpResponse:
    named = Person.objects.filter(pk=form.instance.pk).first()
    context = {"form": form, "person": named}
    return render(request, "club/people/person_form.html", context, status=422 if form.errors else 200)


def _kept(request: HttpRequest, found: Person) -> HttpResponse:
    messages.success(request, gettext("%(person)s is saved.") % {"person": found})
    return redirect(found)
