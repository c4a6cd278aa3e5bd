"""From a place in a recipe, as errors and findings write it, to the page that mends it."""

from __future__ import annotations

from urllib.parse import urlencode

from django.urls import reverse

from projects.library.domain.places import Place, place_of, write_place

# Lists of records, each with a page of its own.
ENTRIES = frozenset({"mountings", "steps", "finish", "glue_ups", "preparation", "materials", "cautions"})
# What has a page of its own without being in a list.
SINGLE = frozenset(
    {"blank", "left_end", "right_end", "grits", "skills", "spares", "time", "easier", "harder"}
)


def way_to(key: str, path: str) -> str:
    """The address of the page that mends this path in the draft of a project, and the field on it."""
    return way_to_place(key, place_of(path))


def way_to_place(key: str, place: Place) -> str:
    if "profile" in place:
        drawing = place[: place.index("profile") + 1]
        return _address("projects:draft_marks", key, drawing)
    if place and place[0] in ENTRIES and len(place) == 1:
        return f"{reverse('projects:draft', args=[key])}#{place[0]}"
    page = page_of(place)
    field = "-".join(step for step in place[len(page) :] if isinstance(step, str))
    return _address("projects:draft_mend", key, page) + (f"#id_{field}" if field else "")


def page_of(place: Place) -> Place:
    """The innermost thing around a place that has a page of its own; `()` is the recipe's first page."""
    ends = [
        at + 1
        for at, step in enumerate(place)
        if (isinstance(step, int) and place[at - 1] in ENTRIES) or (at == 0 and step in SINGLE)
    ]
    return place[: max(ends, default=0)]


def anchor_of(place: Place) -> str:
    """Where on a draft's page this place, or what is around it, stands."""
    page = page_of(place)
    if len(place) == 1 and not page:
        return str(place[0])
    return "-".join(str(step) for step in page) or "recipe"


def _address(name: str, key: str, place: Place) -> str:
    return f"{reverse(name, args=[key])}?{urlencode({'at': write_place(place)})}"
