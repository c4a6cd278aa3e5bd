"""A document as a flat list of its values, each by the way to it: what the change log compares."""

from __future__ import annotations

from collections.abc import Iterator

from projects.library.domain.json_values import Json

HEAD = frozenset({"format", "version"})


def leaves(document: Json) -> dict[str, str]:
    """`{"mountings 1, steps 3, minutes": "8"}`: lists are counted from 1, yes and no are words of JSON."""
    return dict(_leaves(document, ""))


def _leaves(value: Json, way: str) -> Iterator[tuple[str, str]]:
    if isinstance(value, dict):
        for name, inner in value.items():
            if way or name not in HEAD:
                yield from _leaves(inner, f"{way}, {name}" if way else name)
    elif isinstance(value, list):
        for number, inner in enumerate(value, 1):
            yield from _leaves(inner, f"{way} {number}")
    else:
        yield way, str(value).lower() if isinstance(value, bool) else str(value)
