"""The one way a page writes into a draft: the whole recipe is checked, then saved."""

from __future__ import annotations

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render

from club.base.writing import written
from projects.library.actions import save_draft
from projects.library.domain.errors import RecipeError
from projects.library.domain.json_form import from_json, to_json
from projects.library.domain.recipe import Recipe
from projects.library.forms.draft import DraftForm
from projects.library.models import Edition
from projects.library.sentences.errors import error_sentence

# What a page sends besides what somebody typed.
UNTYPED = frozenset({"csrfmiddlewaretoken", "revision", "act", "row"})


def checked(recipe: Recipe) -> Recipe:
    """The recipe as it will be read back; raises RecipeError for one that could not be."""
    return from_json(to_json(recipe))


def saved(request: HttpRequest, form: DraftForm, draft: Edition, recipe: Recipe) -> Edition | None:
    """The draft with this recipe, or None with the reason on the form."""
    try:
        whole = checked(recipe)
    except RecipeError as error:
        form.add_error(form.field_at(error.path), error_sentence(error))
        return None
    return written(form, lambda: save_draft(request.user, draft, whole, form.cleaned_data["revision"]))


def gone(request: HttpRequest, draft: Edition) -> HttpResponse:
    """The answer for a place that isn't there: on a page out of date everything typed is handed back."""
    if request.method != "POST" or request.POST.get("revision") == str(draft.revision):
        raise Http404
    sent = (values for name, values in request.POST.lists() if name not in UNTYPED)
    typed = [str(text) for values in sent for text in values if text]
    context = {"edition": draft, "key": draft.project.key, "typed": typed}
    return render(request, "projects/library/draft_gone.html", context, status=422)
