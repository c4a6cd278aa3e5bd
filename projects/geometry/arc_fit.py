"""Whether an arc or a V-cut joins its marks, decided in whole numbers, so rounding never decides.

Everything here is counted in half nanometres, the unit in which a diameter is its own radius. An arc over a
chord of length c and width w along the axis stays between its marks exactly when c² <= 2 · radius · w: else
it runs past the place where it stands square to the axis. That takes in radius >= c / 2, as c >= w.
"""

from __future__ import annotations

from dataclasses import dataclass

from projects.geometry.marks import Mark, ProfileError, Shape, ShapeKind

# A radius is typed to the nearest whole nanometre, so it may fall short by half of one.
ROUNDING = 1
# A neck thinner than one nanometre across is none.
THINNEST = 1


@dataclass(frozen=True)
class Chord:
    """The straight line between two marks, in half nanometres; `squared` is its length squared."""

    width: int
    first: int
    last: int

    @property
    def rise(self) -> int:
        return self.last - self.first

    @property
    def squared(self) -> int:
        return self.width**2 + self.rise**2

    @property
    def least_radius_nm(self) -> int:
        """The least whole radius in nanometres whose arc stays between the marks."""
        return -(-self.squared // (4 * self.width))


def chord(start: Mark, end: Mark) -> Chord:
    return Chord(2 * (end.at - start.at), start.diameter, end.diameter)


def radius_of(shape: Shape, line: Chord) -> int:
    """The arc's radius in half nanometres: the one given, else that of the half circle."""
    return line.width // 2 if shape.radius is None else 2 * shape.radius


def four_apothems_squared(radius: int, line: Chord) -> int:
    """4 · (distance of centre and chord)²; nought where only rounding made the radius too short."""
    return max(4 * radius**2 - line.squared, 0)


def turns_between(radius: int, line: Chord) -> bool:
    """Whether the arc's highest or lowest point lies between its marks and not at one of them."""
    return 2 * radius * abs(line.rise) < line.squared


def bends_inwards(kind: ShapeKind, inside: bool) -> bool:
    """Whether the arc lies on the axis's side of its chord."""
    return (kind is ShapeKind.COVE) is not inside


def check_arc(shape: Shape, start: Mark, end: Mark, mark: int, inside: bool) -> None:
    """Raise ProfileError for an arc that doesn't join these marks or meets the axis between them."""
    line = chord(start, end)
    if shape.radius is None and line.rise:
        raise ProfileError("radius_missing", mark=mark, inside=inside, kind=shape.kind)
    radius = radius_of(shape, line)
    _check_reach(radius, line, mark, inside)
    if bends_inwards(shape.kind, inside) and _meets_axis(radius, line):
        raise ProfileError(f"{shape.kind.value}_through_axis", mark=mark, inside=inside)


def _check_reach(radius: int, line: Chord, mark: int, inside: bool) -> None:
    longest = radius + ROUNDING
    values = {"radius": radius // 2, "least": line.least_radius_nm}
    if radius <= 0 or 4 * longest**2 < line.squared:
        raise ProfileError("radius_too_short", mark=mark, inside=inside, **values)
    if line.squared > 2 * longest * line.width:
        raise ProfileError("overhang", mark=mark, inside=inside, **values)


def _meets_axis(radius: int, line: Chord) -> bool:
    """Whether the lowest point of an arc that bends inwards is no thicker than nothing.

    The centre stands at (first + last) / 2 + apothem · width / chord, and has to stand a radius and the
    thinnest neck above the axis; squared, that is a comparison of whole numbers.
    """
    if not turns_between(radius, line):
        return False
    wanted = 2 * (radius + THINNEST) - line.first - line.last
    return wanted > 0 and four_apothems_squared(radius, line) * line.width**2 < wanted**2 * line.squared


def check_v_cut(shape: Shape, start: Mark, end: Mark, mark: int, inside: bool) -> None:
    """Raise ProfileError for a V-cut without depth, not below both its marks, or through the axis."""
    if shape.depth is None:
        raise ProfileError("depth_missing", mark=mark, inside=inside)
    # Below the middle of the line; half the rise brings it level with the mark that lies deeper in the wood.
    least = abs(end.diameter - start.diameter) // 4 + 1
    if shape.depth < least:
        raise ProfileError("v_cut_too_shallow", mark=mark, inside=inside, depth=shape.depth, least=least)
    most = (start.diameter + end.diameter - 2 * THINNEST) // 4
    if not inside and shape.depth > most:
        raise ProfileError("v_cut_through_axis", mark=mark, depth=shape.depth, most=most)
