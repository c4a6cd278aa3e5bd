"""What changed from one edition to the next, as values a sentence can be made of."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields, is_dataclass
from difflib import SequenceMatcher
from enum import StrEnum

from projects.library.domain.alignment import kept_in_order
from projects.library.domain.quantity_form import Quantity
from projects.library.domain.recipe import Recipe


class ChangeKind(StrEnum):
    CHANGED = "changed"
    ADDED = "added"
    TAKEN_OUT = "taken_out"
    MOVED = "moved"
    REPLACED = "replaced"


@dataclass(frozen=True)
class Stop:
    """One part of the way to a place: `Stop("steps", 4)` is step 4, `Stop("time")` the time."""

    field: str
    number: int | None = None


@dataclass(frozen=True)
class Change:
    """One thing that changed. `place` is the way to it, with numbers from 1 as in the new edition.

    Changed: `field` there was `before`, is now `after`; both are values, None for one that is left out.
    Added, taken out: `after` or `before` is the thing itself; what was taken out has its old number.
    Moved: `before` and `after` are its old and new number. Replaced: by another kind of thing.
    """

    kind: ChangeKind
    place: tuple[Stop, ...]
    field: str
    before: object
    after: object


Way = tuple[Stop, ...]


def difference(old: Recipe, new: Recipe) -> tuple[Change, ...]:
    """Every change, in the order of the new recipe; none exactly when the two are equal.

    A step whose minutes went from 5 to 8 is
    `Change(CHANGED, (Stop("mountings", 2), Stop("steps", 4)), "minutes", 5, 8)`.
    """
    return tuple(_in_record(old, new, ()))


def _in_record(old: object, new: object, way: Way) -> Iterator[Change]:
    for name in _names(new):
        before, after = getattr(old, name), getattr(new, name)
        if before != after:
            yield from _in_field(name, before, after, way)


def _names(record: object) -> list[str]:
    if not is_dataclass(record):
        raise TypeError(record)
    return [field.name for field in fields(record) if field.compare]


def _in_field(name: str, before: object, after: object, way: Way) -> Iterator[Change]:
    if isinstance(before, tuple) and isinstance(after, tuple) and any(map(_is_record, before + after)):
        yield from _in_list(name, before, after, way)
    elif not _is_record(before) and not _is_record(after):
        yield Change(ChangeKind.CHANGED, way, name, before, after)
    else:
        yield from _between(before, after, (*way, Stop(name)))


def _is_record(value: object) -> bool:
    return is_dataclass(value) and not isinstance(value, Quantity)


def _between(before: object, after: object, way: Way) -> Iterator[Change]:
    """Two things at one place, of which either may be missing."""
    if before is None:
        yield Change(ChangeKind.ADDED, way, "", None, after)
    elif after is None:
        yield Change(ChangeKind.TAKEN_OUT, way, "", before, None)
    elif type(before) is not type(after):
        yield Change(ChangeKind.REPLACED, way, "", before, after)
    else:
        yield from _in_record(before, after, way)


def _in_list(name: str, before: Sequence[object], after: Sequence[object], way: Way) -> Iterator[Change]:
    pairs = _pairs_by_key(before, after) if _have_keys((*before, *after)) else _pairs_by_place(before, after)
    moved = {new for _old, new in pairs} - kept_in_order(pairs)
    partner = {new: old for old, new in pairs}
    for place, thing in enumerate(after):
        here = (*way, Stop(name, place + 1))
        if place in moved:
            yield Change(ChangeKind.MOVED, here, "", partner[place] + 1, place + 1)
        yield from _between(before[partner[place]] if place in partner else None, thing, here)
    for place in sorted(set(range(len(before))) - set(partner.values())):
        yield Change(ChangeKind.TAKEN_OUT, (*way, Stop(name, place + 1)), "", before[place], None)


def _have_keys(things: Sequence[object]) -> bool:
    return all(hasattr(thing, "key") for thing in things)


def _pairs_by_key(before: Sequence[object], after: Sequence[object]) -> list[tuple[int, int]]:
    """Places in the old and new list of things with the same key, in the order of the old one."""
    places = {getattr(thing, "key", None): place for place, thing in enumerate(after)}
    keys = [(place, getattr(thing, "key", None)) for place, thing in enumerate(before)]
    return [(place, places[key]) for place, key in keys if key in places]


def _pairs_by_place(before: Sequence[object], after: Sequence[object]) -> list[tuple[int, int]]:
    """Things without a name: the equal ones belong together, and those between them in their order."""
    pairs: list[tuple[int, int]] = []
    matcher = SequenceMatcher(None, before, after, autojunk=False)
    for _tag, old_from, old_to, new_from, new_to in matcher.get_opcodes():
        pairs += zip(range(old_from, old_to), range(new_from, new_to), strict=False)
    return pairs
