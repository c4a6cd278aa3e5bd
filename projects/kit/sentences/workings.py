"""How a number of a kit list came about: a small sum in one sentence, then where its values are from."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from typing import Any

from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from club.base.quantities.area import Area, show_area
from club.base.quantities.shown import decimal, thousands
from club.base.quantities.volume import Volume, show_volume
from projects.kit.counting import Kits
from projects.kit.line import Line
from projects.kit.sentences.amounts import amount_words
from projects.kit.sentences.reader import Reader
from projects.library.domain.facts import Working

Values = Mapping[str, Any]
Say = Callable[[Values, Line, Reader], str]
UM2_PER_CM2 = 10**8


def worked_out(working: Working, line: Line, reader: Reader) -> str:
    """The sum with its values, then its source where it has one."""
    said = SENTENCES[working.code](working.values, line, reader)
    if not working.source:
        return said
    return " ".join([said, _("Source: %(source)s.") % {"source": working.source}])


def kits_sum(kits: Kits) -> str:
    """`12 students + 1 demonstration + 2 spare = 15 kits`."""
    return _sum_of(kits.heads.students, kits.heads.demonstrations, kits.spares)


def _sum_of(students: int, demonstrations: int, spares: int) -> str:
    kits = students + demonstrations + spares
    parts = (
        ngettext("%(count)d student", "%(count)d students", students) % {"count": students},
        ngettext("%(count)d demonstration", "%(count)d demonstrations", demonstrations)
        % {"count": demonstrations},
        _("%(count)d spare") % {"count": spares},
    )
    total = ngettext("%(count)d kit", "%(count)d kits", kits) % {"count": kits}
    return _("%(parts)s = %(total)s") % {"parts": " + ".join(parts), "total": total}


def _per_kit(values: Values, _line: Line, _reader: Reader) -> str:
    kits = _sum_of(values["students"], values["demonstrations"], values["spares"])
    words = {"kits": kits, "count": values["count"], "need": thousands(values["need"])}
    return _("%(kits)s, %(count)s each = %(need)s.") % words


def _per_head(values: Values, _line: Line, _reader: Reader) -> str:
    words = {"heads": values["heads"], "count": values["count"], "need": thousands(values["need"])}
    said = ngettext(
        "%(heads)s head, students and demonstrations, %(count)s each = %(need)s.",
        "%(heads)s heads, students and demonstrations, %(count)s each = %(need)s.",
        values["heads"],
    )
    return " ".join([said % words, _("A spare kit has no head.")])


def _per_sheet(values: Values, _line: Line, reader: Reader) -> str:
    words = {"width": reader.length(values["width"]), "length": reader.length(values["length"])}
    pieces = ngettext("%(count)d piece", "%(count)d pieces", values["pieces"]) % {"count": values["pieces"]}
    return _("A sheet of %(width)s by %(length)s gives %(pieces)s.") % {**words, "pieces": pieces}


def _torn_already(values: Values, _line: Line, _reader: Reader) -> str:
    return ngettext(
        "%(count)d piece lies there torn already.",
        "%(count)d pieces lie there torn already.",
        values["pieces"],
    ) % {"count": values["pieces"]}


def _torn_now(values: Values, _line: Line, _reader: Reader) -> str:
    words = {"count": values["sheets"], "over": values["over"]}
    return (
        ngettext(
            "%(count)d sheet of the shelf is torn up; pieces left over: %(over)s.",
            "%(count)d sheets of the shelf are torn up; pieces left over: %(over)s.",
            values["sheets"],
        )
        % words
    )


def _per_board(values: Values, _line: Line, reader: Reader) -> str:
    words = {
        "board": reader.name(values["board"]),
        "blanks": ngettext("%(count)d blank", "%(count)d blanks", values["blanks"])
        % {"count": values["blanks"]},
        "across": reader.length(values["across"]),
        "length": reader.length(values["length"]),
        "kerf": reader.length(values["kerf"]),
        "trim": reader.length(values["trim"]),
    }
    return (
        _(
            "%(board)s gives %(blanks)s %(across)s across and %(length)s along the axis, with saw cuts of "
            "%(kerf)s and %(trim)s trimmed off the ends."
        )
        % words
    )


def _from_lot(values: Values, _line: Line, reader: Reader) -> str:
    words = {"lot": reader.name(values["lot"]), "count": values["count"]}
    return (
        ngettext(
            "%(count)d blank comes from %(lot)s.", "%(count)d blanks come from %(lot)s.", values["count"]
        )
        % words
    )


def _cut_board(values: Values, _line: Line, reader: Reader) -> str:
    blanks = ngettext("%(count)d blank", "%(count)d blanks", values["blanks"]) % {"count": values["blanks"]}
    words = {
        "board": _times(values["boards"], reader.name(values["board"])),
        "length": reader.length(values["length"]),
        "blanks": blanks,
        "rest": _rest(values["rest"], reader),
    }
    return _("%(board)s, %(length)s long: %(blanks)s, %(rest)s.") % words


def _cut(values: Values, _line: Line, reader: Reader) -> str:
    pieces = [
        _("%(count)s of %(length)s") % {"count": count, "length": reader.length(length)}
        for length, count in values["pieces"]
    ]
    words = {
        "stick": _times(values["sticks"], reader.name(values["stick"])),
        "length": reader.length(values["length"]),
        "pieces": _(" and ").join(pieces),
        "kerf": reader.length(values["kerf"]),
        "trim": reader.length(values["trim"]),
        "rest": _rest(values["rest"], reader),
    }
    return (
        _(
            "%(stick)s, %(length)s long: %(pieces)s, a saw cut of %(kerf)s behind each and %(trim)s trimmed "
            "off the ends, %(rest)s."
        )
        % words
    )


def _times(count: int, name: str) -> str:
    """One thing by its name, or so many of it."""
    return name if count == 1 else _("each of %(count)s of %(name)s") % {"count": count, "name": name}


def _rest(nm: int, reader: Reader) -> str:
    return _("rest %(rest)s") % {"rest": reader.length(nm)} if nm else _("no rest")


def _liquid(values: Values, line: Line, _reader: Reader) -> str:
    return " ".join(_poured(values, line))


def _poured(values: Values, line: Line) -> Iterator[str]:
    areas = {"surface": _area(values["surface_um2"]), "end_grain": _area(values["end_grain_um2"])}
    more = {**areas, "more": values["end_grain_more"]}
    yield _("%(surface)s of surface, of which %(end_grain)s of end grain takes %(more)s %% more;") % more
    coats = ngettext("%(count)d coat", "%(count)d coats", values["coats"]) % {"count": values["coats"]}
    spreads = _(" and ").join(map(str, dict.fromkeys(values["spreads"]))) or _("not known")
    yield _("%(coats)s, 1 ml for every %(spreads)s cm²;") % {"coats": coats, "spreads": spreads}
    if values["in_cloth_nl"]:
        cloth = {"cloth": show_volume(Volume(values["in_cloth_nl"]))}
        yield _("%(cloth)s stays in the cloth at each coat;") % cloth
    if values["lost"]:
        yield _("%(lost)s %% is lost besides;") % {"lost": values["lost"]}
    need = {"heads": values["heads"], "need": amount_words(line.kind, line.need)}
    yield (
        ngettext(
            "for %(heads)s head %(need)s, rounded up.",
            "for %(heads)s heads %(need)s, rounded up.",
            values["heads"],
        )
        % need
    )


def _adhesive(values: Values, line: Line, _reader: Reader) -> str:
    words = {
        "area": show_area(Area(values["area_um2"])),
        "grams": values["grams_per_m2"],
        "kits": ngettext("%(count)d kit", "%(count)d kits", values["kits"]) % {"count": values["kits"]},
        "loss": values["loss_percent"],
        "need": amount_words(line.kind, line.need),
    }
    if values["loss_percent"]:
        return (
            _("%(area)s at %(grams)s g a m², %(loss)s %% lost besides, for %(kits)s %(need)s, rounded up.")
            % words
        )
    return _("%(area)s at %(grams)s g a m², for %(kits)s %(need)s, rounded up.") % words


def _area(um2: int) -> str:
    """In cm² to a tenth."""
    return f"{decimal(Fraction(um2, UM2_PER_CM2), 1)}\u00a0cm²"


SENTENCES: Mapping[str, Say] = {
    "per_kit": _per_kit,
    "per_head": _per_head,
    "per_sheet": _per_sheet,
    "torn_already": _torn_already,
    "torn_now": _torn_now,
    "per_board": _per_board,
    "from_lot": _from_lot,
    "cut_board": _cut_board,
    "cut": _cut,
    "liquid": _liquid,
    "adhesive": _adhesive,
}
