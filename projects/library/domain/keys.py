"""Keys made from what people write, so that nobody has to think one up."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Container, Iterator
from itertools import count

from projects.library.domain.recipe import Recipe

# Long enough to be told apart, short enough for an address.
LONGEST = 40
# As long as a recipe lets a key be.
LONGEST_TYPED = 60


def own_keys(recipe: Recipe) -> Iterator[str]:
    """Every key by which something in this recipe is referred to."""
    yield from (mounting.key for mounting in recipe.mountings)
    yield from (step.key for step in recipe.steps())
    yield from (need.key for need in recipe.materials)
    yield from (glue_up.key for glue_up in recipe.glue_ups)
    yield from (task.key for task in recipe.preparation)


def key_from(text: str, taken: Container[str], otherwise: str) -> str:
    """A key that is not taken: `Crème brûlée spoon` is `creme-brulee-spoon`, and a second one `...-2`.

    `otherwise` stands in for text that has no letter of the Latin alphabet.
    """
    stem = _words(text, "-")[:LONGEST].rstrip("-") or otherwise
    if stem not in taken:
        return stem
    return next(key for key in (f"{stem}-{number}" for number in count(2)) if key not in taken)


def skill_key(text: str) -> str:
    """The key of a skill written in words: `Parting tool` is `parting_tool`; "" where no letter is in it."""
    return "" if len(text) > LONGEST_TYPED else _words(text, "_")


def skill_words(key: str) -> str:
    """The way back: text that `skill_key` reads as this very key."""
    return key.replace("_", " ")


def _words(text: str, joint: str) -> str:
    """Small Latin letters and digits; a hyphen stays one, whatever else there is becomes the joint."""
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().casefold()
    words = (re.sub(r"[^a-z0-9]+", joint, word).strip(joint) for word in plain.split("-"))
    return "-".join(word for word in words if word)
