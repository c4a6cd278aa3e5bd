"""The drawing of a piece with its lengths as somebody typed them, and the profile that is computed with."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from club.base.quantities.length import Length
from projects.geometry.profile import Bore, Mark, Profile, Shape, ShapeKind
from projects.library.domain.bounds import Above, Many


@dataclass(frozen=True)
class DrawnMark:
    """A place along the axis, from the left end, and the diameter of the surface there."""

    at: Length
    diameter: Length


@dataclass(frozen=True)
class DrawnShape:
    """What joins two marks. A radius belongs to a bead or cove, a depth to a V-cut; see the profile."""

    kind: ShapeKind
    radius: Annotated[Length, Above()] | None = None
    depth: Annotated[Length, Above()] | None = None


@dataclass(frozen=True)
class DrawnBore:
    """The inside, drilled or hollowed, measured from the same end."""

    marks: Annotated[tuple[DrawnMark, ...], Many(60, least=2)]
    shapes: Annotated[tuple[DrawnShape, ...], Many(59, least=1)]


@dataclass(frozen=True)
class DrawnProfile:
    """The outside, with one shape fewer than marks, and the bore of a piece that has one."""

    marks: Annotated[tuple[DrawnMark, ...], Many(60, least=2)]
    shapes: Annotated[tuple[DrawnShape, ...], Many(59, least=1)]
    bore: DrawnBore | None = None

    def profile(self) -> Profile:
        """The same in whole nanometres. Whether it is a piece of wood is checked with the profile."""
        bore = Bore(_marks(self.bore.marks), _shapes(self.bore.shapes)) if self.bore else None
        return Profile(_marks(self.marks), _shapes(self.shapes), bore)


def _marks(marks: tuple[DrawnMark, ...]) -> tuple[Mark, ...]:
    return tuple(Mark(mark.at.nm, mark.diameter.nm) for mark in marks)


def _shapes(shapes: tuple[DrawnShape, ...]) -> tuple[Shape, ...]:
    return tuple(
        Shape(
            drawn.kind,
            radius=drawn.radius.nm if drawn.radius else None,
            depth=drawn.depth.nm if drawn.depth else None,
        )
        for drawn in shapes
    )
