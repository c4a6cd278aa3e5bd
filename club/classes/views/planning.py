"""Classes: the list, planning one, mending it, calling it off."""

from __future__ import annotations

from copy import copy

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext

from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of, written
from club.classes.access import class_for, classes_for
from club.classes.actions.classes import cancel_class, mend_class, plan_again, plan_class
from club.classes.forms.people import RevisionForm
from club.classes.forms.plan import BeginForm, PlanForm
from club.classes.models import ClassSession
from club.classes.starting import last_of, lathes_of, started
from club.lathes.access import workshops_in_reach
from club.people.access import signed_in
from projects.library.models import Edition

PAST_ON_A_PAGE = 20


def class_list(request: HtmxRequest) -> HttpResponse:
    now = timezone.now()
    classes = classes_for(request.user, "classes:list").with_taken(now)
    classes = classes.select_related("edition", "workshop", "instructor")
    past = Paginator(classes.past(now), PAST_ON_A_PAGE).get_page(request.GET.get("page"))
    coming = list(classes.coming(now))
    planned = sum(not session.is_cancelled for session in coming)
    context = {"coming": coming, "planned": planned, "past": past}
    return render(request, "club/classes/list.html", context)


def new(request: HtmxRequest) -> HttpResponse:
    """First what and where; then, with both in the address, everything else."""
    workshops = workshops_in_reach(request.user, "classes:new", "POST")
    begin = BeginForm(request.GET or None, workshops)
    if not begin.is_valid():
        context = {"form": begin, "any_projects": Edition.objects.kept().exists()}
        return render(request, "club/classes/begin.html", context, status=status_of(begin))
    last = last_of(**begin.cleaned_data)
    form = PlanForm(
        posted(request), instance=started(**begin.cleaned_data, last=last), initial=lathes_of(last)
    )
    if form.is_valid():
        given = form.cleaned_data
        kept = written(
            form,
            lambda: plan_class(signed_in(request), form.instance, given["lathes"], given["helpers"]),
        )
        if kept:
            messages.success(request, gettext("%(session)s is planned.") % {"session": kept.edition.title})
            return redirect(kept)
    return _form_page(request, form, form.instance, last)


def mend(request: HtmxRequest, pk: int) -> HttpResponse:
    found = class_for(request.user, pk, "classes:mend", request.method or "GET")
    session = _elsewhere(request, copy(found))
    form = PlanForm(posted(request), instance=session)
    if form.is_valid():
        given = form.cleaned_data
        rows = given["revision"], given["lathes"], given["helpers"]
        kept = written(form, lambda: mend_class(signed_in(request), form.instance, *rows))
        if kept:
            messages.success(request, gettext("%(session)s is saved.") % {"session": kept.edition.title})
            return redirect(kept)
    return _form_page(request, form, found)


def _elsewhere(request: HtmxRequest, session: ClassSession) -> ClassSession:
    """The class in another workshop, where the address names one that is in reach."""
    chosen = request.GET.get("workshop", "")
    if chosen.isdecimal() and len(chosen) < 10:
        workshops = workshops_in_reach(request.user, "classes:mend", "POST")
        session.workshop = workshops.filter(pk=int(chosen)).first() or session.workshop
    return session


def _form_page(
    request: HtmxRequest, form: PlanForm, session: ClassSession, last: ClassSession | None = None
) -> HttpResponse:
    others = workshops_in_reach(request.user, "classes:mend", "POST").exclude(pk=form.instance.workshop_id)
    context = {
        "form": form,
        "session": session,
        "workshop": form.instance.workshop,
        "others": others,
        "last": last,
    }
    return render(request, "club/classes/form.html", context, status=status_of(form))


def cancel(request: HtmxRequest, pk: int) -> HttpResponse:
    """Asks, then calls the class off; or, for one that was, plans it again."""
    found = class_for(request.user, pk, "classes:cancel", request.method or "GET")
    form = RevisionForm(posted(request), initial={"revision": found.revision})
    if form.is_valid():
        action = plan_again if found.is_cancelled else cancel_class
        kept = written(form, lambda: action(signed_in(request), found, form.cleaned_data["revision"]))
        if kept:
            words = (
                gettext("%(session)s is cancelled.")
                if kept.is_cancelled
                else gettext("%(session)s is planned again.")
            )
            messages.success(request, words % {"session": found.edition.title})
            return redirect(found)
    return render(
        request, "club/classes/cancel.html", {"form": form, "session": found}, status=status_of(form)
    )
