"""What a field of a recipe may hold, written once beside the field; the schema is made from it.

`Minutes = Annotated[int, Whole(0, 600)]` is a plain int to the type checker and to whoever reads a recipe.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, TypeAlias

# Signs that are not seen, and halves of signs: controls, right-to-left marks, line ends, surrogates.
# A regular expression of ECMA-262 that Python reads alike; the last group is "and nothing behind it".
UNSEEN = r"\u0000-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ud800-\udfff"
SEEN = rf"^(?:(?=\S)[^{UNSEEN}]*(?<=\S))?(?![\s\S])"
KEY = r"^[a-z0-9]+(?:[_-][a-z0-9]+)*(?![\s\S])"


@dataclass(frozen=True)
class Text:
    """So many characters at most, none hidden, no blank at an end; empty where `least` is 0."""

    most: int
    least: int = 1
    pattern: str = SEEN


@dataclass(frozen=True)
class Whole:
    """A whole number between two, both let in."""

    least: int
    most: int


@dataclass(frozen=True)
class Many:
    """So many entries."""

    most: int
    least: int = 0


@dataclass(frozen=True)
class Above:
    """A length, area or volume that may not be nought."""


# The name of a thing inside a recipe or in a table, as `walnut_oil` or `rough-round`.
Key: TypeAlias = Annotated[str, Text(60, pattern=KEY)]
Line: TypeAlias = Annotated[str, Text(120)]
MaybeLine: TypeAlias = Annotated[str, Text(120, least=0)]
Passage: TypeAlias = Annotated[str, Text(600)]
MaybePassage: TypeAlias = Annotated[str, Text(600, least=0)]
# Ten hours; no class is longer.
Minutes: TypeAlias = Annotated[int, Whole(0, 600)]
# A year; some timber is dried as long.
Hours: TypeAlias = Annotated[int, Whole(0, 8_760)]
Count: TypeAlias = Annotated[int, Whole(1, 1_000)]
Percent: TypeAlias = Annotated[int, Whole(0, 100)]
