"""The drawings of a recipe: each has to be one that wood can have."""

from __future__ import annotations

from collections.abc import Iterator

from projects.geometry.profile import ProfileError, check
from projects.library.domain.drawn import DrawnProfile
from projects.library.domain.errors import RecipeError
from projects.library.domain.recipe import Recipe


def drawings(recipe: Recipe) -> Iterator[tuple[str, DrawnProfile]]:
    """Where each drawing stands, and the drawing: the piece's own, then those of its variants."""
    yield "profile", recipe.profile
    for name, variant in (("easier", recipe.easier), ("harder", recipe.harder)):
        if variant is not None and variant.profile is not None:
            yield f"{name}.profile", variant.profile


def check_drawings(recipe: Recipe) -> None:
    """Raise RecipeError("bad_profile") at the mark that can't be; `reason` is the ProfileError."""
    for path, drawn in drawings(recipe):
        try:
            check(drawn.profile())
        except ProfileError as error:
            bore = ".bore" if error.inside else ""
            at = f"{path}{bore}.marks[{error.mark - 1}]"
            raise RecipeError("bad_profile", path=at, reason=error) from error
