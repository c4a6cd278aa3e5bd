"""The dataclasses of a recipe as one description that schema, reading and writing are all made from."""

from __future__ import annotations

import dataclasses
import types
import typing
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import Enum
from functools import cache
from typing import Annotated, TypeAlias

from projects.library.domain.bounds import Above, Many, Text, Whole
from projects.library.domain.quantity_form import QUANTITIES, QuantityForm

# For a field whose module says nothing of bounds.
USUAL_TEXT = Text(200)
USUAL_WHOLE = Whole(0, 10**9)
USUAL_MANY = Many(200)


@dataclass(frozen=True)
class TextPart:
    bounds: Text


@dataclass(frozen=True)
class WholePart:
    bounds: Whole


@dataclass(frozen=True)
class YesNoPart:
    pass


@dataclass(frozen=True)
class WordPart:
    """One of an enumeration's values."""

    words: type[Enum]


@dataclass(frozen=True)
class QuantityPart:
    """A length, area or volume; not nought where `above` says so."""

    form: QuantityForm
    above: bool


@dataclass(frozen=True)
class ListPart:
    entry: Part
    bounds: Many


@dataclass(frozen=True)
class RecordPart:
    """A dataclass; its members are asked for when they are needed."""

    record: type


@dataclass(frozen=True)
class ChoicePart:
    """One of several dataclasses, told apart by the word in `kind`."""

    records: tuple[type, ...]


Part: TypeAlias = (
    TextPart | WholePart | YesNoPart | WordPart | QuantityPart | ListPart | RecordPart | ChoicePart
)


@dataclass(frozen=True)
class Member:
    """A field; one that is None or has a default need not be there."""

    name: str
    part: Part
    required: bool


@cache
def members(record: type) -> tuple[Member, ...]:
    """The fields of a dataclass in their order."""
    hints = typing.get_type_hints(record, include_extras=True)
    return tuple(_member(field, hints[field.name]) for field in dataclasses.fields(record) if field.init)


def _member(field: dataclasses.Field[object], hint: object) -> Member:
    has_default = not (field.default is dataclasses.MISSING and field.default_factory is dataclasses.MISSING)
    if _may_be_none(hint) and field.default is not None:
        raise TypeError(field.name, "may be None, so that has to be its default")
    return Member(field.name, part_of(hint), required=not has_default)


def _may_be_none(hint: object) -> bool:
    return _is_union(hint) and types.NoneType in typing.get_args(hint)


def part_of(hint: object) -> Part:
    """What a type hint lets in, None left aside; TypeError for a hint that no recipe may use."""
    if typing.get_origin(hint) is Annotated:
        inner, *notes = typing.get_args(hint)
        return _plain_part(inner, tuple(notes))
    if _is_union(hint):
        options = [option for option in typing.get_args(hint) if option is not types.NoneType]
        return part_of(options[0]) if len(options) == 1 else ChoicePart(tuple(options))
    return _plain_part(hint, ())


def _is_union(hint: object) -> bool:
    return typing.get_origin(hint) in (typing.Union, types.UnionType)


def _plain_part(hint: object, notes: tuple[object, ...]) -> Part:
    if typing.get_origin(hint) is tuple:
        bounds = next((note for note in notes if isinstance(note, Many)), USUAL_MANY)
        return ListPart(part_of(typing.get_args(hint)[0]), bounds)
    if not isinstance(hint, type):
        raise TypeError(hint)
    if hint in QUANTITIES:
        return QuantityPart(QUANTITIES[hint], any(isinstance(note, Above) for note in notes))
    if hint in SIMPLE:
        return SIMPLE[hint](notes)
    if issubclass(hint, Enum):
        return WordPart(hint)
    if dataclasses.is_dataclass(hint):
        return RecordPart(hint)
    raise TypeError(hint)


def _text(notes: tuple[object, ...]) -> Part:
    return TextPart(next((note for note in notes if isinstance(note, Text)), USUAL_TEXT))


def _whole(notes: tuple[object, ...]) -> Part:
    return WholePart(next((note for note in notes if isinstance(note, Whole)), USUAL_WHOLE))


SIMPLE: Mapping[type, Callable[[tuple[object, ...]], Part]] = {
    str: _text,
    int: _whole,
    bool: lambda _notes: YesNoPart(),
}


def kind_of(record: type) -> str:
    """The word by which one of several dataclasses is told from the others; "" for one that stands alone."""
    return "" if "kind" in {member.name for member in members(record)} else str(getattr(record, "kind", ""))
