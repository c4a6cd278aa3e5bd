"""What one piece needs, its finish and what is done beforehand, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from club.base.quantities.area import show_area
from club.base.quantities.volume import show_volume
from projects.library.domain.coats import Coat
from projects.library.domain.materials import (
    AdhesiveNeed,
    BlankNeed,
    ConsumedNeed,
    LengthNeed,
    LiquidNeed,
    Need,
    PieceNeed,
    SheetNeed,
    SpareCount,
    Spares,
)
from projects.library.domain.preparation import GlueUp, Task
from projects.library.domain.recipe import Grits, Recipe
from projects.library.sentences.holding import blank_words
from projects.library.sentences.lengths import Show
from projects.library.sentences.words import word_for
from projects.library.tables import finishes


def amount_words(need: Need, show: Show) -> str:
    """How much of it one piece takes, beside its specification."""
    match need:
        case LengthNeed():
            values = {"count": need.count, "length": show(need.length), "across": show(need.across)}
            return _("%(count)s of %(length)s, %(across)s across") % values
        case BlankNeed():
            blank = _("the blank of this project") if need.blank is None else blank_words(need.blank, show)
            return _("%(count)s: %(blank)s") % {"count": need.count, "blank": blank}
        case SheetNeed():
            values = {"count": need.count, "width": show(need.width), "length": show(need.length)}
            return _("%(count)s of %(width)s by %(length)s") % values
        case LiquidNeed(in_cloth=in_cloth):
            if in_cloth is None:
                return _("for the coats below")
            return _("for the coats below, and %(cloth)s stays in the cloth") % {
                "cloth": show_volume(in_cloth)
            }
        case AdhesiveNeed():
            values = {"glue": word_for(need.glue), "area": show_area(need.area), "grams": need.grams_per_m2}
            return _("%(glue)s on %(area)s, %(grams)s g/m²") % values
        case PieceNeed(count=count) | ConsumedNeed(count=count):
            return ngettext("%(count)d piece", "%(count)d pieces", count) % {"count": count}


def coat_words(coat: Coat) -> str:
    """`Walnut oil, with the lathe stopped; then wait 24 hours. Wipe it dry.`"""
    finish = finishes().get(coat.finish)
    values = {"finish": finish.name if finish else coat.finish.replace("_", " ")}
    where = (
        _("%(finish)s, on the lathe with the power off")
        if coat.on_the_lathe
        else _("%(finish)s, off the lathe")
    )
    return " ".join(part for part in (f"{where % values};", _wait(coat), coat.note) if part)


def _wait(coat: Coat) -> str:
    if not coat.wait_hours:
        return _("no wait after it.")
    return ngettext("then wait %(count)d hour.", "then wait %(count)d hours.", coat.wait_hours) % {
        "count": coat.wait_hours
    }


def grit_words(grits: Grits) -> str:
    """`P120, P180, P240`."""
    return ", ".join(f"P{grit}" for grit in grits)


def spares_words(spares: Spares) -> str:
    if isinstance(spares, SpareCount):
        return ngettext("%(count)d spare kit a class", "%(count)d spare kits a class", spares.count) % {
            "count": spares.count
        }
    said = _("%(percent)s %% spare, counted on students and demonstrations, rounded up")
    return said % {"percent": spares.percent}


@dataclass(frozen=True)
class Prepared:
    """Something done before the class; `words` say how long it takes, when, and what it waits for."""

    title: str
    words: str
    watch: str


def beforehand(recipe: Recipe) -> tuple[Prepared, ...]:
    """Tasks and glue-ups in an order in which they can be done."""
    things: list[Task | GlueUp] = [*recipe.preparation, *recipe.glue_ups]
    titles = {each.key: each.title for each in things}
    return tuple(Prepared(each.title, prepared_words(each, titles), each.watch) for each in _in_order(things))


def _in_order(things: list[Task | GlueUp]) -> list[Task | GlueUp]:
    """What waits for another stands after it; a circle, which is refused, keeps its order."""
    placed: list[Task | GlueUp] = []
    while things:
        keys = {each.key for each in things}
        free = [each for each in things if not keys & set(each.after)] or things
        placed += free
        things = [each for each in things if each not in free]
    return placed


def prepared_words(each: Task | GlueUp, titles: Mapping[str, str]) -> str:
    """How long it takes, what has to pass after it, and what it waits for by its title."""
    waits = ", ".join(titles.get(key, key) for key in each.after)
    parts = [*_time_words(each), _("after: %(titles)s") % {"titles": waits} if waits else ""]
    return "; ".join(part for part in parts if part) + "."


def _time_words(each: Task | GlueUp) -> Iterator[str]:
    if isinstance(each, GlueUp) or each.for_each_piece:
        yield _("%(minutes)s min a piece") % {"minutes": each.minutes}
    else:
        yield _("%(minutes)s min for the class") % {"minutes": each.minutes}
    if isinstance(each, GlueUp):
        yield _("clamped for %(minutes)s min") % {"minutes": each.clamp_minutes} if each.clamp_minutes else ""
        yield _("cures %(hours)s h before it may be turned") % {"hours": each.cure_hours}
    elif each.lead_hours:
        yield _waits(each.lead_hours)
    if each.people > 1:
        yield _("%(people)s people") % {"people": each.people}


def _waits(hours: int) -> str:
    """In days where it is whole days and more than one: nobody counts a week in hours."""
    days, rest = divmod(hours, 24)
    if rest or days < 2:
        return _("then waits %(hours)s h") % {"hours": hours}
    return _("then waits %(days)s days") % {"days": days}
