"""What people read when a drawing can't be a piece of wood: what is wrong at a mark, and what would do."""

from __future__ import annotations

from collections.abc import Mapping
from enum import Enum
from fractions import Fraction
from math import ceil, floor

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from club.base.quantities.length import NM_PER_MM, Length, LengthStyle, show_length
from club.base.quantities.shown import NO_BREAK_SPACE, decimal
from projects.geometry.profile import ProfileError
from projects.library.sentences.words import word_for

Words = str | Promise

DRAWING: Mapping[str, Words] = {
    "too_few_marks": _("A drawing has two marks at least: its ends. Write this one too."),
    "shapes_miscounted": _(
        "There are %(marks)s marks and %(shapes)s shapes. Write one shape between every two marks."
    ),
    "not_in_order": _(
        "It lies at %(at)s, before the mark above it at %(previous)s. Write the marks from left to right."
    ),
    "three_in_one_place": _("Three marks lie in one place. A step needs two: take one out."),
    "zero_length": _(
        "From the mark above to this one there is no way along the axis. Write a place further on, "
        "or for a step two diameters."
    ),
    "step_at_end": _("An end has one diameter. Take out one of the two marks that lie there."),
    "negative_diameter": _("A diameter can't be below 0. Write it as 1\u00a01/2\u00a0in or 38\u00a0mm."),
    "nought_diameter": _("No wood is left here. Only an end may come to a point: write a diameter above 0."),
    "radius_unused": _(
        "The shape before it is %(kind)s and has no radius. Leave the radius empty, or choose bead or cove."
    ),
    "depth_unused": _(
        "The shape before it is %(kind)s and has no depth. Leave the depth empty, or choose V-cut."
    ),
    "radius_missing": _("A %(kind)s between two diameters needs a radius. Write one."),
    "radius_too_short": _(
        "A radius of %(radius)s doesn't reach from the mark above to this one. Write at least %(least)s."
    ),
    "overhang": _(
        "With a radius of %(radius)s the arc reaches out beyond its own marks. Write at least %(least)s."
    ),
    "depth_missing": _("A V-cut needs a depth. Write one."),
    "v_cut_too_shallow": _(
        "A depth of %(depth)s doesn't go below both marks of the V-cut. Write at least %(least)s."
    ),
    "bead_through_axis": _("The bead closes the bore before this mark. Write a longer radius."),
    "cove_through_axis": _("The cove goes through the axis before this mark. Write a longer radius."),
    "v_cut_through_axis": _("A depth of %(depth)s goes through the axis. Write at most %(most)s."),
    "bore_outside": _("It lies beyond the ends of the piece. Write a place between them."),
    "bore_opens_nowhere": _(
        "The bore opens at neither end. Its first or last mark has to lie at an end of the piece."
    ),
    "wall_gone": _(
        "No wall is left between bore and outside at %(at)s along the axis, before mark %(outside_mark)s of "
        "the outside. Write a smaller diameter inside or a larger one outside."
    ),
    "nothing_left_at_end": _("No wood is left at this end, so the piece can't be held there."),
    "nothing_unsupported": _("Nothing of the piece stands free."),
}
# Hundredths of a millimetre; rounded so that what is offered is accepted.
STEPS_A_MM = 100
LENGTHS = frozenset({"at", "previous", "diameter", "radius", "least", "most", "depth"})


def drawing_sentence(error: ProfileError) -> str:
    """What is wrong at the mark of the error, in millimetres, without the mark."""
    values = {name: _shown(name, value) for name, value in error.values.items()}
    return str(DRAWING[error.code]) % values


def _shown(name: str, value: object) -> object:
    if isinstance(value, Enum):
        return word_for(value)
    if name not in LENGTHS or not isinstance(value, int):
        return value
    if name == "least":
        return _millimetres(ceil(Fraction(value * STEPS_A_MM, NM_PER_MM)))
    if name == "most":
        return _millimetres(max(floor(Fraction(value * STEPS_A_MM, NM_PER_MM)), 0))
    return show_length(Length(abs(value)), LengthStyle.MILLIMETRES)


def _millimetres(steps: int) -> str:
    return f"{decimal(Fraction(steps, STEPS_A_MM))}{NO_BREAK_SPACE}mm"
