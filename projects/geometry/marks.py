"""What a drawing says of a turned piece: marks along the axis, as on a story stick, joined by shapes."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class ShapeKind(StrEnum):
    """How the surface runs from one mark to the next. Outside and inside, it is the wood that is meant."""

    STRAIGHT = "straight"  # a cylinder or a cone; between two marks at one place a step
    BEAD = "bead"  # an arc that bulges out of the wood: away from the axis, inside a bore towards it
    COVE = "cove"  # an arc hollowed into the wood
    V_CUT = "v_cut"  # straight into the wood to a depth half-way along, and straight back


@dataclass(frozen=True)
class Mark:
    """A place along the axis and the diameter of the surface there, in nanometres."""

    at: int
    diameter: int


@dataclass(frozen=True)
class Shape:
    """What joins two marks; lengths in nanometres.

    `radius` belongs to a bead or cove. Left out, the arc is the half circle over the line between its marks,
    which needs marks of one diameter. Of the two arcs that a radius allows it is the shorter.
    `depth` belongs to a V-cut: from the middle of the line between its marks square to the axis.
    """

    kind: ShapeKind
    radius: int | None = None
    depth: int | None = None


@dataclass(frozen=True)
class Bore:
    """The inside, drilled or hollowed, on the same scale along the axis.

    It is open where its first or last mark lies at an end of the piece; elsewhere it ends in a flat bottom
    of that mark's diameter.
    """

    marks: tuple[Mark, ...]
    shapes: tuple[Shape, ...]


@dataclass(frozen=True)
class Profile:
    """The outside, with one shape fewer than marks, and the bore of a piece that has one.

    The first and last mark are the ends, flat faces of their diameters, or points where that is nought.
    """

    marks: tuple[Mark, ...]
    shapes: tuple[Shape, ...]
    bore: Bore | None = None


class ProfileError(ValueError):
    """A drawing that is no piece of wood. `code` says why, `mark` where, counted from 1.

    `inside` is true where it is a mark of the bore. A fault between two marks names the second. `values` are
    lengths in nanometres, and `kind` a ShapeKind:

    too_few_marks; shapes_miscounted (marks, shapes); not_in_order (at, previous); three_in_one_place;
    zero_length (kind): a shape without length that is no step, or a step without height;
    step_at_end: the first or last two marks lie at one place, while one mark says the end's diameter;
    negative_diameter (diameter); nought_diameter: a point elsewhere than at an end, or wood of no thickness;
    radius_unused, depth_unused (kind): a straight with a radius; radius_missing (kind): an arc between two
    diameters; radius_too_short (radius, least): less than half the line between its marks;
    overhang (radius, least): an arc that reaches past its own marks; depth_missing;
    v_cut_too_shallow (depth, least): not below both its marks;
    bead_through_axis (a bead inside a bore; no outer one can), cove_through_axis,
    v_cut_through_axis (depth, most);
    bore_outside: a mark beyond the ends of the piece; bore_opens_nowhere;
    wall_gone (at, outside_mark): the bore meets the outside between these marks.

    Of `slenderness`, which needs wood at both ends: nothing_left_at_end, nothing_unsupported.
    """

    def __init__(self, code: str, /, *, mark: int, inside: bool = False, **values: object) -> None:
        self.code = code
        self.mark = mark
        self.inside = inside
        self.values = values
        super().__init__(code)
