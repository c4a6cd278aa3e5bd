"""A turned piece as it is drawn, and the check that it is one; marks and errors stand in `marks.py`."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from projects.geometry.arc_fit import check_arc, check_v_cut
from projects.geometry.marks import Bore, Mark, Profile, ProfileError, Shape, ShapeKind
from projects.geometry.walls import check_walls

__all__ = ["Bore", "Mark", "Profile", "ProfileError", "Shape", "ShapeKind", "check"]

ARCS = (ShapeKind.BEAD, ShapeKind.COVE)


def check(profile: Profile) -> None:
    """Raise ProfileError for a drawing that no piece of wood can have; the outside is looked at first."""
    _check_run(profile.marks, profile.shapes, inside=False)
    if profile.bore is not None:
        _check_run(profile.bore.marks, profile.bore.shapes, inside=True)
        _check_openings(profile.marks, profile.bore.marks)
        check_walls(profile)


def _check_run(marks: Sequence[Mark], shapes: Sequence[Shape], *, inside: bool) -> None:
    _check_count(marks, shapes, inside)
    _check_order(marks, inside)
    for number, mark in enumerate(marks, 1):
        if mark.diameter < 0:
            raise ProfileError("negative_diameter", mark=number, inside=inside, diameter=mark.diameter)
        if mark.diameter == 0 and 1 < number < len(marks):
            raise ProfileError("nought_diameter", mark=number, inside=inside)
    for number, (shape, (start, end)) in enumerate(zip(shapes, pairwise(marks), strict=True), 2):
        _check_shape(shape, start, end, number, inside)


def _check_count(marks: Sequence[Mark], shapes: Sequence[Shape], inside: bool) -> None:
    if len(marks) < 2:
        raise ProfileError("too_few_marks", mark=len(marks) + 1, inside=inside)
    if len(shapes) != len(marks) - 1:
        first_alone = min(len(shapes) + 2, len(marks))
        counts = {"marks": len(marks), "shapes": len(shapes)}
        raise ProfileError("shapes_miscounted", mark=first_alone, inside=inside, **counts)


def _check_order(marks: Sequence[Mark], inside: bool) -> None:
    for number, (before, mark) in enumerate(pairwise(marks), 2):
        if mark.at < before.at:
            raise ProfileError("not_in_order", mark=number, inside=inside, at=mark.at, previous=before.at)
    if marks[0].at == marks[-1].at:
        raise ProfileError("zero_length", mark=len(marks), inside=inside, kind=ShapeKind.STRAIGHT)
    for number, (first, last) in enumerate(zip(marks, marks[2:], strict=False), 3):
        if first.at == last.at:
            raise ProfileError("three_in_one_place", mark=number, inside=inside)
    for number in (2, len(marks)):
        if marks[number - 2].at == marks[number - 1].at:
            raise ProfileError("step_at_end", mark=number, inside=inside)


def _check_shape(shape: Shape, start: Mark, end: Mark, mark: int, inside: bool) -> None:
    _check_measures(shape, mark, inside)
    is_step = shape.kind is ShapeKind.STRAIGHT and start.diameter != end.diameter
    if start.at == end.at and not is_step:
        raise ProfileError("zero_length", mark=mark, inside=inside, kind=shape.kind)
    if start.diameter == end.diameter == 0 and shape.kind is not ShapeKind.BEAD:
        raise ProfileError("nought_diameter", mark=mark, inside=inside)
    if shape.kind in ARCS:
        check_arc(shape, start, end, mark, inside)
    elif shape.kind is ShapeKind.V_CUT:
        check_v_cut(shape, start, end, mark, inside)


def _check_measures(shape: Shape, mark: int, inside: bool) -> None:
    """A measure that its shape has no use for is a slip of somebody's; nothing typed is passed over."""
    if shape.radius is not None and shape.kind not in ARCS:
        raise ProfileError("radius_unused", mark=mark, inside=inside, kind=shape.kind)
    if shape.depth is not None and shape.kind is not ShapeKind.V_CUT:
        raise ProfileError("depth_unused", mark=mark, inside=inside, kind=shape.kind)


def _check_openings(outside: Sequence[Mark], bore: Sequence[Mark]) -> None:
    """The bore lies within the piece and is open at one end at least, wider than a point there."""
    left, right = outside[0].at, outside[-1].at
    ends = ((1, bore[0], bore[0].at == left), (len(bore), bore[-1], bore[-1].at == right))
    for number, mark, is_open in ends:
        if not left <= mark.at <= right:
            raise ProfileError("bore_outside", mark=number, inside=True)
        if is_open and mark.diameter == 0:
            raise ProfileError("nought_diameter", mark=number, inside=True)
    if not any(is_open for _number, _mark, is_open in ends):
        raise ProfileError("bore_opens_nowhere", mark=1, inside=True)
