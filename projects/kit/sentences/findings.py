"""What people read of what is missing in a kit, or of what is to be looked at.

That nothing was found says nothing of how safe a stick is to turn: the sentences speak of sizes alone.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from club.base.quantities.shown import thousands
from projects.kit.sentences.amounts import amount_words
from projects.kit.sentences.reader import Reader
from projects.library.domain.findings import Finding
from projects.library.tables import finishes

FINDINGS: Mapping[str, Promise] = {
    "no_supplier": _("%(missing)s short: nobody is known to sell it."),
    "longer_than_stock": _(
        "A piece of %(length)s is longer than any stock: the longest there is gives %(longest)s once its "
        "ends are trimmed."
    ),
    "kerf_wider_than_piece": _(
        "A saw cut takes %(kerf)s, more than the %(length)s of a piece: more wood goes to dust than to "
        "pieces. It is counted so."
    ),
    "not_proved_least": _(
        "Enough is bought, but perhaps not in the cheapest way: this costs %(cost)s, and no way costs less "
        "than %(bound)s."
    ),
    "not_measured": _(
        "%(stick)s isn't counted: nobody has measured it across, and a collet of %(size)s is to hold it."
    ),
    "too_thick_for_collet": _(
        "%(stick)s isn't counted: it measures %(across)s across, too thick for a collet of %(size)s."
    ),
    "too_thin_for_collet": _(
        "%(stick)s isn't counted: it measures %(across)s across, too thin for a collet of %(size)s, which "
        "would draw in by %(draws_in)s more."
    ),
    "too_wet": _(
        "%(lot)s isn't counted: its wood has %(moisture)s %% moisture, and for a piece finished the same day "
        "at most %(dry)s %% will do."
    ),
    "moisture_not_measured": _(
        "%(lot)s isn't counted: nobody has measured its moisture, and for a piece finished the same day at "
        "most %(dry)s %% will do."
    ),
    "larger_than_boards": _("%(missing)s short: no board that is sold is large enough for one."),
    "larger_than_sheets": _("%(missing)s short: no sheet is large enough for one."),
    "no_spread": _(
        "How far %(finish)s goes is not known, so the amount is too small. It has to stand in the project's "
        "edition."
    ),
    "under_least_order": _(
        "%(supplier)s takes orders from %(least)s. The goods come to %(goods)s, %(short)s too little."
    ),
}


def finding_sentence(finding: Finding, kind: str, reader: Reader) -> str:
    """One sentence for a line of this kind, or with the kind "" for an order."""
    values = {name: _shown(name, value, kind, reader) for name, value in finding.values.items()}
    if finding.code == "under_least_order":
        values["supplier"] = reader.name(finding.path)
        values["short"] = reader.money(_whole(finding.values["least"]) - _whole(finding.values["goods"]))
    return str(FINDINGS[finding.code]) % values


def _shown(name: str, value: object, kind: str, reader: Reader) -> str:
    if name == "missing":
        return amount_words(kind, _whole(value))
    return SHOWN[name](reader, value)


def _whole(value: object) -> int:
    assert isinstance(value, int)
    return value


def _finish(_reader: Reader, key: object) -> str:
    known = finishes().get(str(key))
    return known.name if known else str(key).replace("_", " ")


def _number(_reader: Reader, value: object) -> str:
    return thousands(value) if isinstance(value, int) else ""


SHOWN: Mapping[str, Callable[[Reader, object], str]] = {
    "length": Reader.length,
    "longest": Reader.length,
    "kerf": Reader.length,
    "size": Reader.length,
    "across": Reader.measured,
    "draws_in": Reader.rough,
    "cost": Reader.money,
    "bound": Reader.money,
    "goods": Reader.money,
    "least": Reader.money,
    "stick": Reader.name,
    "lot": Reader.name,
    "count": _number,
    "moisture": _number,
    "dry": _number,
    "finish": _finish,
}
