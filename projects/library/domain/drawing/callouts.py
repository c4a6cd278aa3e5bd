"""What is lettered on the drawing of a piece: which words, and the point of the wood they speak of."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from club.base.drawing.lettering import Label
from club.base.quantities.length import Length
from projects.geometry.pieces import NM_PER_MM, Piece, pieces_between
from projects.geometry.profile import Bore, Profile, ShapeKind
from projects.library.domain.drawn import DrawnBore, DrawnMark, DrawnProfile, DrawnShape

Show = Callable[[Length], str]

# How far beside a step the diameter is read, in type sizes, and at most this share of the shape there.
BESIDE_A_STEP = 0.6
SHARE_OF_SHAPE = 0.25


@dataclass(frozen=True)
class PieceWords:
    """The words of a drawing in the reader's language; a radius, depth or place goes into each."""

    bead: str
    cove: str
    v_cut: str
    across_inside: str
    bead_inside: str
    cove_inside: str
    v_cut_inside: str
    show: Show


@dataclass(frozen=True)
class Callout:
    """Words and the point they speak of: x along the axis, r away from it, mm.

    `is_place` is true for a running dimension, which speaks of a place along the axis alone.
    """

    x: float
    r: float
    label: Label
    is_place: bool = False


@dataclass(frozen=True)
class _Joint:
    """A shape between two marks, with its curves."""

    start: DrawnMark
    end: DrawnMark
    shape: DrawnShape
    curves: tuple[Piece, ...]

    @property
    def width(self) -> float:
        return self.curves[-1].z2 - self.curves[0].z1

    @property
    def is_step(self) -> bool:
        return self.width == 0.0

    @property
    def is_cylinder(self) -> bool:
        return self.shape.kind is ShapeKind.STRAIGHT and self.start.diameter == self.end.diameter

    def r_at(self, x: float) -> float:
        curve = next(curve for curve in self.curves if x <= curve.z2)
        return curve.span_at(x)[0]

    @property
    def middle(self) -> tuple[float, float]:
        """The floor of a V-cut, the turn of an arc, or half-way along."""
        if len(self.curves) == 2:
            return (self.curves[0].z2, self.curves[0].r2)
        (curve,) = self.curves
        if curve.turn is not None:
            return curve.turn
        x = (curve.z1 + curve.z2) / 2
        return (x, curve.span_at(x)[0])


def _joints(drawn: DrawnProfile | DrawnBore, run: Profile | Bore) -> list[_Joint]:
    inside = isinstance(run, Bore)
    plain = zip(run.shapes, pairwise(run.marks), strict=True)
    curves = [pieces_between(shape, start, end, inside=inside) for shape, (start, end) in plain]
    return [
        _Joint(start, end, shape, between)
        for (start, end), shape, between in zip(pairwise(drawn.marks), drawn.shapes, curves, strict=True)
    ]


def mm(length: Length) -> float:
    return length.nm / NM_PER_MM


def diameters(drawn: DrawnProfile, words: PieceWords, size: float) -> list[Callout]:
    """Above the piece: every diameter once, and every radius and depth, from left to right."""
    joints = _joints(drawn, drawn.profile())
    found = [*_at_marks(drawn.marks, joints, words.show, size), *_on_shapes(joints, words)]
    return sorted(found, key=lambda callout: callout.x)


def _at_marks(
    marks: Sequence[DrawnMark], joints: Sequence[_Joint], show: Show, size: float
) -> Iterator[Callout]:
    """A cylinder's diameter stands at its middle; any other at its mark, or just beside a step."""
    for joint in joints:
        if joint.is_cylinder:
            yield Callout(*joint.middle, Label(show(joint.start.diameter), diameter=True))
    for number, mark in enumerate(marks):
        before = joints[number - 1] if number else None
        after = joints[number] if number < len(joints) else None
        if mark.diameter.nm == 0 or any(each and each.is_cylinder for each in (before, after)):
            continue
        x, r = _beside(mark, before, after, size)
        yield Callout(x, r, Label(show(mark.diameter), diameter=True))


