"""What the schema has against a document, as a RecipeError with the place."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import cache
from typing import TYPE_CHECKING, cast

from projects.library.domain.errors import RecipeError
from projects.library.domain.json_values import Json
from projects.library.domain.schema import project_schema

if TYPE_CHECKING:
    from jsonschema import Draft202012Validator
    from jsonschema.exceptions import ValidationError

# What is shown of a name that isn't ours.
LONGEST_NAME = 60


Schema = Callable[[], dict[str, Json]]


def check_schema(document: dict[str, Json], schema: Schema = project_schema) -> None:
    """Raise RecipeError for the first thing that the schema does not let in."""
    error = next(_validator(schema).iter_errors(document), None)
    if error is not None:
        code, values = _reading(error)
        raise RecipeError(code, path=path_text(error.absolute_path), **values)


@cache
def _validator(schema: Schema) -> Draft202012Validator:
    # It takes a third of a second to load, and most requests bring no recipe in.
    from jsonschema import Draft202012Validator

    return Draft202012Validator(schema())


def path_text(parts: Iterable[str | int]) -> str:
    """`mountings[1].steps[3].tool`, counted from 0 as in the file."""
    text = "".join(f"[{part}]" if isinstance(part, int) else f".{part}" for part in parts)
    return text.removeprefix(".")


def _reading(error: ValidationError) -> tuple[str, dict[str, object]]:
    read = READINGS.get(str(error.validator))
    if read is None:
        raise TypeError(error.validator)
    code, value = read
    return code, value(error)


def _bound(name: str) -> Callable[[ValidationError], dict[str, object]]:
    return lambda error: {name: error.validator_value}


def _missing(error: ValidationError) -> dict[str, object]:
    wanted, there = cast("list[str]", error.validator_value), cast("dict[str, Json]", error.instance)
    return {"field": next(name for name in wanted if name not in there)}


def _unknown(error: ValidationError) -> dict[str, object]:
    there, schema = cast("dict[str, Json]", error.instance), cast("dict[str, Json]", error.schema)
    known = cast("dict[str, Json]", schema["properties"])
    return {"field": shown_name(next(name for name in there if name not in known))}


def shown_name(name: str) -> str:
    """A foreign name fit to be shown: short, with nothing in it that isn't seen."""
    return "".join(sign if sign.isprintable() else "\N{REPLACEMENT CHARACTER}" for sign in name)[
        :LONGEST_NAME
    ]


def _nothing(_error: ValidationError) -> dict[str, object]:
    return {}


READINGS: Mapping[str, tuple[str, Callable[[ValidationError], dict[str, object]]]] = {
    "additionalProperties": ("unknown_field", _unknown),
    "required": ("missing_field", _missing),
    "type": ("wrong_type", _bound("wanted")),
    "enum": ("unknown_word", _bound("words")),
    "pattern": ("unreadable_text", _nothing),
    "minLength": ("short_text", _bound("least")),
    "maxLength": ("long_text", _bound("most")),
    "minimum": ("too_small", _bound("least")),
    "maximum": ("too_large", _bound("most")),
    "minItems": ("too_few", _bound("least")),
    "maxItems": ("too_many", _bound("most")),
}
