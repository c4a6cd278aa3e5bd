"""The marks of a drawing in figures, as a story stick carries them."""

from __future__ import annotations

from dataclasses import dataclass

from projects.library.domain.drawn import DrawnBore, DrawnProfile, DrawnShape
from projects.library.sentences.lengths import Show
from projects.library.sentences.words import word_for


@dataclass(frozen=True)
class MarkRow:
    """One mark and the shape to the next; `measure` is a radius, or the depth of a V-cut."""

    number: int
    at: str
    diameter: str
    shape: str
    measure: str


def mark_rows(drawn: DrawnProfile | DrawnBore, show: Show) -> tuple[MarkRow, ...]:
    shapes: list[DrawnShape | None] = [*drawn.shapes, None]
    return tuple(
        MarkRow(
            number,
            show(mark.at),
            show(mark.diameter),
            word_for(shape.kind) if shape else "",
            _measure(shape, show) if shape else "",
        )
        for number, (mark, shape) in enumerate(zip(drawn.marks, shapes, strict=True), 1)
    )


def _measure(shape: DrawnShape, show: Show) -> str:
    given = shape.radius or shape.depth
    return show(given) if given else ""