def _beside(mark: DrawnMark, before: _Joint | None, after: _Joint | None, size: float) -> tuple[float, float]:
    x = mm(mark.at)
    if after is not None and after.is_step and before is not None:
        shift = min(BESIDE_A_STEP * size, SHARE_OF_SHAPE * before.width)
        return (x - shift, before.r_at(x - shift))
    if before is not None and before.is_step and after is not None:
        shift = min(BESIDE_A_STEP * size, SHARE_OF_SHAPE * after.width)
        return (x + shift, after.r_at(x + shift))
    return (x, mm(mark.diameter) / 2)


def _on_shapes(joints: Sequence[_Joint], words: PieceWords) -> Iterator[Callout]:
    templates = {ShapeKind.BEAD: words.bead, ShapeKind.COVE: words.cove, ShapeKind.V_CUT: words.v_cut}
    for joint in joints:
        if joint.shape.kind in templates:
            measure = words.show(_measure(joint))
            yield Callout(*joint.middle, Label(templates[joint.shape.kind] % {"measure": measure}))


def _measure(joint: _Joint) -> Length:
    """The radius of an arc or the depth of a V-cut; a half circle's radius is half its width."""
    given = joint.shape.depth if joint.shape.kind is ShapeKind.V_CUT else joint.shape.radius
    return given or Length((joint.end.at.nm - joint.start.at.nm) // 2)


def bores(drawn: DrawnProfile, words: PieceWords) -> list[Callout]:
    """Below the piece: every diameter of the bore once, every radius and depth in it."""
    run = drawn.profile().bore
    if drawn.bore is None or run is None:
        return []
    joints = _joints(drawn.bore, run)
    return [*_bore_marks(drawn.bore.marks, joints, words), *_bore_shapes(joints, words)]


def _bore_marks(marks: Sequence[DrawnMark], joints: Sequence[_Joint], words: PieceWords) -> Iterator[Callout]:
    def across(mark: DrawnMark) -> Label:
        return Label(words.across_inside % {"across": words.show(mark.diameter)}, diameter=True)

    for joint in joints:
        if joint.is_cylinder:
            yield Callout(*joint.middle, across(joint.start))
    for number, mark in enumerate(marks):
        if mark.diameter.nm and not any(each.is_cylinder for each in joints[max(number - 1, 0) : number + 1]):
            yield Callout(mm(mark.at), mm(mark.diameter) / 2, across(mark))


def _bore_shapes(joints: Sequence[_Joint], words: PieceWords) -> Iterator[Callout]:
    templates = {
        ShapeKind.BEAD: words.bead_inside,
        ShapeKind.COVE: words.cove_inside,
        ShapeKind.V_CUT: words.v_cut_inside,
    }
    for joint in joints:
        if joint.shape.kind in templates:
            measure = words.show(_measure(joint))
            yield Callout(*joint.middle, Label(templates[joint.shape.kind] % {"measure": measure}))


def places(drawn: DrawnProfile, show: Show) -> list[Callout]:
    """The running dimensions: every place a mark of the outside or the bore stands at, once.

    The line down to one begins at the largest diameter there.
    """
    found: dict[int, DrawnMark] = {}
    for mark in (*drawn.marks, *(drawn.bore.marks if drawn.bore else ())):
        kept = found.get(mark.at.nm)
        if kept is None or kept.diameter < mark.diameter:
            found[mark.at.nm] = mark
    return [
        Callout(mm(mark.at), mm(mark.diameter) / 2, Label(show(mark.at)), is_place=True)
        for _nm, mark in sorted(found.items())
    ]


def numbers(drawn: DrawnProfile) -> list[Callout]:
    """The numbers of the marks, for a drawing too small for their measures; a step's two stand as `4, 5`."""
    found: dict[int, list[tuple[int, DrawnMark]]] = {}
    for number, mark in enumerate(drawn.marks, 1):
        found.setdefault(mark.at.nm, []).append((number, mark))
    return [
        Callout(
            mm(pairs[0][1].at),
            max(mm(mark.diameter) for _number, mark in pairs) / 2,
            Label(", ".join(str(number) for number, _mark in pairs)),
        )
        for pairs in found.values()
    ]
