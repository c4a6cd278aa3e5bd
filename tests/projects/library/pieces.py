"""Recipes whose drawing was drawn at random, with lengths as somebody typed them."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from club.base.quantities.length import NM_PER_INCH, Length
from projects.geometry.profile import Bore, Profile, ProfileError, Shape, check
from projects.library.domain.drawn import DrawnBore, DrawnMark, DrawnProfile, DrawnShape
from projects.library.domain.recipe import Recipe
from tests.projects.geometry.drawings import random_profile
from tests.projects.library.examples import KNOB

IN_64THS = NM_PER_INCH // 64


def in_mm(nm: int) -> Length:
    return Length(nm, f"{nm / 1_000_000:g} mm")


def in_inches(nm: int) -> Length:
    """The nearest 64th, typed as a fraction."""
    whole, parts = divmod(round(nm / IN_64THS), 64)
    fraction = Fraction(parts, 64)
    words = [str(whole)] if whole or not parts else []
    words += [f"{fraction.numerator}/{fraction.denominator}"] if parts else []
    return Length((whole * 64 + parts) * IN_64THS, f"{' '.join(words)} in")


def drawn(profile: Profile, typed=in_mm) -> DrawnProfile:
    bore = profile.bore
    return DrawnProfile(
        _marks(profile, typed),
        _shapes(profile.shapes, typed),
        DrawnBore(_marks(bore, typed), _shapes(bore.shapes, typed)) if bore else None,
    )


def _marks(run: Profile | Bore, typed) -> tuple[DrawnMark, ...]:
    return tuple(DrawnMark(typed(mark.at), typed(mark.diameter)) for mark in run.marks)


def _shapes(shapes: tuple[Shape, ...], typed) -> tuple[DrawnShape, ...]:
    return tuple(
        DrawnShape(
            shape.kind,
            typed(shape.radius) if shape.radius else None,
            typed(shape.depth) if shape.depth else None,
        )
        for shape in shapes
    )


def random_recipe(seed: int) -> Recipe:
    """The knob with another drawing, in millimetres."""
    return replace(KNOB, profile=drawn(random_profile(seed)))


def random_recipe_in_inches(seed: int) -> Recipe | None:
    """The same in 64ths, or None where rounding to them makes it no piece of wood."""
    profile = drawn(random_profile(seed), in_inches)
    try:
        check(profile.profile())
    except ProfileError:
        return None
    return replace(KNOB, profile=profile)
