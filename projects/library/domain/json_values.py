"""JSON as it comes from a file: read within limits, or refused with one reason for the whole file."""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import NoReturn, TypeAlias

from projects.library.domain.errors import RecipeError

Json: TypeAlias = "dict[str, Json] | list[Json] | str | int | float | bool | None"

# A recipe of sixty long steps is a tenth of it.
MOST_BYTES = 2_000_000
# A recipe itself is seven deep.
DEEPEST = 30


def read_json(data: bytes, most: int = MOST_BYTES) -> Json:
    """The value in a file of UTF-8 JSON.

    Raises RecipeError: huge (more than `most` bytes), not_text, too_deep (lists in lists beyond 30), broken
    (no JSON, a name twice in one object, NaN, numbers of thousands of digits).
    """
    if len(data) > most:
        raise RecipeError("huge", most=most)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise RecipeError("not_text") from error
    try:
        value: Json = json.loads(text, object_pairs_hook=_object, parse_constant=_no_number)
    except RecursionError as error:
        raise RecipeError("too_deep", most=DEEPEST) from error
    except ValueError as error:
        raise RecipeError("broken") from error
    check_depth(value)
    return value


def _object(pairs: list[tuple[str, Json]]) -> dict[str, Json]:
    read = dict(pairs)
    if len(read) < len(pairs):
        raise ValueError("a name stands twice")
    return read


def _no_number(word: str) -> NoReturn:
    raise ValueError(word)


def check_depth(value: Json) -> None:
    """Raise RecipeError("too_deep") for more than 30 lists and objects in each other."""
    level = _containers([value])
    for _depth in range(DEEPEST):
        level = _containers(inner for outer in level for inner in _entries(outer))
        if not level:
            return
    raise RecipeError("too_deep", most=DEEPEST)


def _containers(values: Iterable[Json]) -> list[dict[str, Json] | list[Json]]:
    return [value for value in values if isinstance(value, (dict, list))]


def _entries(container: dict[str, Json] | list[Json]) -> Iterable[Json]:
    return container.values() if isinstance(container, dict) else container
