"""What people read when a file or a draft is no recipe: where, what is wrong, and what would be accepted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from django.utils.functional import Promise
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.base.quantities.errors import QuantityError
from club.base.quantities.shown import thousands
from club.base.sentences import sentence
from projects.geometry.profile import ProfileError
from projects.library.domain.errors import RecipeError
from projects.library.sentences.drawings import drawing_sentence
from projects.library.sentences.leads import led, place_lead

Words = str | Promise

WHOLE: Mapping[str, Words] = {
    "huge": _("The file is over %(megabytes)s\u00a0MB. Bring it in in parts."),
    "not_text": _("This is no text in UTF-8. Choose a file that was taken away from a library as JSON."),
    "broken": _("This is no whole JSON: it was cut off or changed on the way. Take the file away anew."),
    "too_deep": _("In this file things stand inside each other more than %(most)s deep; no project is so."),
    "foreign": _(
        "This is JSON, but no project and no library of Handwheel. "
        "Choose a file that was taken away from one."
    ),
    "newer_version": _(
        "A newer Handwheel wrote this file. Bring this one up to date first, then bring the file in."
    ),
}
PLACE: Mapping[str, Words] = {
    "unknown_field": _("There is no field “%(field)s” here. Take it out of the file."),
    "missing_field": _("The field “%(field)s” is missing. Write it into the file."),
    "wrong_type": _("This has to be %(wanted)s."),
    "unknown_word": _("This word isn't known here. It would take: %(words)s."),
    "unreadable_text": _(
        "There are marks in this that can't be seen, blanks at an end, or signs that don't belong here. "
        "Type it anew."
    ),
    "short_text": _("Nothing stands here yet. Write it in a few words."),
    "long_text": _("That is more than %(most)s characters. Say it in fewer."),
    "too_small": _("This has to be at least %(least)s."),
    "too_large": _("This has to be at most %(most)s."),
    "too_few": _("This needs at least %(least)s."),
    "too_many": _("No more than %(most)s have room here."),
    "twice": _("“%(key)s” stands here for a second time. Give this one another key."),
    "unknown_reference": _("“%(key)s” is named here, but there is no such thing in the project."),
}
TYPES: Mapping[str, Words] = {
    "object": _("a group of fields"),
    "array": _("a list"),
    "string": _("text"),
    "integer": _("a whole number"),
    "boolean": _("true or false"),
}
SIZE = _("a size with its unit, as 1\u00a01/2\u00a0in or 38\u00a0mm")
BYTES_A_MEGABYTE = 1_000_000


def error_sentence(error: RecipeError) -> str:
    """Where a recipe can't be read, why, and what would be accepted."""
    reason = error.values.get("reason")
    if isinstance(reason, ProfileError):
        return profile_sentence(reason, place_lead(error.path.partition(".marks")[0].removesuffix(".bore")))
    if isinstance(reason, QuantityError):
        return led(place_lead(error.path), sentence(reason))
    if error.code in WHOLE:
        return led(place_lead(error.path), str(WHOLE[error.code]) % _whole_values(error.values))
    return led(place_lead(error.path), str(PLACE[error.code]) % _values(error.values))


def profile_sentence(error: ProfileError, drawing: str = "") -> str:
    """The mark that can't be, why, and what would be accepted; `drawing` says of which drawing."""
    inside = gettext("mark %(number)s of the bore") if error.inside else gettext("mark %(number)s")
    mark = inside % {"number": error.mark}
    where = gettext("%(outer)s, %(inner)s") % {"outer": drawing, "inner": mark} if drawing else mark
    return led(where[:1].upper() + where[1:], drawing_sentence(error))


def _whole_values(values: Mapping[str, object]) -> dict[str, object]:
    most = values.get("most")
    return {**values, "megabytes": most // BYTES_A_MEGABYTE if isinstance(most, int) else ""}


def _values(values: Mapping[str, object]) -> dict[str, object]:
    """Numbers as people write them; words as the file spells them, since it is the file that is mended."""
    return {name: _shown(name, value) for name, value in values.items()}


def _shown(name: str, value: object) -> object:
    if name == "wanted":
        return _wanted(value)
    if isinstance(value, Sequence) and not isinstance(value, str):
        return ", ".join(str(word) for word in value)
    return thousands(value) if isinstance(value, int) else value


def _wanted(value: object) -> str:
    """One type of JSON, or text and number where a size belongs."""
    return str(TYPES[value]) if isinstance(value, str) else str(SIZE)
