"""Which fields of a record stand on one form, and the record made of what they hold."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, cast

from django import forms

from projects.library.domain.structure import ChoicePart, ListPart, Member, Part, RecordPart, members

# Made from the title, and the same ever after.
KEY = "key"


@dataclass(frozen=True)
class Group:
    """A record's own simple fields, and the groups of records inside it.

    `name` is its field in the record around it, `prefix` what the names of its own fields begin with. A group
    that `may_be_empty` stands for no record when nothing is typed into it.
    """

    record: type
    name: str
    prefix: str
    members: tuple[Member, ...]
    groups: tuple[Group, ...] = ()
    may_be_empty: bool = False

    def fields(self) -> Iterator[tuple[str, Group, Member]]:
        """Every field by its name on the form."""
        yield from ((self.prefix + member.name, self, member) for member in self.members)
        for group in self.groups:
            yield from group.fields()

    def is_empty(self, given: Mapping[str, Any]) -> bool:
        return all(is_empty(given.get(name)) for name, _group, _member in self.fields())


def group_of(record: type, current: object = None, chosen: type | None = None, *, prefix: str = "") -> Group:
    """The group of a record as it is now; `chosen` is the kind of a choice in one that is new."""
    return _group(record, current, chosen, prefix=prefix)


def _group(
    record: type,
    current: object,
    chosen: type | None,
    *,
    name: str = "",
    prefix: str = "",
    may_be_empty: bool = False,
) -> Group:
    of = members(record)
    own = tuple(member for member in of if is_simple(member.part) and member.name != KEY)
    inner = tuple(_inner(of, current, chosen, prefix))
    return Group(record, name, prefix, own, inner, may_be_empty)


def _inner(of: Iterable[Member], current: object, chosen: type | None, prefix: str) -> Iterator[Group]:
    for member in of:
        value = getattr(current, member.name, None)
        if inside := _record_inside(member.part, value, chosen):
            may_be_empty = isinstance(member.part, RecordPart) and not member.required
            way = f"{prefix}{member.name}-"
            yield _group(inside, value, None, name=member.name, prefix=way, may_be_empty=may_be_empty)


def _record_inside(part: Part, value: object, chosen: type | None) -> type | None:
    """The record that stands on the form of the one around it: what has pages of its own does not."""
    match part:
        case RecordPart(record) if not _has_entries(record):
            return record
        case ChoicePart(records) if value is not None:
            return next(record for record in records if type(value) is record)
        case ChoicePart(records) if chosen in records:
            return chosen
    return None


def is_simple(part: Part) -> bool:
    """Whether one field holds it: a value, or a list of values."""
    return (
        is_simple(part.entry) if isinstance(part, ListPart) else not isinstance(part, RecordPart | ChoicePart)
    )


def _has_entries(record: type) -> bool:
    return any(isinstance(member.part, ListPart) and not is_simple(member.part) for member in members(record))


def made(group: Group, given: Mapping[str, Any], current: object, new: Mapping[str, Any]) -> object:
    """The record of what was given; what is not on the form stays as it is, or is as `new` says."""
    if group.may_be_empty and group.is_empty(given):
        return None
    kept = dict(new)
    if type(current) is group.record:
        kept |= vars(current)
    own = {member.name: _given(member, given[group.prefix + member.name], group) for member in group.members}
    inner = {
        inside.name: made(inside, given, getattr(current, inside.name, None), {}) for inside in group.groups
    }
    make = cast(Callable[..., object], group.record)
    return make(**(kept | own | inner))


def _given(member: Member, value: Any, group: Group) -> Any:
    """What was given, or what the record has by itself where nothing need be given."""
    return getattr(group.record, member.name) if is_empty(value) and not member.required else value


def fields_of(form: forms.BaseForm, group: Group) -> tuple[forms.BoundField, ...]:
    """The group's own fields on a form, without those of the groups inside it."""
    return tuple(form[group.prefix + member.name] for member in group.members)


def is_empty(value: object) -> bool:
    """Nothing typed, chosen or ticked; nought is a number."""
    return value is None or value is False or value == "" or value == ()
