"""What follows from a drawing, as words for a page: rounded for people, each saying how it came about."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from club.base.quantities.shown import NO_BREAK_SPACE, decimal, round_half_away, thousands
from projects.library.domain.facts import Facts, facts
from projects.library.domain.recipe import Recipe
from projects.library.domain.slender_mountings import MountingSlenderness
from projects.library.sentences.lengths import Show
from projects.library.sentences.workings import worked_out
from projects.library.tables import woods

UM2_PER_CM2 = 10**8
NL_PER_CM3 = 10**6
NG_PER_G = 10**9


@dataclass(frozen=True)
class PageFact:
    name: str
    value: str
    note: str = ""
    worked_out: str = ""


@dataclass(frozen=True)
class PageFacts:
    """`block` stands in the title block, `all` in a list with the workings."""

    block: tuple[PageFact, ...]
    all: tuple[PageFact, ...]


def page_facts(recipe: Recipe, show: Show) -> PageFacts:
    found = facts(recipe, woods())
    told = dict(_named(found, recipe, show))
    return PageFacts((told["minutes"], told["surface"], told["mass"]), tuple(told.values()))


def _named(found: Facts, recipe: Recipe, show: Show) -> Iterator[tuple[str, PageFact]]:
    def working(name: str) -> str:
        return worked_out(found.workings[name], show) if name in found.workings else ""

    yield "length", PageFact(_("length"), show(found.length))
    yield "largest", PageFact(_("largest diameter"), show(found.largest))
    yield "smallest", PageFact(_("smallest diameter"), show(found.smallest))
    volume = _number(Fraction(found.volume.nl, NL_PER_CM3), "cm³")
    yield "volume", PageFact(_("volume"), volume, worked_out=working("volume"))
    surface = _number(Fraction(found.surface.total.um2, UM2_PER_CM2), "cm²")
    grain = _("%(percent)s %% end grain") % {"percent": round_half_away(found.end_grain_percent)}
    yield "surface", PageFact(_("surface"), surface, grain, working("surface"))
    share = f"{round_half_away(found.end_grain_percent)}{NO_BREAK_SPACE}%"
    yield "end_grain", PageFact(_("end grain"), share, worked_out=working("end_grain"))
    yield "mass", _mass(found, working("mass"))
    if found.shavings_percent is not None:
        away = f"{round_half_away(found.shavings_percent)}{NO_BREAK_SPACE}%"
        yield "shavings", PageFact(_("turned away"), away, worked_out=working("shavings"))
    yield "minutes", _minutes(found, working("minutes"))
    for number, (mounting, each) in enumerate(zip(recipe.mountings, found.slenderness, strict=True), 1):
        yield f"slenderness:{number}", _slender(number, each, working(f"slenderness:{mounting.key}"))


def _number(value: Fraction, unit: str) -> str:
    """Three figures or so: a tenth below a hundred, whole ones above."""
    shown = decimal(value, 1) if value < 100 else thousands(round_half_away(value))
    return f"{shown}{NO_BREAK_SPACE}{unit}"


def _mass(found: Facts, working: str) -> PageFact:
    if found.mass is None:
        return PageFact(_("mass"), _("not known"), _("the table has no figure for this wood"))
    return PageFact(
        _("mass"),
        _number(Fraction(found.mass.ng, NG_PER_G), "g"),
        _("%(wood)s, dry") % {"wood": found.species_label},
        working,
    )


def _minutes(found: Facts, working: str) -> PageFact:
    at_lathe = ngettext("%(count)d min at the lathe", "%(count)d min at the lathe", found.at_lathe_minutes)
    beside = _("then %(count)d beside it") % {"count": found.beside_minutes} if found.beside_minutes else ""
    return PageFact(_("time"), at_lathe % {"count": found.at_lathe_minutes}, beside, working)


def _slender(number: int, each: MountingSlenderness, working: str) -> PageFact:
    name = _("slenderness, mounting %(number)s") % {"number": number}
    if each.ratio is None:
        return PageFact(name, _("not known"), _("what holds the ends is not written down"))
    note = _("above 10: it may whip, so light cuts and the tailstock up") if each.warns else ""
    return PageFact(name, decimal(each.ratio, 1, fixed=True), note, working)
