"""The wood a piece is turned from, by its shape and how its grain runs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar, TypeAlias

from club.base.quantities.length import Length
from projects.geometry.blank import BlankForm, BlankSize
from projects.library.domain.bounds import Above, Key, Many, Whole
from projects.library.domain.words import WoodCondition

# A wood nobody named; it counts as a hardwood, and as harmful as any.
NOT_NAMED = "unknown"

Conditions: TypeAlias = Annotated[tuple[WoodCondition, ...], Many(4)]
# In kg/m³ at 12 % moisture; empty until the edition is frozen. Wood sinks at 1 500, balsa has about 100.
Density: TypeAlias = Annotated[int, Whole(50, 1_500)] | None


@dataclass(frozen=True)
class SquareBlank:
    """Spindle work: square across, grain along the axis. `species` is a key of the table of woods."""

    kind: ClassVar[str] = "square"
    grain_across: ClassVar[bool] = False

    species: Key
    side: Annotated[Length, Above()]
    length: Annotated[Length, Above()]
    conditions: Conditions = ()
    density_kg_per_m3: Density = None

    @property
    def size(self) -> BlankSize:
        return BlankSize(BlankForm.SQUARE, self.side.nm, self.length.nm)


@dataclass(frozen=True)
class RoundBlank:
    """Spindle work from a dowel or a branch: round across, grain along the axis."""

    kind: ClassVar[str] = "round"
    grain_across: ClassVar[bool] = False

    species: Key
    diameter: Annotated[Length, Above()]
    length: Annotated[Length, Above()]
    conditions: Conditions = ()
    density_kg_per_m3: Density = None

    @property
    def size(self) -> BlankSize:
        return BlankSize(BlankForm.ROUND, self.diameter.nm, self.length.nm)


@dataclass(frozen=True)
class SlabBlank:
    """Face work: a disc cut from a slab or board, grain across the bed."""

    kind: ClassVar[str] = "slab"
    grain_across: ClassVar[bool] = True

    species: Key
    diameter: Annotated[Length, Above()]
    thickness: Annotated[Length, Above()]
    conditions: Conditions = ()
    density_kg_per_m3: Density = None

    @property
    def size(self) -> BlankSize:
        """Along the axis it is as long as the slab is thick."""
        return BlankSize(BlankForm.ROUND, self.diameter.nm, self.thickness.nm)


Blank: TypeAlias = SquareBlank | RoundBlank | SlabBlank
