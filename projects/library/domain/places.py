"""Places in a recipe, and the recipe with one of them changed.

A place is the way to a value from the recipe itself: `("mountings", 1, "steps", 3)`, counted from 0, and `()`
for the whole. In an address it is written `mountings.1.steps.3`.
"""

from __future__ import annotations

import re
from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeAlias, cast

from projects.library.domain.recipe import Recipe
from projects.library.domain.structure import ListPart, Member, Part, RecordPart, members

Place: TypeAlias = tuple[str | int, ...]

# Longer than any place there is.
LONGEST = 80
STEP = r"(?:[a-z_]+|0|[1-9][0-9]{0,2})"
WRITTEN = re.compile(rf"(?:{STEP}(?:\.{STEP})*)?")


class PlaceError(LookupError):
    """There is no such place in this recipe."""


def read_place(text: str) -> Place:
    """The place in an address; raises PlaceError for text that is none."""
    if len(text) > LONGEST or not text.isascii() or not WRITTEN.fullmatch(text):
        raise PlaceError(text[:LONGEST])
    return tuple(int(step) if step.isdecimal() else step for step in text.split(".") if step)


def write_place(place: Place) -> str:
    return ".".join(str(step) for step in place)


def place_of(path: str) -> Place:
    """The place that errors and findings write as `mountings[1].steps[3].tool`; raises PlaceError."""
    return read_place(path.replace("[", ".").replace("]", ""))


def get(recipe: Recipe, place: Place) -> Any:
    """What stands there, None for what may be missing and is; raises PlaceError."""
    value: object = recipe
    for step in place:
        value = _inside(value, step)
    return value


def part_at(recipe: Recipe, place: Place) -> Part:
    """What may stand there, also in a place behind the last entry of a list; raises PlaceError."""
    if not place:
        return RecordPart(Recipe)
    *before, last = place
    outer = get(recipe, tuple(before))
    if isinstance(last, str):
        return member_of(outer, last).part
    part = part_at(recipe, tuple(before))
    if not isinstance(part, ListPart) or last > len(outer):
        raise PlaceError(write_place(place))
    return part.entry


def member_of(record: object, name: str) -> Member:
    """The field of this name of a record; raises PlaceError."""
    of: type = type(record)
    known = members(of) if is_dataclass(of) else ()
    found = next((member for member in known if member.name == name), None)
    if found is None:
        raise PlaceError(name)
    return found


def put(recipe: Recipe, place: Place, value: object) -> Recipe:
    """The recipe with this value there in place of what was."""
    return cast(Recipe, _put(recipe, place, value))


def insert(recipe: Recipe, place: Place, value: object) -> Recipe:
    """The recipe with a new entry there; what stood there and behind it moves on by one."""
    entries, at = _list_at(recipe, place)
    if at > len(entries):
        raise PlaceError(write_place(place))
    return put(recipe, place[:-1], (*entries[:at], value, *entries[at:]))


def take_out(recipe: Recipe, place: Place) -> Recipe:
    """The recipe without this entry, or with nothing in a place that may be empty."""
    if place and isinstance(place[-1], str):
        if not may_be_missing(recipe, place) or get(recipe, place) is None:
            raise PlaceError(write_place(place))
        return put(recipe, place, None)
    get(recipe, place)
    entries, at = _list_at(recipe, place)
    return put(recipe, place[:-1], entries[:at] + entries[at + 1 :])


def still_there(taken: Place, place: Place) -> Place:
    """Where a place of the recipe without what was taken out lies while that is still there."""
    *around, at = taken
    depth = len(around)
    step = place[depth] if len(place) > depth and list(place[:depth]) == around else None
    if isinstance(at, int) and isinstance(step, int) and step >= at:
        return (*place[:depth], step + 1, *place[depth + 1 :])
    return place


def move(recipe: Recipe, place: Place, by: int) -> Recipe:
    """The recipe with this entry so many places further on; PlaceError beyond either end of the list."""
    entry = get(recipe, place)
    entries, at = _list_at(recipe, place)
    if not 0 <= at + by < len(entries):
        raise PlaceError(write_place(place))
    others = entries[:at] + entries[at + 1 :]
    return put(recipe, place[:-1], (*others[: at + by], entry, *others[at + by :]))


def may_be_missing(recipe: Recipe, place: Place) -> bool:
    """Whether a field may hold nothing at all."""
    *before, last = place
    record = get(recipe, tuple(before))
    if not is_dataclass(record):
        return False
    return any(field.name == last and field.default is None for field in fields(record))


def _inside(value: object, step: str | int) -> object:
    if isinstance(step, str):
        return getattr(value, member_of(value, step).name)
    if not isinstance(value, tuple) or step >= len(value):
        raise PlaceError(str(step))
    return value[step]


def _put(outer: Any, place: Place, value: object) -> object:
    if not place:
        return value
    step, rest = place[0], place[1:]
    inner = _put(_inside(outer, step), rest, value)
    if isinstance(step, str):
        return replace(outer, **{step: inner})
    return (*outer[:step], inner, *outer[step + 1 :])


def _list_at(recipe: Recipe, place: Place) -> tuple[tuple[object, ...], int]:
    """The list in which a place counts, and its number there."""
    at = place[-1] if place else ""
    entries = get(recipe, place[:-1])
    if not isinstance(at, int) or not isinstance(entries, tuple):
        raise PlaceError(write_place(place))
    return entries, at
