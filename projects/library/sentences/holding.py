"""How the work is held, in words: what a turner needs to lay out, with the reader's lengths."""

from __future__ import annotations

from collections.abc import Iterator

from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from projects.library.domain.blank import NOT_NAMED, Blank, RoundBlank, SlabBlank, SquareBlank
from projects.library.domain.holding import (
    BetweenCentres,
    Collet,
    Faceplate,
    Holding,
    JamChuck,
    Mandrel,
    ScrewChuck,
    ScrollChuck,
    Tailstock,
    TaperOnly,
)
from projects.library.domain.mountings import Mounting
from projects.library.domain.words import Grip
from projects.library.sentences.lengths import Show
from projects.library.sentences.words import kind_label, word_for
from projects.library.tables import woods


def holding_name(holding: Holding) -> str:
    """The way of holding alone: `collet`, `jam chuck`."""
    return kind_label(type(holding))


def holding_words(holding: Holding, show: Show) -> str:
    """`collet 1/2 in, gripping 1 1/4 in, taper MT2, draw bar 3/8-16`."""
    return ", ".join(part for part in _parts(holding, show) if part)


def _parts(holding: Holding, show: Show) -> Iterator[str]:
    match holding:
        case BetweenCentres(drive, taper, across):
            yield _("between centres")
            yield (
                _("%(drive)s drive %(across)s") % {"drive": word_for(drive), "across": show(across)}
                if across
                else _("%(drive)s drive") % {"drive": word_for(drive)}
            )
            yield _taper(taper)
        case Collet(size, grip, taper, thread):
            yield _("collet %(size)s") % {"size": show(size)}
            yield _("gripping %(length)s") % {"length": show(grip)}
            yield _taper(taper)
            yield _draw_bar(thread)
        case Mandrel(diameter, length, taper, thread):
            values = {"diameter": show(diameter), "length": show(length)}
            yield _("mandrel %(diameter)s, %(length)s long") % values
            yield _taper(taper)
            yield _draw_bar(thread)
        case TaperOnly(taper):
            yield _("taper without draw bar")
            yield _taper(taper)
        case ScrollChuck():
            yield from _scroll_chuck(holding, show)
        case ScrewChuck(diameter, depth, nose):
            values = {"diameter": show(diameter), "depth": show(depth)}
            yield _("screw chuck, hole %(diameter)s, %(depth)s deep") % values
            yield _nose(nose)
        case Faceplate(diameter, screws, length, nose):
            yield _("faceplate %(diameter)s") % {"diameter": show(diameter)}
            yield ngettext("%(count)d screw %(length)s", "%(count)d screws %(length)s", screws) % {
                "count": screws,
                "length": show(length),
            }
            yield _nose(nose)
        case JamChuck(held_in, diameter, nose):
            values = {"diameter": show(diameter), "held": word_for(held_in)}
            yield _("jam chuck turned to %(diameter)s, itself held in a %(held)s") % values
            yield _nose(nose)


def _scroll_chuck(holding: ScrollChuck, show: Show) -> Iterator[str]:
    yield _("scroll chuck with %(jaws)s") % {"jaws": holding.jaws}
    values = {"diameter": show(holding.diameter), "length": show(holding.length)}
    if holding.grip is Grip.TENON:
        yield _("tenon %(diameter)s, %(length)s long") % values
    else:
        yield _("recess %(diameter)s, %(length)s deep") % values
    yield _("dovetail") if holding.dovetail else ""
    yield _nose(holding.nose_thread)


def _taper(taper: str) -> str:
    return _("taper %(taper)s") % {"taper": taper} if taper else ""


def _draw_bar(thread: str) -> str:
    return _("draw bar %(thread)s") % {"thread": thread} if thread else _("draw bar")


def _nose(thread: str) -> str:
    return _("nose thread %(thread)s") % {"thread": thread} if thread else ""


def tailstock_words(mounting: Mounting, titles: dict[str, str]) -> str:
    """Until when the tailstock is up; `titles` names steps by their key, as "step 7"."""
    tailstock: Tailstock | None = mounting.tailstock
    if tailstock is None:
        return _("no tailstock")
    values = {"centre": word_for(tailstock.centre), "until": titles.get(tailstock.away_from or "", "")}
    if values["until"]:
        return _("tailstock up with %(centre)s until %(until)s") % values
    return _("tailstock up with %(centre)s to the end") % values


def species_words(key: str) -> str:
    """The wood by the name of the tables, or that nobody named one."""
    return _("wood not named") if key == NOT_NAMED else woods().name(key)


def blank_words(blank: Blank, show: Show) -> str:
    """`Maple, sugar, 1 1/2 in square, 2 in long`."""
    match blank:
        case SquareBlank():
            size = _("%(side)s square, %(length)s long")
            values = {"side": show(blank.side), "length": show(blank.length)}
        case RoundBlank():
            size = _("%(across)s round, %(length)s long")
            values = {"across": show(blank.diameter), "length": show(blank.length)}
        case SlabBlank():
            size = _("disc %(across)s, %(thick)s thick")
            values = {"across": show(blank.diameter), "thick": show(blank.thickness)}
    return f"{species_words(blank.species)}, {size % values}"
