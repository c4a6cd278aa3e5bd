"""The least blank that holds a checked profile, and what of a blank is lost; lengths in nanometres."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import ceil, isqrt, pi

from projects.geometry.marks import Profile
from projects.geometry.outline import largest_mm
from projects.geometry.pieces import NM_PER_MM, mm
from projects.geometry.solids import volume_mm3

# What floating arithmetic may add to a diameter that is a whole number of nanometres is far below this.
_ARITHMETIC_NM = 0.01


class BlankForm(StrEnum):
    """Square across with the grain along it, or round: a dowel, or a disc cut from a slab."""

    SQUARE = "square"
    ROUND = "round"


@dataclass(frozen=True)
class Allowances:
    """What the blank is longer and thicker than the piece.

    `holding` is gripped or spiked and cut off, `nub` the wood left at the end until it is parted, `parting`
    the width of the parting cuts, `across` what truing takes off the diameter.
    """

    holding: int = 0
    nub: int = 0
    parting: int = 0
    across: int = 0

    @property
    def along(self) -> int:
        return self.holding + self.nub + self.parting


class BlankError(ValueError):
    """The piece doesn't fit into this blank: too_thin or too_short (needs, has; nanometres)."""

    def __init__(self, code: str, /, *, needs: int, has: int) -> None:
        self.code = code
        self.values = {"needs": needs, "has": has}
        super().__init__(code)


@dataclass(frozen=True)
class BlankSize:
    """`across` is the side of a square or the diameter of a round."""

    form: BlankForm
    across: int
    length: int

    @property
    def roughing_diameter(self) -> int:
        """What its corners run on: the diagonal of a square, rounded up."""
        if self.form is BlankForm.ROUND:
            return self.across
        return isqrt(2 * self.across**2 - 1) + 1

    @property
    def volume_mm3(self) -> float:
        face = mm(self.across) ** 2 * (pi / 4 if self.form is BlankForm.ROUND else 1.0)
        return face * mm(self.length)


def largest_nm(profile: Profile) -> int:
    """The largest diameter in whole nanometres, rounded up."""
    return ceil(largest_mm(profile) * NM_PER_MM - _ARITHMETIC_NM)


def containing_blank(
    profile: Profile,
    form: BlankForm,
    allowances: Allowances = Allowances(),
) -> BlankSize:
    """The least blank of this form for the piece with its allowances."""
    length = profile.marks[-1].at - profile.marks[0].at
    return BlankSize(form, largest_nm(profile) + allowances.across, length + allowances.along)


def check_blank(profile: Profile, blank: BlankSize, allowances: Allowances = Allowances()) -> None:
    """Raise BlankError for a blank thinner or shorter than the piece needs."""
    least = containing_blank(profile, blank.form, allowances)
    if blank.across < least.across:
        raise BlankError("too_thin", needs=least.across, has=blank.across)
    if blank.length < least.length:
        raise BlankError("too_short", needs=least.length, has=blank.length)


def shavings_share(profile: Profile, blank: BlankSize) -> float:
    """The share of the blank that isn't in the finished piece, from 0 to 1: shavings, nub and cut-off ends.

    Raises BlankError for a blank that can't hold the piece.
    """
    check_blank(profile, blank)
    return 1 - volume_mm3(profile) / blank.volume_mm3
