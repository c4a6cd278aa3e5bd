"""The outline of a lathe in side elevation, to scale, as the person who stands at it sees it.

Origin at the nose face on the axis; headstock to the left, tailstock to the right, mm, y downwards.
Only the five lengths are measured. The shapes of the castings follow from them by plain proportions, so
that a page may say "to scale in the lengths, plain in the shapes"; a part whose place hangs on a length
that nobody measured stands dashed at a stand-in size.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from club.base.drawing.lettering import Mark
from club.base.drawing.shapes import Box, Kind, Line, Point, Polyline, Rect, Shape, box_round
from club.base.drawing.sheet import Drawing

NM_PER_MM = 1_000_000

# Stand-ins for what isn't measured, in mm: a middling bench lathe (common practice, our choice).
STAND_IN_NOSE_TO_HANDWHEEL = 400.0
STAND_IN_SWING = 300.0
STAND_IN_CENTRES = 600.0
BANJO_SHARE_OF_SWING = 0.75
LEAST_SHARE_OF_GREATEST = 0.25

# The widest lathe of a list fills this many pixels: fits a phone, and a column of a wide page.
LIST_WIDTH_PX = 200.0
LIST_MARGIN_PX = 2.0


class Measure(StrEnum):
    """The lengths an outline is drawn from, by the names of a lathe's fields."""

    NOSE_TO_HANDWHEEL = "nose_to_handwheel"
    SWING_OVER_BED = "swing_over_bed"
    SWING_OVER_BANJO = "swing_over_banjo"
    CENTRES_GREATEST = "centres_greatest"
    CENTRES_LEAST = "centres_least"


@dataclass(frozen=True)
class LatheMeasures:
    """Lengths in nanometres, None where nobody measured."""

    nose_to_handwheel: int | None = None
    swing_over_bed: int | None = None
    swing_over_banjo: int | None = None
    centres_greatest: int | None = None
    centres_least: int | None = None

    @property
    def missing(self) -> tuple[Measure, ...]:
        """What nobody measured, in the order of the form."""
        return tuple(measure for measure in Measure if getattr(self, measure) is None)


@dataclass(frozen=True)
class Frame:
    """Where things stand, in mm: every length measured or stood in for, and where it came from."""

    headstock: float
    swing: float
    banjo_swing: float
    greatest: float
    least: float
    missing: frozenset[Measure]

    @property
    def radius(self) -> float:
        """Axis to bed."""
        return self.swing / 2

    @property
    def point(self) -> float:
        """How far the headstock's centre stands out of the nose; not a measured length."""
        return min(0.2 * self.radius, 0.2 * self.greatest, 0.15 * self.headstock)

    @property
    def tail_width(self) -> float:
        """Point of the tailstock's centre to the outer face of its handwheel."""
        return 0.95 * self.radius

    @property
    def bed_depth(self) -> float:
        return 0.3 * self.radius

    @property
    def bed_end(self) -> float:
        return self.point + self.greatest + self.tail_width

    @property
    def banjo_middle(self) -> float:
        return self.point + 0.64 * self.greatest

    @property
    def banjo_half(self) -> float:
        return min(0.3 * self.radius, 0.11 * self.greatest)

    def kind(self, *needed: Measure) -> Kind:
        """Heavy where every length it hangs on was measured, else dashed."""
        return Kind.DASHED if self.missing.intersection(needed) else Kind.HEAVY


def frame(measures: LatheMeasures) -> Frame:
    """The lengths to draw with, stand-ins put where nothing was measured."""
    banjo = _mm(measures.swing_over_banjo)
    swing = _mm(measures.swing_over_bed) or max(STAND_IN_SWING, (banjo or 0.0) / BANJO_SHARE_OF_SWING)
    least = _mm(measures.centres_least)
    greatest = _mm(measures.centres_greatest) or max(STAND_IN_CENTRES, 2 * (least or 0.0))
    return Frame(
        headstock=_mm(measures.nose_to_handwheel) or STAND_IN_NOSE_TO_HANDWHEEL,
        swing=swing,
        # No banjo reaches under the bed, whatever was typed.
        banjo_swing=min(banjo or BANJO_SHARE_OF_SWING * swing, swing),
        greatest=greatest,
        least=min(least or LEAST_SHARE_OF_GREATEST * greatest, greatest),
        missing=frozenset(measures.missing),
    )


def _mm(length: int | None) -> float | None:
    return None if length is None else length / NM_PER_MM


def outline(measures: LatheMeasures) -> tuple[Shape, ...]:
    """The lathe itself, without lettering.

    >>> {shape.kind.value for shape in outline(LatheMeasures())}
    {'axis', 'dashed'}
    """
    at = frame(measures)
    return (*_castings(at), *_banjo(at), *_tool_rest(at))


def _castings(at: Frame) -> tuple[Shape, ...]:
    return (*_headstock(at), *_bed(at), *tailstock(at), _axis(at))


