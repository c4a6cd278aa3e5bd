"""Libraries come in and go out, and two editions are held against each other."""

from __future__ import annotations

import json

from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext, ngettext

from club.base.pages import reader_lengths
from club.base.requests import HtmxRequest, posted
from club.base.writing import StaleError, TakenError
from projects.library import exchange
from projects.library.access import courses_for, edition_for, editions_for
from projects.library.domain.library_form import library_schema
from projects.library.domain.schema import project_schema
from projects.library.forms.bring_in import BringInForm
from projects.library.plans import LibraryPlan, differences
from projects.library.sentences.exchange import STALE

SCHEMAS = {"project": project_schema, "library": library_schema}


def bring_in(request: HtmxRequest) -> HttpResponse:
    """Look a file over, then bring it in: what was looked over is what is written, or nothing is."""
    form = BringInForm(posted(request), request.FILES or None)
    plan = None
    if form.is_valid():
        plan = exchange.plan_library(form.cleaned_data["data"], reader_lengths(request))
        if request.POST.get("looked_over") and _bring_in(request, form, plan):
            return redirect("projects:list")
    context = {"form": form, "plan": plan}
    wrong = bool(form.is_bound and (form.errors or (plan and plan.all_problems)))
    return render(request, "projects/library/bring_in.html", context, status=422 if wrong else 200)


def _bring_in(request: HtmxRequest, form: BringInForm, plan: LibraryPlan) -> bool:
    if plan.all_problems:
        return False
    try:
        exchange.bring_in(request.user, plan, request.POST["looked_over"])
    except (StaleError, TakenError):
        form.add_error(None, str(STALE))
        return False
    messages.success(request, _brought_in(plan))
    return True


def _brought_in(plan: LibraryPlan) -> str:
    editions = ngettext("%(count)d edition is in", "%(count)d editions are in", plan.new_count)
    courses = ngettext("%(count)d course", "%(count)d courses", plan.course_count)
    said = {
        "editions": editions % {"count": plan.new_count},
        "courses": courses % {"count": plan.course_count},
    }
    return gettext("%(editions)s, and %(courses)s.") % said


def take_away(request: HtmxRequest) -> HttpResponse:
    editions = editions_for(request.user, "projects:take_away")
    courses = courses_for(request.user, "projects:take_away")
    return _file(exchange.write_library(editions, courses), "library.json")


def edition_json(request: HtmxRequest, key: str, number: int) -> HttpResponse:
    edition = edition_for(request.user, key, number, "projects:edition_json")
    return _file(exchange.write_edition(edition), f"{key}-{number}.json")


def schema(request: HtmxRequest, form: str) -> HttpResponse:
    """The JSON Schema of a project's document or of a library's."""
    if form not in SCHEMAS:
        raise Http404
    text = json.dumps(SCHEMAS[form](), ensure_ascii=False, indent=2) + "\n"
    return HttpResponse(text, content_type="application/schema+json")


def difference(request: HtmxRequest, key: str, older: int, newer: int) -> HttpResponse:
    """What differs between two editions of a project, in the reader's lengths."""
    old = edition_for(request.user, key, older, "projects:difference")
    new = edition_for(request.user, key, newer, "projects:difference")
    said = differences(old.recipe, new.recipe, reader_lengths(request))
    return render(request, "projects/library/difference.html", {"older": old, "newer": new, "said": said})


def _file(text: str, name: str) -> HttpResponse:
    response = HttpResponse(text, content_type="application/json")
    response["Content-Disposition"] = f'attachment; filename="{name}"'
    return response
