"""Morse plugs side by side at one scale and at their true tapers: told apart by their two diameters."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from club.base.drawing.dimensions import upright_on_a_shelf
from club.base.drawing.lettering import Anchor, Label, Mark, letter
from club.base.drawing.shapes import Kind, Line, Polyline
from club.lathes.domain.figures.socket import Socket


@dataclass(frozen=True)
class Plug:
    """A plug and what is lettered on it: its name, its two diameters."""

    taper: Socket
    name: str
    large: str
    small: str


def plugs(rows: Sequence[Plug], size: float) -> tuple[Mark, ...]:
    """One plug under another, large end left; gauge line at x = 0, small end at its plug depth."""
    marks: list[Mark] = []
    y = 0.0
    for plug in rows:
        y += plug.taper.mouth / 2 + 2.2 * size
        marks += _plug(plug, y, size)
        y += plug.taper.mouth / 2 + 1.1 * size
    return tuple(marks)


def _plug(plug: Plug, y: float, size: float) -> tuple[Mark, ...]:
    large, length = plug.taper.mouth / 2, plug.taper.depth
    small = plug.taper.radius_at(length)
    outline = ((0.0, y - large), (length, y - small), (length, y + small), (0.0, y + large))
    left, right, shelf = -1.2 * size, length + 1.2 * size, y - large - 0.6 * size
    return (
        Polyline(outline, closed=True),
        Line(-0.8 * size, y, length + 2.4 * size, y, Kind.AXIS),
        *(
            Line(-0.35 * size, y + way * large, left - 0.4 * size, y + way * large, Kind.THIN)
            for way in (-1, 1)
        ),
        *(
            Line(length + 0.35 * size, y + way * small, right + 0.4 * size, y + way * small, Kind.THIN)
            for way in (-1, 1)
        ),
        *upright_on_a_shelf(left, y - large, y + large, shelf, Label(plug.large, diameter=True), size),
        *upright_on_a_shelf(right, y - small, y + small, shelf, Label(plug.small, diameter=True), size),
        *letter(Label(plug.name), left - 0.8 * size, y + 0.3 * size, size, Anchor.END),
    )
