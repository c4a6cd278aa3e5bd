"""From a lathe's row to its drawings: which lengths, in which words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from django.contrib.auth.base_user import AbstractBaseUser
from django.contrib.auth.models import AnonymousUser
from django.utils.translation import gettext_lazy as _
from django.utils.translation import pgettext

from club.base.quantities.length import LengthStyle, show_length
from club.lathes.domain.drawing.sheet import Drawing
from club.lathes.domain.outline import LatheMeasures, Measure, list_scale, small_outline
from club.lathes.domain.outline_lettering import lettered_outline
from club.lathes.models import Lathe

# A drawing is made twice: for a wide page and for a phone 360 px wide, less the margins of page and sheet.
WIDE_PX, NARROW_PX = 820.0, 312.0

LETTERED_WIDE = {
    Measure.NOSE_TO_HANDWHEEL: _("%(length)s nose to handwheel face"),
    Measure.SWING_OVER_BED: _("%(length)s over bed"),
    Measure.SWING_OVER_BANJO: _("%(length)s over banjo"),
    Measure.CENTRES_GREATEST: _("%(length)s between centres, greatest"),
    Measure.CENTRES_LEAST: _("%(length)s least"),
}
LETTERED_NARROW = dict.fromkeys(Measure, "%(length)s")


@dataclass(frozen=True)
class BigDrawing:
    """A lathe's outline for its own page; `missing` names the measures nobody took."""

    wide: Drawing
    narrow: Drawing
    missing: tuple[str, ...]
    shows_work: bool


@dataclass(frozen=True)
class DrawnLathe:
    """A row of the list of lathes."""

    lathe: Lathe
    drawing: Drawing


def measures_of(lathe: Lathe) -> LatheMeasures:
    """The five lengths an outline is drawn from, in nanometres."""
    lengths = {measure: getattr(lathe, measure) for measure in Measure}
    return LatheMeasures(**{name: None if length is None else length.nm for name, length in lengths.items()})


def big_drawing(lathe: Lathe, reader: AbstractBaseUser | AnonymousUser) -> BigDrawing:
    """The outline with its lengths as this reader likes them."""
    measures = measures_of(lathe)
    shown = _shown_lengths(lathe, reader)
    return BigDrawing(
        wide=lettered_outline(measures, _lettered(LETTERED_WIDE, shown), WIDE_PX),
        narrow=lettered_outline(measures, _lettered(LETTERED_NARROW, shown), NARROW_PX),
        missing=tuple(str(Lathe._meta.get_field(name).verbose_name) for name in measures.missing),
        shows_work=len(measures.missing) < len(Measure),
    )


def _shown_lengths(lathe: Lathe, reader: AbstractBaseUser | AnonymousUser) -> dict[Measure, str]:
    style = LengthStyle(getattr(reader, "lengths", "") or LengthStyle.AS_TYPED)
    lengths = ((measure, getattr(lathe, measure)) for measure in Measure)
    about = pgettext("before a rounded length", "about")
    return {measure: show_length(length, style, about) for measure, length in lengths if length is not None}


def _lettered(patterns: Mapping[Measure, str], shown: Mapping[Measure, str]) -> dict[Measure, str]:
    return {measure: str(patterns[measure]) % {"length": length} for measure, length in shown.items()}


def small_drawings(lathes: Iterable[Lathe]) -> tuple[DrawnLathe, ...]:
    """Each lathe with its small outline, all of them at one scale so that an eye can compare them."""
    measured = [(lathe, measures_of(lathe)) for lathe in lathes]
    scale = list_scale(measures for _lathe, measures in measured)
    return tuple(DrawnLathe(lathe, small_outline(measures, scale)) for lathe, measures in measured)
