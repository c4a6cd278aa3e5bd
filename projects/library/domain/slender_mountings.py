"""How slender the piece is in each mounting, as far as the recipe says what holds its ends.

The value warns that a piece may whip. That it doesn't warn makes nothing safe.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from club.base.quantities.length import Length
from projects.geometry.marks import ProfileError
from projects.geometry.slenderness import BARE, Stub, slenderness
from projects.library.domain.holding import BetweenCentres, Collet, Faceplate, ScrewChuck, ScrollChuck
from projects.library.domain.mountings import Mounting
from projects.library.domain.recipe import End, Recipe
from projects.library.domain.words import Grip, Operation

# Above this the piece may whip; a setting, common practice.
WARN_ABOVE = 10
# A ratio is said to a thousandth; more would say nothing.
DIGITS = 1_000


@dataclass(frozen=True)
class MountingSlenderness:
    """`mounting` is its key. `ratio` is the unsupported length over the diameter of a plain bar that bends as
    readily, an overhung length counted double; None where nobody can say, as in a jam chuck."""

    mounting: str
    ratio: Fraction | None
    warns: bool = False
    unsupported: Length | None = None
    bar: Length | None = None
    overhung: bool = False


def slender_mountings(recipe: Recipe, warn_above: int = WARN_ABOVE) -> tuple[MountingSlenderness, ...]:
    """One for each mounting of a checked drawing, in their order."""
    return tuple(_slender(recipe, mounting, warn_above) for mounting in recipe.mountings)


def _slender(recipe: Recipe, mounting: Mounting, warn_above: int) -> MountingSlenderness:
    held_end, far_end = recipe.left_end, recipe.right_end
    if mounting.turned_round:
        held_end, far_end = far_end, held_end
    held = _held(mounting, held_end)
    if held is None:
        return MountingSlenderness(mounting.key, None)
    far = _whole(far_end)
    left, right = (far, held) if mounting.turned_round else (held, far)
    overhung = _is_overhung(mounting)
    try:
        found = slenderness(recipe.profile.profile(), left=left, right=right, overhung=overhung)
    except ProfileError:
        return MountingSlenderness(mounting.key, None)
    return MountingSlenderness(
        mounting.key,
        Fraction(round(found.ratio * DIGITS), DIGITS),
        found.ratio > warn_above,
        _length(found.unsupported_mm),
        _length(found.bar_mm),
        overhung,
    )


def _held(mounting: Mounting, end: End | None) -> Stub | None:
    """What stands free between the piece and what holds it at the headstock; None where nobody can say."""
    match mounting.holding:
        case BetweenCentres() | Faceplate() | ScrewChuck():
            return _whole(end)
        case ScrollChuck(grip=Grip.RECESS):
            return BARE
        case ScrollChuck(length=gripped) | Collet(grip_length=gripped) if end:
            return Stub(end.diameter.nm, max(0, end.length.nm - gripped.nm))
        case _:
            return None


def _whole(end: End | None) -> Stub:
    return Stub(end.diameter.nm, end.length.nm) if end else BARE


def _is_overhung(mounting: Mounting) -> bool:
    """Whether anything is turned with the tailstock away, parting aside: that cut ends the support anyway."""
    if isinstance(mounting.holding, BetweenCentres):
        return False
    without = mounting.steps_without_tailstock()
    return any(step.runs and step.operation is not Operation.PARTING_OFF for step in without)


def _length(mm: float) -> Length:
    return Length(round(mm * 1_000_000))
