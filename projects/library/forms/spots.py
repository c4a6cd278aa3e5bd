"""What one page of a draft writes: a record at its place, new or there already, or first its kind."""

from __future__ import annotations

from collections.abc import Container, Mapping
from dataclasses import dataclass, replace
from typing import Any

from django.utils.translation import gettext

from projects.library.domain.beginning import mounting_step
from projects.library.domain.keys import key_from, own_keys
from projects.library.domain.mountings import Mounting, Step
from projects.library.domain.places import (
    Place,
    PlaceError,
    get,
    insert,
    part_at,
    put,
    read_place,
    take_out,
)
from projects.library.domain.recipe import Recipe
from projects.library.domain.structure import ChoicePart, RecordPart, kind_of, members
from projects.library.forms.groups import KEY, Group, group_of
from projects.library.forms.offers import Offers

# Lists of plain values that have a page of their own.
LISTS = ("grits", "skills")
# What stands on the first page of a recipe.
PLAIN = ("title", "summary", "food_ware")
DRAWN = frozenset({"marks", "shapes", "bore"})
NO_FIELDS = Group(Recipe, "", "", ())
# Where a key may come from.
SAID_IN = ("title", "specification", "text")


@dataclass(frozen=True)
class Spot:
    """A place of a recipe with the group of fields that is written there; `current` is None for a new record.

    `kinds` are to be chosen from before there are any fields. `page` is the place that the page is about:
    that of the record, or of the one field of it that is written.
    """

    recipe: Recipe
    place: Place
    current: Any
    group: Group
    adding: bool = False
    kinds: tuple[type, ...] = ()
    page: Place = ()

    @property
    def offers(self) -> Offers:
        return Offers(self.recipe, self.place, self.current)

    def new_values(self, given: Mapping[str, Any]) -> dict[str, Any]:
        """What a record has that no field asks for: its key, and the first step of a mounting."""
        names = {member.name for member in members(self.group.record)}
        values: dict[str, Any] = {}
        if KEY in names and self.place:
            values[KEY] = getattr(self.current, KEY, None) or self._new_key(given)
        if self.group.record is Mounting and self.current is None:
            values["steps"] = (first_step(set(own_keys(self.recipe))),)
        return values

    def _new_key(self, given: Mapping[str, Any]) -> str:
        said = next((str(given[name]) for name in SAID_IN if given.get(name)), "")
        otherwise = str(self.place[-2]).replace("_", "-") if len(self.place) > 1 else "part"
        return key_from(said, set(own_keys(self.recipe)), otherwise)

    def recipe_with(self, record: Any) -> Recipe:
        return (insert if self.adding else put)(self.recipe, self.place, record)


def first_step(taken: Container[str]) -> Step:
    """Its words are there to be mended."""
    text = gettext("Mount the work.")
    return mounting_step(key_from(text, taken, "mount"), text)


def spot_at(recipe: Recipe, at: str, kind: str | None, *, adding: bool) -> Spot:
    """The spot that an address means; raises PlaceError for one that nothing is written at.

    `kind` is the word for a kind of record, "" to choose anew, None for the kind it is.
    """
    place = read_place(at)
    part = part_at(recipe, place)
    # Drawings are written by their marks.
    if "profile" in place or (adding and not _is_entry(place)):
        raise PlaceError(at)
    if place == () or at in LISTS:
        return _own_spot(recipe, (at,) if at else PLAIN, place)
    current = None if adding else get(recipe, place)
    if isinstance(part, RecordPart | ChoicePart):
        return _record_spot(Spot(recipe, place, current, NO_FIELDS, adding, page=place), part, kind)
    raise PlaceError(at)


def out_at(recipe: Recipe, at: str) -> tuple[Place, Recipe]:
    """The place of a record that may be taken out, and the recipe without it; raises PlaceError.

    Whether something else needs it is not asked here.
    """
    place = read_place(at)
    # Marks are taken out where they are typed.
    if DRAWN & set(place) or not isinstance(part_at(recipe, place), RecordPart | ChoicePart):
        raise PlaceError(at)
    return place, take_out(recipe, place)


def _is_entry(place: Place) -> bool:
    return bool(place) and isinstance(place[-1], int)


def _own_spot(recipe: Recipe, names: tuple[str, ...], page: Place) -> Spot:
    """Simple members of the recipe itself."""
    own = tuple(member for member in members(Recipe) if member.name in names)
    return Spot(recipe, (), recipe, replace(NO_FIELDS, members=own), page=page)


def _record_spot(spot: Spot, part: RecordPart | ChoicePart, kind: str | None) -> Spot:
    """With the group of its record, or with the kinds to choose from."""
    kinds = part.records if isinstance(part, ChoicePart) else _kinds_inside(part.record, spot.current)
    chosen = _chosen(kinds, kind, spot.current)
    if kinds and chosen is None:
        return replace(spot, kinds=kinds)
    if isinstance(part, RecordPart):
        return replace(spot, group=group_of(part.record, spot.current, chosen))
    assert chosen is not None
    return replace(spot, group=group_of(chosen, spot.current))


def _kinds_inside(record: type, current: Any) -> tuple[type, ...]:
    """The kinds of what a new record can't be without; one that is there has its kind."""
    needed = (member.part for member in members(record) if member.required and current is None)
    return next((part.records for part in needed if isinstance(part, ChoicePart)), ())


def _chosen(kinds: tuple[type, ...], kind: str | None, current: Any) -> type | None:
    if kind is None:
        return next((record for record in kinds if type(current) is record), None)
    found = next((record for record in kinds if kind_of(record) == kind), None)
    if found is None and (kind or not kinds):
        raise PlaceError(kind)
    return found
