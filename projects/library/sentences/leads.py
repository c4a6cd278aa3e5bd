"""Where in a recipe something stands, as a sentence begins with it: `Mounting 2, step 4, tool`."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping

from django.utils.functional import Promise
from django.utils.text import capfirst
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from projects.library.domain.difference import Stop
from projects.library.sentences.fields import LABELS

Words = str | Promise

# One entry of a list, by the list's field.
NUMBERED: Mapping[str, Words] = {
    "after": _("wait %(number)s"),
    "cautions": _("caution %(number)s"),
    "conditions": _("condition of the wood %(number)s"),
    "courses": _("course %(number)s"),
    "editions": _("edition %(number)s of the file"),
    "finish": _("coat %(number)s"),
    "glue_ups": _("glue-up %(number)s"),
    "grits": _("grit %(number)s"),
    "leaves_out": _("step %(number)s it leaves out"),
    "lessons": _("lesson %(number)s"),
    "marks": _("mark %(number)s"),
    "materials": _("material %(number)s"),
    "mountings": _("mounting %(number)s"),
    "parts": _("part %(number)s"),
    "preparation": _("task %(number)s"),
    "shapes": _("shape behind mark %(number)s"),
    "skills": _("skill %(number)s"),
    "steps": _("step %(number)s"),
}
# Fields as sentences name them, where a form's label would be too long or there is none.
NAMES: Mapping[str, Words] = {
    "after": _("waits for"),
    "at": _("place along the axis"),
    "away_from": _("away before"),
    "bore": _("bore"),
    "briefing": _("briefing minutes"),
    "cautions": _("cautions"),
    "change_over": _("change-over minutes"),
    "clamp_minutes": _("clamped minutes"),
    "clean_up": _("clean-up minutes"),
    "courses": _("courses"),
    "cure_hours": _("hours of cure"),
    "demonstration": _("demonstration minutes"),
    "density_kg_per_m3": _("density in kg/m³"),
    "editions": _("editions"),
    "finish": _("finish"),
    "glue_ups": _("glue-ups"),
    "hands_on": _("hands-on minutes"),
    "holding": _("holding"),
    "kept": _("kept"),
    "key": _("key"),
    "lead_hours": _("hours of wait behind it"),
    "lessons": _("lessons"),
    "marks": _("marks"),
    "materials": _("materials"),
    "mountings": _("mountings"),
    "preparation": _("preparation"),
    "profile": _("drawing"),
    "radius": _("radius"),
    "recipe": _("project"),
    "rest_gap": _("rest gap"),
    "shapes": _("shapes"),
    "stage": _("stage"),
    "stands_out": _("stands out by"),
    "steps": _("steps"),
    "text": _("text"),
    "turned_round": _("turned round"),
    "wait_hours": _("hours of wait after it"),
}
STEP = re.compile(r"(?P<field>[a-z_0-9]+)(?:\[(?P<place>[0-9]+)\])?")
# Between them stands another field that says where one is.
SILENT = frozenset({"recipe"})


def field_name(name: str) -> str:
    """A field as a sentence names it: `rest gap`; KeyError for one that has no name yet."""
    return str(NAMES[name] if name in NAMES else LABELS[name])


def place_lead(path: str) -> str:
    """The lead for a path of an error or a finding, which counts from 0; "" for the whole."""
    return lead(_stops(path))


def lead(stops: Iterable[Stop]) -> str:
    """The lead for a way with numbers from 1: `Mounting 2, step 4, tool`."""
    return capfirst(", ".join(stop_word(stop) for stop in stops if stop.field not in SILENT))


def led(leading: str, said: str) -> str:
    """A sentence with where it holds before it; alone where it holds for the whole."""
    return gettext("%(where)s: %(said)s") % {"where": leading, "said": said} if leading else said


def _stops(path: str) -> Iterator[Stop]:
    for step in STEP.finditer(path):
        place = step["place"]
        yield Stop(step["field"], None if place is None else int(place) + 1)


def stop_word(stop: Stop) -> str:
    """One part of the way: `step 4`, `rest gap`."""
    if stop.number is None:
        return field_name(stop.field)
    return str(NUMBERED[stop.field]) % {"number": stop.number}
