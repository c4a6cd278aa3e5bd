"""How a number came about, in words: the formula, the values, the source."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from django.utils.functional import Promise
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from club.base.quantities.area import Area
from club.base.quantities.length import Length
from club.base.quantities.shown import NO_BREAK_SPACE, decimal, round_half_away, thousands
from club.base.quantities.speed import show_rim_speed, show_rpm
from club.base.quantities.volume import Volume
from projects.library.domain.facts import Working
from projects.library.domain.sourced import Confidence
from projects.library.domain.speeds import StepLimit, Term, TermKind, Work
from projects.library.sentences.lengths import Show
from projects.library.sentences.sourced import CONFIDENCES

UM2_PER_CM2 = 10**8
NL_PER_CM3 = 10**6

FORMULAS: Mapping[str, Promise] = {
    "volume": gettext_lazy(
        "What lies between the drawn line and the axis, turned once round, shape by shape."
    ),
    "volume_bored": gettext_lazy(
        "What lies between the drawn line and the axis, turned once round, shape by shape, less the bore."
    ),
    "surface": gettext_lazy("%(outside)s outside and %(inside)s inside, %(ends)s for the flat ends."),
    "end_grain_along": gettext_lazy(
        "Grain along the axis: what is seen of the piece from its ends, %(end_grain)s, "
        "over %(surface)s of surface."
    ),
    "end_grain_across": gettext_lazy(
        "Grain across the axis: what is seen along the grain, %(end_grain)s, over %(surface)s of surface."
    ),
    "mass": gettext_lazy("%(volume)s at %(density)s kg a cubic metre, the wood at 12 %% moisture."),
    "shavings": gettext_lazy(
        "1 less the piece over the blank: %(piece)s over %(blank)s, cut-off ends included."
    ),
    "minutes": gettext_lazy(
        "The minutes of all mountings and steps: %(all)s, of which %(beside)s beside the lathe."
    ),
    "slenderness": gettext_lazy(
        "%(unsupported)s unsupported over %(bar)s, the diameter of a plain bar that bends as readily; "
        "a warning above %(warn_above)s."
    ),
    "slenderness_overhung": gettext_lazy(
        "%(unsupported)s held at one end, counted double, over %(bar)s, the diameter of a plain bar that "
        "bends as readily; a warning above %(warn_above)s."
    ),
}
WORKS: Mapping[Work, Promise] = {
    Work.ROUGH_SPINDLE: gettext_lazy("roughing spindle work"),
    Work.ROUGH_FACE: gettext_lazy("roughing face work"),
    Work.SHAPE: gettext_lazy("shaping round work"),
    Work.SHAPE_SIGNED_OFF: gettext_lazy("shaping by people who are signed off"),
    Work.SAND: gettext_lazy("sanding and burnishing"),
    Work.DRILL: gettext_lazy("drilling"),
}


def worked_out(working: Working, show: Show) -> str:
    """The formula with its values, then where it is from."""
    values = {name: _shown(value, show) for name, value in working.values.items()}
    formula = str(FORMULAS[_variety(working)]) % values
    return " ".join([formula, *_source(working.source, working.values.get("confidence"))])


def _variety(working: Working) -> str:
    """The same fact may come about in two ways."""
    values = working.values
    match working.code:
        case "volume":
            return "volume_bored" if values["bored"] else "volume"
        case "end_grain":
            return "end_grain_across" if values["grain_across"] else "end_grain_along"
        case "slenderness":
            return "slenderness_overhung" if values["overhung"] else "slenderness"
    return working.code


def _source(source: str, confidence: object) -> list[str]:
    if not source:
        return []
    told = _("Source: %(source)s.") % {"source": source}
    if isinstance(confidence, Confidence):
        words = {"source": source, "confidence": CONFIDENCES[confidence]}
        told = _("Source: %(source)s (%(confidence)s).") % words
    return [told]


def _shown(value: Any, show: Show) -> str:
    match value:
        case Length():
            return show(value)
        case Area():
            return _amount(Fraction(value.um2, UM2_PER_CM2), "cm\u00b2")
        case Volume():
            return _amount(Fraction(value.nl, NL_PER_CM3), "cm\u00b3")
        case Fraction():
            return thousands(round_half_away(value))
    return str(value)


def _amount(value: Fraction, unit: str) -> str:
    return f"{decimal(value, 1, fixed=True)}{NO_BREAK_SPACE}{unit}"


def speed_worked_out(limit: StepLimit, show: Show) -> str:
    """Every limit there is for this step, the least of which holds; "" where it is the lowest setting."""
    if limit.rpm is None or limit.rim_speed is None:
        return ""
    words = {
        "terms": "; ".join(_term(term, show) for term in sorted(limit.terms, key=lambda term: term.rpm)),
        "rpm": show_rpm(limit.rpm),
        "swings": show(limit.swings),
        "rim": show_rim_speed(limit.rim_speed),
        "source": ", ".join(
            dict.fromkeys(f"{term.source} ({CONFIDENCES[term.confidence]})" for term in limit.terms)
        ),
    }
    least = _("The least of these, rounded down to %(rpm)s: %(terms)s.") % words
    rim = _("At that speed the rim of the work, %(swings)s across, runs at %(rim)s.") % words
    first = _("A lower limit on the plate of lathe, chuck or faceplate comes first, and so does its manual.")
    source = _("Source: %(source)s.") % words
    return " ".join([least, rim, first, source])


def _term(term: Term, show: Show) -> str:
    values = {
        "what": WORKS[term.work] if term.work else "",
        "most": thousands(term.inch_rpm) if term.inch_rpm else "",
        "across": show(term.diameter) if term.diameter else "",
        "rpm": show_rpm(int(term.rpm)),
    }
    match term.kind:
        case TermKind.CEILING:
            return _("%(what)s never above %(rpm)s") % values
        case TermKind.CLASS_LIMIT:
            return _("%(what)s, %(most)s inches times rpm over %(across)s: %(rpm)s") % values
    return _("any rim, %(most)s inches times rpm over %(across)s: %(rpm)s") % values
