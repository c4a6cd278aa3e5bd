"""A draft is kept, thrown away, or begun from the last edition."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import gettext

from club.base.requests import HtmxRequest, posted
from club.base.writing import StaleError, TakenError, status_of, written
from projects.library import actions
from projects.library.access import draft_for, project_for
from projects.library.actions import NotGoodError
from projects.library.forms.lifecycle import RevisionForm
from projects.library.looked_over import looked_over


def keep(request: HtmxRequest, key: str) -> HttpResponse:
    draft = draft_for(request.user, key, "projects:keep", request.method or "GET")
    form = RevisionForm(posted(request), initial={"revision": draft.revision})
    if form.is_valid():
        revision = form.cleaned_data["revision"]
        try:
            kept = written(form, lambda: actions.keep_draft(request.user, draft, revision))
        except NotGoodError:
            kept = None
            form.add_error(None, gettext("What is named below stops it from being kept. Mend that first."))
        if kept:
            messages.success(request, gettext("%(edition)s is kept.") % {"edition": kept})
            return redirect(kept)
    context = {"form": form, "edition": draft, "look": looked_over(draft.recipe)}
    return render(request, "projects/library/keep.html", context, status=status_of(form))


def throw_away(request: HtmxRequest, key: str) -> HttpResponse:
    draft = draft_for(request.user, key, "projects:throw_away", request.method or "GET")
    form = RevisionForm(posted(request), initial={"revision": draft.revision})
    if form.is_valid():
        revision = form.cleaned_data["revision"]
        if written(form, lambda: actions.throw_away(request.user, draft, revision)):
            words = gettext("The draft of %(title)s is thrown away.") % {"title": draft.title}
            messages.success(request, words)
            return redirect("projects:list")
    context = {"form": form, "edition": draft}
    return render(request, "projects/library/throw_away.html", context, status=status_of(form))


def next_edition(request: HtmxRequest, key: str) -> HttpResponse:
    """To the draft of the next edition, begun now unless somebody has begun it already."""
    project = project_for(request.user, key, "projects:next_edition", "POST")
    try:
        actions.next_edition(request.user, project)
    except TakenError:
        messages.info(request, gettext("The next edition was begun already; this is it."))
    except StaleError:
        messages.info(request, gettext("No edition is kept yet; this is its draft."))
    return redirect("projects:draft", project.key)
