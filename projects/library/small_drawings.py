"""Small drawings of pieces for a list, with words for those who can't see them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from django.utils.translation import gettext

from club.base.drawing.sheet import Drawing
from club.base.quantities.length import Length
from projects.geometry.outline import largest_mm, length_mm
from projects.geometry.profile import Profile
from projects.library.domain.recipe import Recipe
from projects.library.domain.small_outline import list_scale, small_outline
from projects.library.sentences.lengths import Show

NM_PER_MM = 1_000_000


@dataclass(frozen=True)
class SmallDrawing:
    drawing: Drawing
    words: str


def small_pieces(recipes: Sequence[Recipe], show: Show) -> list[SmallDrawing]:
    """Each piece, all of them at one scale so that an eye can compare them."""
    profiles = [recipe.profile.profile() for recipe in recipes]
    scale = list_scale(profiles)
    return [
        SmallDrawing(
            small_outline(profile, scale),
            _spoken(recipe.title, profile, show),
        )
        for recipe, profile in zip(recipes, profiles, strict=True)
    ]


def _spoken(title: str, profile: Profile, show: Show) -> str:
    length, across = (Length(round(mm * NM_PER_MM)) for mm in (length_mm(profile), largest_mm(profile)))
    values = {"title": title, "length": show(length), "across": show(across)}
    return gettext("%(title)s, %(length)s long, %(across)s across") % values
