"""What people read when a library comes in: what stands in the way of an edition or course, and the cure."""

from __future__ import annotations

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from projects.library.sentences.leads import led

Words = str | Promise

EDITION = _("Edition %(place)s of the file, %(title)s")
COURSE = _("Course %(place)s of the file, %(title)s")
PROBLEMS: Mapping[str, Words] = {
    "draft_here": _("Another draft of it is here. Keep it or throw it away first."),
    "draft_before": _("A draft of it stands before it in the file. Leave that out, or put it last."),
    "not_good": _("It is marked as kept, but this stops it: %(why)s"),
    "no_project": _(
        "There is no project “%(key)s” here or in this file. "
        "Bring it in as well, or take it out of the course."
    ),
    "course_twice": _("A course with the key “%(key)s” stands before it in the file. Keep one of them."),
    "key_of_a_page": _("The key “%(key)s” is the address of a page here. Give the course another one."),
}
NOTHING = _("There is no edition and no course in this file.")
TYPED = _("Nothing but the way lengths are written.")
STALE = _(
    "The file or the library changed since it was looked over, so nothing was written. Look it over again."
)
CHOOSE = _("Choose a file, or put its text below.")


def edition_problem(code: str, place: int, title: str, **values: str) -> str:
    return _problem(EDITION, code, place, title, values)


def course_problem(code: str, place: int, title: str, **values: str) -> str:
    return _problem(COURSE, code, place, title, values)


def _problem(leading: Words, code: str, place: int, title: str, values: Mapping[str, str]) -> str:
    where = str(leading) % {"place": place, "title": title}
    return led(where, str(PROBLEMS[code]) % values)


def course_change(field: str, before: str, after: str) -> str:
    """`Lessons: Knob, Bowl became Bowl, Knob.`"""
    names = {"title": gettext("Title"), "summary": gettext("Summary"), "lessons": gettext("Lessons")}
    values = {"field": names[field], "before": before, "after": after}
    return gettext("%(field)s: %(before)s became %(after)s.") % values
