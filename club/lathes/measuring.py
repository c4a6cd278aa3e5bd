"""What the page "Where to measure" shows: its figures with their lettering, and the sizes to compare with."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import TypedDict

from django.utils.translation import gettext as _

from club.base.drawing.lettering import Mark
from club.base.drawing.sheet import Drawing, fitted
from club.lathes.domain.figures.belts import BeltWords, belts
from club.lathes.domain.figures.draw_bars import DrawBarWords, draw_bars
from club.lathes.domain.figures.headstock import HeadstockWords, headstock_section
from club.lathes.domain.figures.nose import NoseWords, nose, thread_count
from club.lathes.domain.figures.socket import socket_of
from club.lathes.domain.figures.tapers import Plug, plugs
from club.lathes.domain.outline import LatheMeasures, Measure
from club.lathes.domain.outline_lettering import lettered_outline
from club.lathes.domain.tapers import MORSE_TAPERS, MorseTaper
from club.lathes.domain.threads import SPINDLE_NOSES, Thread, ThreadSystem
from club.lathes.drawing import NARROW_PX, WIDE_PX

NM_PER_MM, NM_PER_INCH = 1_000_000, 25_400_000
# The lathe of the first figure: nobody's in particular, in inches.
SAMPLE = LatheMeasures(
    nose_to_handwheel=63 * NM_PER_INCH // 4,
    swing_over_bed=12 * NM_PER_INCH,
    swing_over_banjo=9 * NM_PER_INCH,
    centres_greatest=36 * NM_PER_INCH,
    centres_least=9 * NM_PER_INCH,
)
DRAWN_TAPERS = ("MT1", "MT2", "MT3")

Build = Callable[[float], Iterable[Mark]]


@dataclass(frozen=True)
class Figure:
    """A drawing for a wide page and a plainer one for a phone, or one for both; `label` says it in words."""

    label: str
    narrow: Drawing
    wide: Drawing | None = None


@dataclass(frozen=True)
class TaperRow:
    """A Morse size as it is told by a calliper."""

    number: int
    gauge_mm: str
    gauge_in: str
    small_mm: str
    small_in: str
    ratio: str


@dataclass(frozen=True)
class NoseRow:
    """A nose thread met on wood lathes: over its crests, and how close its threads stand."""

    designation: str
    major_mm: str
    major_in: str
    pitch: str


class MeasuringPage(TypedDict):
    """The context of the page."""

    figures: dict[str, Figure]
    tapers: tuple[TaperRow, ...]
    noses: tuple[NoseRow, ...]


def measuring_page() -> MeasuringPage:
    """Its figures by name, and the published sizes to compare a reading with."""
    figures = {
        "reach": _reach(),
        "headstock": _headstock(),
        "nose": _nose(),
        "thread_count": _thread_count(),
        "tapers": _tapers(),
        "draw_bars": _draw_bars(),
        "belts": _belts(),
    }
    return {
        "figures": figures,
        "tapers": tuple(_taper_row(taper) for taper in MORSE_TAPERS.values()),
        "noses": tuple(_nose_row(thread) for thread in sorted(SPINDLE_NOSES, key=lambda nose: nose.major_nm)),
    }


def _small(label: str, build: Build) -> Figure:
    return Figure(label, fitted(build, NARROW_PX))


def _reach() -> Figure:
    wide = {
        Measure.NOSE_TO_HANDWHEEL: _("S, nose to handwheel face"),
        Measure.SWING_OVER_BED: _("over bed"),
        Measure.SWING_OVER_BANJO: _("over banjo"),
        Measure.CENTRES_GREATEST: _("between centres, greatest"),
        Measure.CENTRES_LEAST: _("least"),
    }
    # On a phone long words would push the lathe itself into a corner.
    narrow = {**wide, Measure.NOSE_TO_HANDWHEEL: _("S"), Measure.CENTRES_GREATEST: _("greatest")}
    label = _(
        "A lathe from the side, headstock left: nose to handwheel face over the headstock, swing over bed "
        "and over banjo as diameters about the axis, least and greatest distance from centre to centre"
    )
    return Figure(label, lettered_outline(SAMPLE, narrow, NARROW_PX), lettered_outline(SAMPLE, wide, WIDE_PX))


def _headstock() -> Figure:
    words = HeadstockWords(
        nose_to_handwheel=_("S, nose to handwheel face"),
        through_bore=_("through bore"),
        nose_thread=_("nose thread"),
        register=_("register"),
        taper=_("headstock taper"),
        washer_face=_("washer bears here"),
    )
    socket = socket_of(MORSE_TAPERS["MT2"])
    label = _(
        "Section through a headstock: S from the end of the nose to the handwheel's outer face, "
        "through bore, taper in the nose, thread and register on it"
    )
    return Figure(
        label,
        fitted(lambda size: headstock_section(words, socket, size, broken=True), NARROW_PX),
        fitted(lambda size: headstock_section(words, socket, size, broken=False), WIDE_PX),
    )


def _nose() -> Figure:
    words = NoseWords(
        thread=_("over crests"), register_diameter=_("register"), register_length=_("register length")
    )
    label = _(
        "Spindle nose from the side: thread measured over its crests, and behind it the register, "
        "a plain cylinder up to the shoulder"
    )
    return _small(label, lambda size: nose(words, size))


def _thread_count() -> Figure:
    words = _("8 threads in 1 in")
    label = _("A rule laid along a thread: eight gaps between the crests in one inch")
    return _small(label, lambda size: thread_count(words, size))


def _tapers() -> Figure:
    rows = [_plug(MORSE_TAPERS[key]) for key in DRAWN_TAPERS]
    label = _("Morse plugs No. 1, 2 and 3 at one scale, each with the diameters of its large and small end")
    return _small(label, lambda size: plugs(rows, size))


def _plug(taper: MorseTaper) -> Plug:
    name = _("No. %(number)d") % {"number": taper.size}
    large, small = (
        _("%(size)s\N{NO-BREAK SPACE}mm") % {"size": _rounded(nm, NM_PER_MM, "0.1")}
        for nm in (taper.gauge_diameter_nm, taper.small_end_diameter_nm)
    )
    return Plug(socket_of(taper), name, large, small)


def _draw_bars() -> Figure:
    words = DrawBarWords(
        under_the_head=_("length under the head"),
        over_all=_("length over all"),
        thread=_("thread"),
        head=_("fixed head"),
        rod=_("threaded rod, loose nut"),
    )
    label = _("Two draw bars: one with a fixed head, measured under it, one threaded rod, measured over all")
    return Figure(
        label,
        fitted(lambda size: draw_bars(words, size, broken=True), NARROW_PX),
        fitted(lambda size: draw_bars(words, size, broken=False), WIDE_PX),
    )


def _belts() -> Figure:
    words = BeltWords(
        spindle=_("spindle"), motor=_("motor"), slowest=_("belt 1, slowest"), fastest=_("belt 4, fastest")
    )
    label = _(
        "Stepped pulleys of spindle and motor, the belt on position 1: largest step on the spindle, "
        "smallest on the motor, slowest"
    )
    return _small(label, lambda size: belts(words, size))


def _taper_row(taper: MorseTaper) -> TaperRow:
    gauge, small = taper.gauge_diameter_nm, taper.small_end_diameter_nm
    return TaperRow(
        number=taper.size,
        gauge_mm=_rounded(gauge, NM_PER_MM, "0.01"),
        gauge_in=_rounded(gauge, NM_PER_INCH, "0.001"),
        small_mm=_rounded(small, NM_PER_MM, "0.01"),
        small_in=_rounded(small, NM_PER_INCH, "0.001"),
        ratio=str(Decimal(str(float(taper.ratio))).quantize(Decimal("0.01"))),
    )


def _nose_row(thread: Thread) -> NoseRow:
    if thread.system is ThreadSystem.METRIC:
        pitch = _("%(pitch)s mm pitch") % {"pitch": f"{float(thread.pitch_nm) / NM_PER_MM:g}"}
    else:
        pitch = _("%(count)s in 1 in") % {"count": f"{float(thread.threads_per_inch):g}"}
    return NoseRow(
        designation=thread.designation,
        major_mm=_rounded(thread.major_nm, NM_PER_MM, "0.01"),
        major_in=_rounded(thread.major_nm, NM_PER_INCH, "0.001"),
        pitch=pitch,
    )


def _rounded(nm: int, unit_nm: int, step: str) -> str:
    """As tables round: halves go up, so 12.065 mm is 12.07, which no binary fraction would give."""
    return str((Decimal(nm) / unit_nm).quantize(Decimal(step), ROUND_HALF_UP))
