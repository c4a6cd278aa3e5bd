"""Places of a recipe as people call them: `step 3 of mounting 1`."""

from __future__ import annotations

from functools import reduce

from django.utils.functional import Promise
from django.utils.text import capfirst
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from projects.library.domain.errors import RecipeError
from projects.library.domain.places import Place
from projects.library.sentences.errors import error_sentence

# One entry of a list, and the single things, by the field that holds them.
ENTRIES: dict[str, str | Promise] = {
    "mountings": _("mounting %(number)s"),
    "steps": _("step %(number)s"),
    "finish": _("coat %(number)s"),
    "glue_ups": _("glue-up %(number)s"),
    "preparation": _("task %(number)s"),
    "materials": _("material %(number)s"),
    "cautions": _("caution %(number)s"),
}
THINGS: dict[str, str | Promise] = {
    "blank": _("blank"),
    "easier": _("easier variant"),
    "grits": _("grits"),
    "harder": _("harder variant"),
    "holding": _("way of holding"),
    "hole": _("hole"),
    "left_end": _("left end"),
    "profile": _("drawing"),
    "right_end": _("right end"),
    "skills": _("skills needed"),
    "spares": _("spares"),
    "tailstock": _("tailstock"),
    "time": _("time"),
}
SAVE: dict[str, str | Promise] = {
    "blank": _("Save the blank"),
    "cautions": _("Save the caution"),
    "easier": _("Save the variant"),
    "finish": _("Save the coat"),
    "glue_ups": _("Save the glue-up"),
    "grits": _("Save the grits"),
    "harder": _("Save the variant"),
    "holding": _("Save the way of holding"),
    "left_end": _("Save the end"),
    "materials": _("Save the material"),
    "mountings": _("Save the mounting"),
    "preparation": _("Save the task"),
    "right_end": _("Save the end"),
    "skills": _("Save the skills"),
    "spares": _("Save the spares"),
    "steps": _("Save the step"),
    "time": _("Save the times"),
}
SAVE_AS_IT_IS = _("Save it")


def place_words(place: Place) -> str:
    """The innermost thing first: `tailstock of mounting 1`; "title and summary" for the recipe itself."""
    words = [word for at in range(len(place)) if (word := _word(place, at))]
    return reduce(_inside, words) if words else gettext("title and summary")


def save_words(place: Place) -> str:
    """What the button says that saves what stands there: `Save the step`."""
    names = [step for step in place if isinstance(step, str)]
    return str(SAVE.get(names[-1], SAVE_AS_IT_IS) if names else SAVE_AS_IT_IS)


def hindrance_sentence(error: RecipeError, place: Place) -> str:
    """Why something can't be taken out: what stands at this place names it, or else what the error says."""
    if error.code != "unknown_reference":
        return error_sentence(error)
    who = {"who": capfirst(place_words(place))}
    return gettext("%(who)s names it, so it stays until that is mended.") % who


def _word(place: Place, at: int) -> str:
    """The word for one step of the way, "" where the next one says more."""
    step = place[at]
    if isinstance(step, str):
        return str(THINGS.get(step, ""))
    entry = ENTRIES.get(str(place[at - 1]))
    return str(entry) % {"number": step + 1} if entry else ""


def _inside(outer: str, inner: str) -> str:
    return gettext("%(inner)s of %(outer)s") % {"inner": inner, "outer": outer}