def _headstock(at: Frame) -> tuple[Shape, ...]:
    radius, length = at.radius, at.headstock
    wheel = 0.09 * length
    left, right = -0.84 * length, -0.1 * length
    slope = 0.1 * (right - left)
    spindle = Kind.DASHED if Measure.NOSE_TO_HANDWHEEL in at.missing else Kind.HEAVY
    casting = (
        (left, radius),
        (left, -0.4 * radius),
        (left + slope, -0.55 * radius),
        (right - slope, -0.55 * radius),
        (right, -0.4 * radius),
        (right, radius),
    )
    return (
        Rect(-length, -0.42 * radius, wheel, 0.84 * radius, spindle),
        Rect(-length + wheel, -0.13 * radius, left + length - wheel, 0.26 * radius, spindle),
        Polyline(casting, at.kind(Measure.NOSE_TO_HANDWHEEL, Measure.SWING_OVER_BED)),
        Rect(right, -0.13 * radius, -right, 0.26 * radius, spindle),
        Polyline(((0.0, -0.1 * radius), (at.point, 0.0), (0.0, 0.1 * radius)), spindle),
    )


def _bed(at: Frame) -> tuple[Shape, ...]:
    left, right, top = -0.84 * at.headstock, at.bed_end, at.radius
    depth, foot = at.bed_depth, 0.5 * at.radius
    kind = at.kind(Measure.SWING_OVER_BED, Measure.CENTRES_GREATEST)
    feet = (
        Rect(left, top + depth, foot, 0.2 * at.radius, kind),
        Rect(right - foot, top + depth, foot, 0.2 * at.radius, kind),
    )
    return (Rect(left, top, right - left, depth, kind), *feet)


def _banjo(at: Frame) -> tuple[Shape, ...]:
    """The banjo's block; nothing where it is as low as the bed."""
    top, half = at.banjo_swing / 2, at.banjo_half
    if top >= at.radius:
        return ()
    kind = at.kind(Measure.SWING_OVER_BED, Measure.SWING_OVER_BANJO)
    return (Rect(at.banjo_middle - half, top, 2 * half, at.radius - top, kind),)


def _tool_rest(at: Frame) -> tuple[Shape, ...]:
    """Post and rest, as far as the banjo lies below them."""
    x, half, top = at.banjo_middle, at.banjo_half, at.banjo_swing / 2
    kind = at.kind(Measure.SWING_OVER_BED, Measure.SWING_OVER_BANJO)
    rest_top, rest_bottom = 0.06 * at.radius, 0.16 * at.radius
    rest = Rect(x - 1.4 * half, rest_top, 2.8 * half, rest_bottom - rest_top, kind)
    if top <= rest_bottom:
        return (rest,)
    return (rest, Rect(x - 0.3 * half, rest_bottom, 0.6 * half, top - rest_bottom, kind))


def _tool_rest_small(at: Frame) -> tuple[Shape, ...]:
    """Post and rest as two plain lines: at a few pixels their outlines would run together."""
    x, half, y = at.banjo_middle, at.banjo_half, 0.1 * at.radius
    kind = at.kind(Measure.SWING_OVER_BED, Measure.SWING_OVER_BANJO)
    foot = max(at.banjo_swing / 2, y)
    return (Line(x - 1.4 * half, y, x + 1.4 * half, y, kind), Line(x, y, x, foot, kind))


def tailstock(at: Frame) -> tuple[Shape, ...]:
    """Centre, quill, casting and handwheel where the tailstock stands farthest off."""
    radius, tip, width = at.radius, at.point + at.greatest, at.tail_width
    kind = at.kind(Measure.SWING_OVER_BED, Measure.CENTRES_GREATEST)
    quill, body, wheel = tip + 0.2 * radius, tip + 0.36 * radius, tip + width - 0.1 * radius
    casting: tuple[Point, ...] = (
        (body, radius),
        (body, -0.22 * radius),
        (body + 0.4 * radius, -0.22 * radius),
        (body + 0.4 * radius, radius),
    )
    return (
        Polyline(((quill, -0.1 * radius), (tip, 0.0), (quill, 0.1 * radius)), kind),
        Rect(quill, -0.1 * radius, body - quill, 0.2 * radius, kind),
        Polyline(casting, kind),
        Rect(body + 0.4 * radius, -0.06 * radius, wheel - body - 0.4 * radius, 0.12 * radius, kind),
        Rect(wheel, -0.3 * radius, 0.1 * radius, 0.6 * radius, kind),
    )


def _axis(at: Frame) -> Line:
    past = 0.06 * at.swing
    return Line(-at.headstock - past, 0.0, at.bed_end + past, 0.0, Kind.AXIS)


def list_scale(measures: Iterable[LatheMeasures], width_px: float = LIST_WIDTH_PX) -> float:
    """Millimetres to a pixel at which the widest of these lathes is `width_px` wide; 1 for an empty list."""
    widths = [_extent(_castings(frame(lathe))).width for lathe in measures]
    return max(widths, default=width_px) / width_px


def small_outline(measures: LatheMeasures, mm_per_px: float) -> Drawing:
    """The outline for a list, without lettering; `mm_per_px` from `list_scale`, one for the whole list."""
    at = frame(measures)
    marks: tuple[Mark, ...] = (*_castings(at), *_banjo(at), *_tool_rest_small(at))
    box = _extent(_castings(at)).grown(LIST_MARGIN_PX * mm_per_px)
    return Drawing(marks, box, box.width / mm_per_px)


def _extent(shapes: Iterable[Shape]) -> Box:
    return box_round(shape.box for shape in shapes)
