"""What checks say of a recipe: a code with values and the place. The room has the sentences."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType


class Weight(StrEnum):
    """Refused: the edition can't be used so. Mind: somebody has to look at it."""

    REFUSED = "refused"
    MIND = "mind"


@dataclass(frozen=True)
class Finding:
    """`path` is written as RecipeError writes it; `values` are plain values or words of the recipe."""

    code: str
    weight: Weight
    path: str
    values: Mapping[str, object] = field(default_factory=dict)


def refused(code: str, path: str, /, **values: object) -> Finding:
    return Finding(code, Weight.REFUSED, path, MappingProxyType(values))


def mind(code: str, path: str, /, **values: object) -> Finding:
    return Finding(code, Weight.MIND, path, MappingProxyType(values))
