"""The outline of a piece for a list, without lettering, every piece of the list at one scale."""

from __future__ import annotations

from collections.abc import Iterable

from club.base.drawing.shapes import Box, Fill, Kind, Line, Polyline, mirrored
from club.base.drawing.sheet import Drawing
from projects.geometry.outline import extremes, polyline
from projects.geometry.profile import Profile

LONGEST_PX, THICKEST_PX = 180.0, 88.0
MARGIN_PX = 3.0
AXIS_PX = 6.0


def list_scale(profiles: Iterable[Profile]) -> float:
    """Millimetres to a pixel at which the longest and the thickest still fit; 1 for an empty list."""
    found = [extremes(profile) for profile in profiles]
    longest = max((each.right.z - each.left.z for each in found), default=0.0)
    thickest = max((each.thickest.diameter for each in found), default=0.0)
    return max(longest / LONGEST_PX, thickest / THICKEST_PX) or 1.0


def small_outline(profile: Profile, mm_per_px: float) -> Drawing:
    """The outside and its centre line; `mm_per_px` from `list_scale`, one for the whole list."""
    upper = tuple((z, -r) for z, r in polyline(profile, within=0.2 * mm_per_px))
    outline = Polyline((*upper, *reversed(mirrored(upper))), Kind.HEAVY, Fill.SHEET, closed=True)
    past = AXIS_PX * mm_per_px
    axis = Line(upper[0][0] - past, 0.0, upper[-1][0] + past, 0.0, Kind.AXIS)
    edge = outline.box.grown(MARGIN_PX * mm_per_px)
    box = Box(axis.x1, edge.top, axis.x2, edge.bottom)
    return Drawing((outline, axis), box, box.width / mm_per_px)
