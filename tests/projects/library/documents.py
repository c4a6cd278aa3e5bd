"""Documents of the knob with something else in them."""

from __future__ import annotations

from typing import Any

from projects.library.domain.json_form import to_json
from tests.projects.library.examples import KNOB

Path = tuple[str | int, ...]


def changed(path: Path, value: object) -> dict[str, Any]:
    """The knob's document with this value put in somewhere."""
    data: dict[str, Any] = to_json(KNOB)
    place: Any = data
    for step in path[:-1]:
        place = place[step]
    place[path[-1]] = value
    return data


def without(*path: str | int) -> dict[str, Any]:
    data: dict[str, Any] = to_json(KNOB)
    place: Any = data
    for step in path[:-1]:
        place = place[step]
    del place[path[-1]]
    return data
