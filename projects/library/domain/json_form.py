"""A recipe as JSON and back, exactly."""

from __future__ import annotations

from collections.abc import Callable
from enum import Enum
from typing import cast

from club.base.quantities.errors import QuantityError
from projects.library.domain.drawings import check_drawings
from projects.library.domain.errors import RecipeError
from projects.library.domain.json_values import Json, check_depth, read_json
from projects.library.domain.quantity_form import Quantity, QuantityForm, quantity_from_json, quantity_to_json
from projects.library.domain.recipe import Recipe
from projects.library.domain.references import check_references
from projects.library.domain.schema import FORMAT, VERSION
from projects.library.domain.structure import (
    ChoicePart,
    ListPart,
    Part,
    QuantityPart,
    RecordPart,
    WholePart,
    WordPart,
    kind_of,
    members,
)
from projects.library.domain.validation import check_schema


def to_json(recipe: Recipe) -> dict[str, Json]:
    """The document of one edition: format, version and the recipe's fields; what is None is left out."""
    return {"format": FORMAT, "version": VERSION, **_record_to_json(recipe)}


def from_json(data: Json) -> Recipe:
    """The recipe in a document; raises RecipeError with the place, see there for the codes."""
    check_depth(data)
    document = checked_head(data, FORMAT, VERSION)
    check_schema(document)
    recipe = cast(Recipe, _record_from_json(document, Recipe, ""))
    check_references(recipe)
    check_drawings(recipe)
    return recipe


def from_own(document: dict[str, Json]) -> Recipe:
    """The recipe in a document that `to_json` made, which needs no checking: several times as fast."""
    return cast(Recipe, _record_from_json(document, Recipe, ""))


def from_file(data: bytes) -> Recipe:
    """The recipe in the bytes of a file; raises RecipeError."""
    return from_json(read_json(data))


def checked_head(data: Json, form: str, known: int) -> dict[str, Json]:
    """The document, once it is of this format and no later version; raises RecipeError."""
    if not isinstance(data, dict) or data.get("format") != form:
        raise RecipeError("foreign", wanted=form)
    version = data.get("version")
    if not isinstance(version, int) or isinstance(version, bool) or version < 1:
        raise RecipeError("foreign", wanted=form)
    if version > known:
        raise RecipeError("newer_version", found=version, known=known)
    return data


def _record_to_json(record: object) -> dict[str, Json]:
    of: type = type(record)
    kind = kind_of(of)
    values = ((member.name, getattr(record, member.name)) for member in members(of))
    written = {name: _to_json(value) for name, value in values if value is not None}
    return {"kind": kind, **written} if kind else written


def _to_json(value: object) -> Json:
    match value:
        case bool() | int() | str() if not isinstance(value, Enum):
            return value
        case Enum():
            return str(value.value)
        case tuple():
            return [_to_json(entry) for entry in value]
    return quantity_to_json(value) if isinstance(value, Quantity) else _record_to_json(value)


def _record_from_json(data: dict[str, Json], record: type, path: str) -> object:
    make = cast(Callable[..., object], record)
    dot = f"{path}." if path else ""
    return make(
        **{
            member.name: _from_json(data[member.name], member.part, dot + member.name)
            for member in members(record)
            if member.name in data
        }
    )


def _from_json(data: Json, part: Part, path: str) -> object:
    """The value of one place, which the schema has let through."""
    match part, data:
        case ListPart(entry), list():
            return tuple(_from_json(each, entry, f"{path}[{place}]") for place, each in enumerate(data))
        case RecordPart(record), dict():
            return _record_from_json(data, record, path)
        case ChoicePart(records), dict():
            kinds = {kind_of(record): record for record in records}
            return _record_from_json(data, kinds[str(data["kind"])], path)
        case WordPart(words), _:
            return words(data)
        case QuantityPart(form, above), str() | int() | float():
            return _quantity(data if isinstance(data, str) else int(data), form, above, path)
        # To the schema 5.0 is a whole number as well.
        case WholePart(), float():
            return int(data)
    return data


def _quantity(data: str | int, form: QuantityForm, above: bool, path: str) -> Quantity:
    try:
        return quantity_from_json(data, form, above=above)
    except QuantityError as error:
        raise RecipeError("unreadable_quantity", path=path, reason=error) from error
