"""The JSON Schema (draft 2020-12) of a project, made from the dataclasses themselves."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from projects.library.domain.bounds import Text
from projects.library.domain.json_values import Json
from projects.library.domain.recipe import Recipe
from projects.library.domain.structure import (
    ChoicePart,
    ListPart,
    Part,
    QuantityPart,
    RecordPart,
    TextPart,
    WholePart,
    WordPart,
    YesNoPart,
    kind_of,
    members,
)

DIALECT = "https://json-schema.org/draft/2020-12/schema"
FORMAT = "handwheel-project"
VERSION = 1
# As much as `club.base.quantities` reads.
LONGEST_QUANTITY = 40


@cache
def project_schema() -> dict[str, Json]:
    """The schema of the whole document: the recipe's own fields with the format's name and version."""
    records = sorted(_records(Recipe), key=lambda record: record.__name__)
    document = _record_schema(Recipe)
    properties, required = document["properties"], document["required"]
    if not isinstance(properties, dict) or not isinstance(required, list):
        raise TypeError(document)
    head: dict[str, Json] = {"format": {"const": FORMAT}, "version": {"const": VERSION}}
    return {
        "$schema": DIALECT,
        "title": FORMAT,
        **document,
        "required": [*head, *required],
        "properties": {**head, **properties},
        "$defs": {record.__name__: _record_schema(record) for record in records},
    }


def _records(record: type) -> set[type]:
    """Every dataclass that is met inside this one."""
    found: set[type] = set()
    waiting = [record]
    while waiting:
        for member in members(waiting.pop()):
            new = set(_records_of(member.part)) - found
            found |= new
            waiting.extend(new)
    return found


def _records_of(part: Part) -> Iterator[type]:
    match part:
        case ListPart(entry):
            yield from _records_of(entry)
        case RecordPart(record):
            yield record
        case ChoicePart(records):
            yield from records


def _record_schema(record: type) -> dict[str, Json]:
    """An object with these fields and no others; `kind` is told apart where it stands in a choice."""
    fields = members(record)
    properties: dict[str, Json] = {member.name: part_schema(member.part) for member in fields}
    required: list[Json] = [member.name for member in fields if member.required]
    if kind := kind_of(record):
        properties = {"kind": {"const": kind}, **properties}
        required = ["kind", *required]
    return {
        "type": "object",
        "additionalProperties": False,
        "required": required,
        "properties": properties,
    }


def part_schema(part: Part) -> dict[str, Json]:
    """The schema of one value."""
    match part:
        case TextPart(bounds):
            return _text_schema(bounds)
        case WholePart(bounds):
            return {"type": "integer", "minimum": bounds.least, "maximum": bounds.most}
        case YesNoPart():
            return {"type": "boolean"}
        case WordPart(words):
            return {"type": "string", "enum": [str(word.value) for word in words]}
        case QuantityPart():
            return _quantity_schema(part)
        case ListPart(entry, bounds):
            entries = part_schema(entry)
            return {"type": "array", "minItems": bounds.least, "maxItems": bounds.most, "items": entries}
        case RecordPart(record):
            return _reference(record)
        case ChoicePart(records):
            return _choice_schema(records)


def _text_schema(bounds: Text) -> dict[str, Json]:
    lengths: dict[str, Json] = {"minLength": bounds.least, "maxLength": bounds.most}
    return {"type": "string", **lengths, "pattern": bounds.pattern}


def _quantity_schema(part: QuantityPart) -> dict[str, Json]:
    """Text as somebody typed it, or whole base units. What the text says is read by the house itself."""
    return {
        "type": ["string", "integer"],
        "description": part.form.unit,
        "minLength": 1,
        "maxLength": LONGEST_QUANTITY,
        "minimum": int(part.above),
        "maximum": part.form.most,
    }


def _reference(record: type) -> dict[str, Json]:
    return {"$ref": f"#/$defs/{record.__name__}"}


def _choice_schema(records: tuple[type, ...]) -> dict[str, Json]:
    """Told apart by `kind`, so that what is wrong inside one is not blamed on the others."""
    kinds = {kind_of(record): record for record in records}
    return {
        "type": "object",
        "required": ["kind"],
        "properties": {"kind": {"type": "string", "enum": list(kinds)}},
        "allOf": [
            {"if": {"properties": {"kind": {"const": kind}}}, "then": _reference(record)}
            for kind, record in kinds.items()
        ],
    }
