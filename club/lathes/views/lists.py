from __future__ import annotations

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils.translation import ngettext

from club.base.requests import HtmxRequest, posted
from club.base.writing import StaleError, TakenError
from club.lathes.access import lathes_for, workshops_for
from club.lathes.domain.lathe_row import COLUMNS
from club.lathes.forms.list import LatheListForm
from club.lathes.lists import ListPlan, bring_in, plan_list, write_lathes
from club.lathes.sentences import LIST_STALE
from club.people.access import signed_in


def bring_in_list(request: HtmxRequest) -> HttpResponse:
    """Look a list over, then bring it in: what was looked over is what is written, or nothing is."""
    form = LatheListForm(posted(request), request.FILES or None)
    plan = None
    if form.is_valid():
        plan = plan_list(form.cleaned_data["text"], workshops_for(request.user, "lathes:import", "POST"))
        if request.POST.get("looked_over") and _bring_in(request, form, plan):
            return redirect("lathes:list")
    context = {"form": form, "plan": plan, "columns": list(COLUMNS)}
    wrong = bool(form.is_bound and (form.errors or (plan and plan.all_problems)))
    return render(request, "club/lathes/bring_in.html", context, status=422 if wrong else 200)


def _bring_in(request: HtmxRequest, form: LatheListForm, plan: ListPlan) -> bool:
    if not plan.is_good:
        return False
    if plan.mark != request.POST["looked_over"]:
        form.add_error(None, LIST_STALE)
        return False
    try:
        bring_in(signed_in(request), plan)
    except (StaleError, TakenError):
        form.add_error(None, LIST_STALE)
        return False
    messages.success(request, _brought_in(len(plan.lines)))
    return True


def _brought_in(count: int) -> str:
    return ngettext("%(count)d line is in.", "All %(count)d lines are in.", count) % {"count": count}


def export(request: HtmxRequest) -> HttpResponse:
    text = write_lathes(lathes_for(request.user, "lathes:export").whole())
    # The mark tells spreadsheets that it is UTF-8.
    response = HttpResponse("\ufeff" + text, content_type="text/csv; charset=utf-8")
    response["Content-Disposition"] = 'attachment; filename="lathes.csv"'
    return response
