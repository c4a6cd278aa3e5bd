"""The big outline of a lathe: the same outline with the lengths that were measured lettered on it.

Lengths between centres stand below, nose to handwheel face above the headstock, the two swings as
diameters of the largest work, drawn as work (long dash and two dots) over the bed and over the banjo.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from club.base.drawing.dimensions import (
    extension,
    fits_between,
    level,
    upright_on_a_shelf,
)
from club.base.drawing.lettering import Label, Mark
from club.base.drawing.shapes import Box, Kind, Line, Polyline, Rect, Shape, box_round
from club.base.drawing.sheet import TEXT_PX, Drawing, fitted
from club.lathes.domain.outline import Frame, LatheMeasures, Measure, frame, outline, tailstock

ROW = 1.9  # from one dimension line to the next, in type sizes
# Where the disc may stand, in shares of the greatest distance between centres, best first.
_DISC_SHARES = (0.25, 0.14, 0.36)
DIAMETERS = frozenset({Measure.SWING_OVER_BED, Measure.SWING_OVER_BANJO})


@dataclass(frozen=True)
class _Plan:
    """What the parts of the lettering share; lengths in mm."""

    at: Frame
    labels: Mapping[Measure, Label]
    size: float
    body: Box

    def row_above(self, number: float) -> float:
        """A dimension line above everything; the first lies nearest."""
        return self.body.top - ROW * number * self.size

    def row_below(self, number: float) -> float:
        """A dimension line below everything, also below arrows that a small swing turned outside."""
        arrows_end = self.at.radius + 2 * self.size
        return (
            max(self.body.bottom, arrows_end if self.labels.keys() & DIAMETERS else 0.0)
            + ROW * number * self.size
        )


def lettered_outline(
    measures: LatheMeasures, words: Mapping[Measure, str], width_px: float, text_px: float = TEXT_PX
) -> Drawing:
    """The outline with its dimensions, made to be seen `width_px` wide with lettering `text_px` high.

    `words` gives what stands at each measured length, written in the reader's units; a length without
    words is drawn and not lettered, one that nobody measured is never lettered.
    """
    at = frame(measures)
    labels = {
        measure: Label(text, diameter=measure in DIAMETERS)
        for measure, text in words.items()
        if measure not in at.missing
    }
    shapes = (*outline(measures), *_least_tailstock(at), *_work(at))
    body = box_round(shape.box for shape in shapes)
    return fitted(lambda size: (*shapes, *_lettering(_Plan(at, labels, size, body))), width_px, text_px)


def _least_tailstock(at: Frame) -> tuple[Shape, ...]:
    """Its centre and quill once more where the tailstock stands nearest; nothing if that wasn't measured."""
    shift = at.least - at.greatest
    if not shift or Measure.CENTRES_LEAST in at.missing:
        return ()
    centre, quill, *_ = tailstock(at)
    return (_moved(centre, shift), _moved(quill, shift))


def _moved(shape: Shape, shift: float) -> Shape:
    if isinstance(shape, Rect):
        return Rect(shape.x + shift, shape.y, shape.width, shape.height, Kind.PHANTOM)
    if isinstance(shape, Polyline):
        return Polyline(tuple((x + shift, y) for x, y in shape.points), Kind.PHANTOM)
    raise TypeError(shape)


def _work(at: Frame) -> tuple[Shape, ...]:
    """The largest disc over the bed and the largest stick over the banjo."""
    pieces: list[Shape] = []
    if Measure.SWING_OVER_BED not in at.missing:
        width = min(0.25 * at.radius, 0.1 * at.greatest)
        pieces.append(Rect(_bed_x(at) - width, -at.radius, width, at.swing, Kind.PHANTOM))
    if Measure.SWING_OVER_BANJO not in at.missing:
        half = 1.8 * at.banjo_half
        pieces.append(
            Rect(at.banjo_middle - half, -at.banjo_swing / 2, 2 * half, at.banjo_swing, Kind.PHANTOM)
        )
    return tuple(pieces)


