"""The piece itself as lines: its outline or its section, centre line, blank, and what is left at its ends."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from club.base.drawing.hatch import hatched
from club.base.drawing.lettering import Mark
from club.base.drawing.shapes import Fill, Kind, Line, Point, Polyline, Rect, mirrored
from projects.geometry.outline import extremes, polyline, section
from projects.geometry.pieces import NM_PER_MM
from projects.geometry.profile import Bore, Profile
from projects.geometry.profile import Mark as ProfileMark
from projects.library.domain.recipe import End, Recipe

# How far a curve may be drawn off itself, in mm: far below the 0.1 mm that a drawing is held to.
FINE = 0.01
SYMMETRY, SYMMETRY_APART = 1.75, 1.0  # mm
PAST_THE_END = 3.0  # of the centre line, mm; ISO 128-2 lets it run a little past


def body(profile: Profile, pitch: float, *, half: bool = False) -> Iterator[Mark]:
    """The outline as wood, or for a bored piece its section, hatched `pitch` mm apart.

    `half` leaves out what lies below the axis.
    """
    if profile.bore is None:
        yield from _outline(profile, half)
    else:
        yield from _section(profile, profile.bore, pitch, half)


def _outline(profile: Profile, half: bool) -> Iterator[Mark]:
    upper = _upper_line(profile)
    lower = ((upper[-1][0], 0.0), (upper[0][0], 0.0)) if half else tuple(reversed(mirrored(upper)))
    yield Polyline((*upper, *lower), Kind.HEAVY, Fill.WOOD, closed=True)
    yield from (_across(mark, half, Kind.THIN) for mark in profile.marks[1:-1])


def _section(profile: Profile, bore: Bore, pitch: float, half: bool) -> Iterator[Mark]:
    """Cut faces are hatched at 45 degrees, alike above and below, since it is one piece (ISO 128-3)."""
    upper = _upper_section(profile)
    for face in (upper,) if half else (upper, mirrored(upper)):
        yield Polyline(face, Kind.BLANK, Fill.WOOD, closed=True)
        yield from hatched(face, pitch)
    yield from _both_lines(profile, half)
    yield from _both_lines(bore, half)
    for mark in (profile.marks[0], profile.marks[-1], bore.marks[0], bore.marks[-1]):
        yield _across(mark, half, Kind.HEAVY)
    # Rims that are seen behind the cut.
    yield from (_across(mark, half, Kind.THIN) for mark in bore.marks[1:-1])


# A drawing is laid out several times until its lettering fits; the wood stays as it is.
@lru_cache(maxsize=32)
def _upper_line(run: Profile | Bore) -> tuple[Point, ...]:
    return tuple((z, -r) for z, r in polyline(run, FINE))


@lru_cache(maxsize=32)
def _upper_section(profile: Profile) -> tuple[Point, ...]:
    return tuple((z, -r) for z, r in section(profile, FINE))


def _both_lines(run: Profile | Bore, half: bool) -> Iterator[Mark]:
    """The line of the surface above the axis and, in a whole drawing, below it."""
    upper = _upper_line(run)
    yield Polyline(upper)
    if not half:
        yield Polyline(mirrored(upper))


def _across(mark: ProfileMark, half: bool, kind: Kind) -> Line:
    x, r = mark.at / NM_PER_MM, mark.diameter / (2 * NM_PER_MM)
    return Line(x, -r, x, 0.0 if half else r, kind)


def axis(profile: Profile, *, half: bool = False) -> Iterator[Mark]:
    """The centre line; `half` has two short lines across each of its ends (ISO 128-3)."""
    found = extremes(profile)
    left, right = found.left.z - PAST_THE_END, found.right.z + PAST_THE_END
    yield Line(left, 0.0, right, 0.0, Kind.AXIS)
    for end, way in ((left, 1), (right, -1)) if half else ():
        for x in (end, end + way * SYMMETRY_APART):
            yield Line(x, -SYMMETRY, x, SYMMETRY, Kind.THIN)


def ends(recipe: Recipe, profile: Profile, *, half: bool = False) -> Iterator[Mark]:
    """Nub or tenon at either end, in the line of what is no part of the finished piece."""
    left, right = profile.marks[0].at / NM_PER_MM, profile.marks[-1].at / NM_PER_MM
    if recipe.left_end is not None:
        length, r = _size(recipe.left_end)
        yield Rect(left - length, -r, length, r if half else 2 * r, Kind.PHANTOM)
    if recipe.right_end is not None:
        length, r = _size(recipe.right_end)
        yield Rect(right, -r, length, r if half else 2 * r, Kind.PHANTOM)


def _size(end: End) -> tuple[float, float]:
    return (end.length.nm / NM_PER_MM, end.diameter.nm / (2 * NM_PER_MM))


def blank(recipe: Recipe, profile: Profile) -> Rect | None:
    """The blank round piece and ends, what it is longer shared by both; none where parts are glued on."""
    size = recipe.blank.size
    found = extremes(profile)
    before = _size(recipe.left_end)[0] if recipe.left_end else 0.0
    after = _size(recipe.right_end)[0] if recipe.right_end else 0.0
    needed = before + (found.right.z - found.left.z) + after
    length, across = size.length / NM_PER_MM, size.across / NM_PER_MM
    if length < needed or across < found.thickest.diameter:
        return None
    left = found.left.z - before - (length - needed) / 2
    return Rect(left, -across / 2, length, across, Kind.PHANTOM)
