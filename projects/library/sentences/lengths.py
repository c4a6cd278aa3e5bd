"""How a reader is shown the lengths of a recipe."""

from __future__ import annotations

import re
from collections.abc import Callable

from django.utils.translation import gettext as _

from club.base.quantities.length import Length, LengthStyle, show_length
from club.base.quantities.shown import with_about
from projects.library.domain.recipe import Recipe

Show = Callable[[Length], str]
TENTH, HUNDREDTH = 100_000, 10_000  # nm, of a millimetre
# As people type them: `in`, `inches`, `"`.
INCHES = re.compile(r"[0-9.]\s*(?:in\b|inch|\"|\u2033|'')", re.IGNORECASE)


def shown_in(lengths: LengthStyle, recipe: Recipe | None = None) -> Show:
    """How a reader is shown a length; one that was worked out, in the unit its recipe is drawn in.

    Millimetres that were worked out and are no whole hundredths are rounded to tenths, which a hand can set.
    """
    about = _("about")
    own = LengthStyle.SIXTY_FOURTHS if recipe and _drawn_in_inches(recipe) else LengthStyle.MILLIMETRES

    def show(length: Length) -> str:
        if length.typed:
            return show_length(length, lengths, about)
        style = own if lengths is LengthStyle.AS_TYPED else lengths
        if style is not LengthStyle.MILLIMETRES:
            return show_length(length, style, about)
        if length.nm % HUNDREDTH == 0:
            return show_length(length, style)
        return with_about(show_length(_to_tenths(length), style), exact=False, about=about)

    return show


def in_inches(lengths: LengthStyle, recipe: Recipe) -> bool:
    """Whether this reader is shown inches for a length of the recipe that was worked out."""
    if lengths is LengthStyle.AS_TYPED:
        return _drawn_in_inches(recipe)
    return lengths is not LengthStyle.MILLIMETRES


def _to_tenths(length: Length) -> Length:
    return Length((length.nm + TENTH // 2) // TENTH * TENTH)


def _drawn_in_inches(recipe: Recipe) -> bool:
    """Whether the place of the last mark was typed in inches; the first one is nought, in any unit."""
    return INCHES.search(recipe.profile.marks[-1].at.typed) is not None