def _bed_x(at: Frame) -> float:
    """The right face of the disc, clear of the tailstock's nearest place."""
    # The disc is 0.25 of the radius wide at most, and its dimension line stands right of it.
    low, high = at.least - 0.45 * at.radius, at.least + 0.65 * at.radius
    shares = (share for share in _DISC_SHARES if not low < share * at.greatest < high)
    return at.point + next(shares, _DISC_SHARES[0]) * at.greatest


def _lettering(plan: _Plan) -> tuple[Mark, ...]:
    return (*_swings(plan), *_nose_to_handwheel(plan), *_centres(plan))


def _swings(plan: _Plan) -> tuple[Mark, ...]:
    at, size = plan.at, plan.size
    bed_x, banjo_x = _bed_x(at) + size, at.banjo_middle + 1.8 * at.banjo_half + size
    bed, banjo = plan.labels.get(Measure.SWING_OVER_BED), plan.labels.get(Measure.SWING_OVER_BANJO)
    marks: list[Mark] = []
    if bed:
        row = _bed_row(plan)
        marks += _swing(bed_x, at.swing, plan.row_above(row), bed, size)
    if banjo:
        marks += _swing(banjo_x, at.banjo_swing, plan.row_above(1), banjo, size)
    return tuple(marks)


def _bed_row(plan: _Plan) -> int:
    """1 when both swings can stand side by side, else 2."""
    bed, banjo = plan.labels.get(Measure.SWING_OVER_BED), plan.labels.get(Measure.SWING_OVER_BANJO)
    room = plan.at.banjo_middle + 1.8 * plan.at.banjo_half - _bed_x(plan.at)
    return 2 if bed and banjo and bed.width(plan.size) + 1.5 * plan.size > room else 1


def _swing(x: float, swing: float, shelf_y: float, label: Label, size: float) -> tuple[Mark, ...]:
    """The diameter of the work that stands left of x, with its two extension lines."""
    edges = (Line(x - 0.65 * size, y, x + 0.4 * size, y, Kind.THIN) for y in (-swing / 2, swing / 2))
    return (*edges, *upright_on_a_shelf(x, -swing / 2, swing / 2, shelf_y, label, size))


def _nose_to_handwheel(plan: _Plan) -> tuple[Mark, ...]:
    label = plan.labels.get(Measure.NOSE_TO_HANDWHEEL)
    if label is None:
        return ()
    length, size = plan.at.headstock, plan.size
    # Words that don't fit run on to the right, where the swings stand: then above these.
    row = 1 if fits_between(label, length, size) else _bed_row(plan) + 1
    y = plan.row_above(row)
    return (
        extension(-length, -0.42 * plan.at.radius, y, size),
        extension(0.0, -0.13 * plan.at.radius, y, size),
        *level(-length, 0.0, y, label, size),
    )


def _centres(plan: _Plan) -> tuple[Mark, ...]:
    at, size = plan.at, plan.size
    least, greatest = plan.labels.get(Measure.CENTRES_LEAST), plan.labels.get(Measure.CENTRES_GREATEST)
    rows = [row for row in ((least, at.least), (greatest, at.greatest)) if row[0]]
    # The shorter stands nearer, unless its words run on and would meet the longer one's extension line.
    runs_on = bool(least and greatest and not fits_between(least, at.least, size))
    if runs_on:
        rows.reverse()
    words_after = at.point + at.least if runs_on else None
    marks: list[Mark] = []
    for number, (label, length) in enumerate(rows, start=1):
        marks += _from_point(plan, number, label, length, words_after if label is greatest else None)
    if rows:
        marks.append(extension(at.point, 0.0, plan.row_below(len(rows)), size))
    return tuple(marks)


def _from_point(
    plan: _Plan, row: int, label: Label | None, length: float, words_after: float | None
) -> tuple[Mark, ...]:
    """A distance from the headstock's centre point to the tailstock's, whose extension line comes with it."""
    if label is None:
        return ()
    start, y = plan.at.point, plan.row_below(row)
    end = start + length
    return (
        extension(end, 0.0, y, plan.size),
        *level(start, end, y, label, plan.size, words_after=words_after),
    )
