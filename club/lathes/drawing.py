"""From a lathe's row to its drawings: which lengths, in which words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from django.db.models import Field
from django.utils.translation import gettext, pgettext
from django.utils.translation import gettext_lazy as _
from django_stubs_ext import StrOrPromise

from club.base.drawing.sheet import Drawing
from club.base.quantities.length import Length, LengthStyle, show_length
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
SPOKEN_IN_A_LIST = {
    Measure.SWING_OVER_BED: _("swing %(length)s"),
    Measure.CENTRES_GREATEST: _("%(length)s between centres"),
}
SPOKEN = {
    Measure.NOSE_TO_HANDWHEEL: _("%(length)s from nose to handwheel face"),
    Measure.SWING_OVER_BED: _("swing over bed %(length)s"),
    Measure.SWING_OVER_BANJO: _("swing over banjo %(length)s"),
    Measure.CENTRES_GREATEST: _("between centres at most %(length)s"),
    Measure.CENTRES_LEAST: _("at least %(length)s"),
}


@dataclass(frozen=True)
class BigDrawing:
    """A lathe's outline for its own page, wide and narrow; `missing` names the measures nobody took."""

    wide: Drawing
    narrow: Drawing
    words: str
    missing: tuple[str, ...]
    shows_reach: bool


@dataclass(frozen=True)
class DrawnLathe:
    """A row of the list of lathes; `words` says the drawing to who can't see it."""

    lathe: Lathe
    drawing: Drawing
    words: str


def measures_of(lathe: Lathe) -> LatheMeasures:
    """The five lengths an outline is drawn from, in nanometres."""
    return LatheMeasures(**{measure.value: _nm(getattr(lathe, measure)) for measure in Measure})


def _nm(length: Length | None) -> int | None:
    return None if length is None else length.nm


def big_drawing(lathe: Lathe, style: LengthStyle) -> BigDrawing:
    """The outline with its lengths as this reader likes them."""
    measures = measures_of(lathe)
    lengths = ((measure, getattr(lathe, measure)) for measure in Measure)
    shown = {measure: _shown(length, style) for measure, length in lengths if length is not None}
    return BigDrawing(
        wide=lettered_outline(measures, _lettered(LETTERED_WIDE, shown), WIDE_PX),
        narrow=lettered_outline(measures, _lettered(LETTERED_NARROW, shown), NARROW_PX),
        words=", ".join([str(lathe), *_lettered(SPOKEN, shown).values()]),
        missing=tuple(_name(measure) for measure in measures.missing),
        shows_reach=bool(shown.keys() - {Measure.NOSE_TO_HANDWHEEL, Measure.CENTRES_GREATEST}),
    )


def _name(measure: Measure) -> str:
    """The measure as the form calls it."""
    field = Lathe._meta.get_field(measure)
    assert isinstance(field, Field)
    return str(field.verbose_name)


def _shown(length: Length, style: LengthStyle) -> str:
    return show_length(length, style, pgettext("before a rounded length", "about"))


def _lettered(patterns: Mapping[Measure, StrOrPromise], shown: Mapping[Measure, str]) -> dict[Measure, str]:
    return {measure: str(patterns[measure]) % {"length": length} for measure, length in shown.items()}


def small_drawings(lathes: Iterable[Lathe], style: LengthStyle) -> list[DrawnLathe]:
    """Each lathe with its small outline, all of them at one scale so that an eye can compare them."""
    measured = [(lathe, measures_of(lathe)) for lathe in lathes]
    scale = list_scale(measures for _lathe, measures in measured)
    return [
        DrawnLathe(lathe, small_outline(found, scale), _spoken(lathe, style)) for lathe, found in measured
    ]


def _spoken(lathe: Lathe, style: LengthStyle) -> str:
    """`Lathe 3, swing 12 in, 36 in between centres`."""
    reach = {Measure.SWING_OVER_BED: lathe.swing_over_bed, Measure.CENTRES_GREATEST: lathe.centres_greatest}
    shown = {measure: _shown(length, style) for measure, length in reach.items() if length is not None}
    said = list(_lettered(SPOKEN_IN_A_LIST, shown).values()) or [gettext("not measured")]
    return ", ".join([str(lathe), *said])
