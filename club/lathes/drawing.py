"""A lathe's rows turned into the outlines that its list and its page draw, lettered in the reader's units."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from django.utils.translation import gettext

from club.base.quantities.length import Length, LengthStyle, show_length
from club.lathes.domain.drawing.sheet import Drawing
from club.lathes.domain.outline import LatheMeasures, Measure, list_scale, small_outline
from club.lathes.domain.outline_lettering import lettered_outline
from club.lathes.models import Lathe

WIDE_PX = 1180.0
PHONE_PX = 320.0


@dataclass(frozen=True)
class DrawnLathe:
    lathe: Lathe
    drawing: Drawing
    words: str


@dataclass(frozen=True)
class BigDrawing:
    """The same lathe for a wide page and for a phone, and what a reader hears in its place."""

    wide: Drawing
    phone: Drawing
    words: str
    is_whole: bool


def measures_of(lathe: Lathe) -> LatheMeasures:
    return LatheMeasures(**{measure.value: _nm(getattr(lathe, measure.value)) for measure in Measure})


def _nm(length: Length | None) -> int | None:
    return None if length is None else length.nm


def small_drawings(lathes: Iterable[Lathe], style: LengthStyle) -> list[DrawnLathe]:
    """The lathes of a list, all at one scale, so that one compares by eye."""
    pairs = [(lathe, measures_of(lathe)) for lathe in lathes]
    scale = list_scale(measures for _, measures in pairs)
    return [DrawnLathe(lathe, small_outline(found, scale), _spoken(lathe, style)) for lathe, found in pairs]


def big_drawing(lathe: Lathe, style: LengthStyle) -> BigDrawing:
    measures = measures_of(lathe)
    words = {
        measure: show_length(length, style)
        for measure in Measure
        if (length := getattr(lathe, measure.value)) is not None
    }
    return BigDrawing(
        lettered_outline(measures, words, WIDE_PX),
        lettered_outline(measures, words, PHONE_PX),
        _spoken(lathe, style),
        not measures.missing,
    )


def _spoken(lathe: Lathe, style: LengthStyle) -> str:
    """The drawing in words: "Lathe 3, swing 12 in, 36 in between centres"."""
    said = [str(lathe)]
    if lathe.swing_over_bed is not None:
        said.append(gettext("swing %(length)s") % {"length": show_length(lathe.swing_over_bed, style)})
    if lathe.centres_greatest is not None:
        said.append(gettext("%(length)s between centres") % {"length": show_length(lathe.centres_greatest, style)})
    if len(said) == 1:
        said.append(gettext("not measured"))
    return ", ".join(said)
