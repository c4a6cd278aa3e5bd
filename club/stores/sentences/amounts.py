"""How much there is of an article, or in a pack, in words; each kind has its own unit."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from club.base.quantities.length import Length
from club.base.quantities.mass import Mass, show_mass
from club.base.quantities.shown import thousands, unbroken
from club.base.quantities.volume import Volume, show_volume
from club.stores.models import Article, Held, Offer
from club.stores.models.sized import Sized
from club.stores.specifications import specification_key

Show = Callable[[Length], str]


def held_amount(held: Held, show: Show) -> str:
    """`3 sticks of 36 in`, `12 pieces cut for Sandpaper P120`, `500 ml`."""
    return _amount(held.article.kind, held.amount, held.amount_typed, held, show, held.cut_for)


def pack_amount(offer: Offer, show: Show) -> str:
    """What one pack holds: `1 stick of 36 in`, `10 sheets of 9 in by 11 in`, `1 kg`."""
    return _amount(offer.article.kind, offer.holds, offer.holds_typed, offer, show)


def lying_there(rows: Iterable[Held], show: Show) -> str:
    """All that is fit for use of one article, equal sizes together; nothing in words as well."""
    fit = [row for row in rows if row.fit and row.amount]
    return "; ".join(_together(fit, show)) or _("nothing")


def _together(rows: Iterable[Held], show: Show) -> Iterator[str]:
    alike: dict[tuple[object, ...], list[Held]] = {}
    for row in rows:
        what = (specification_key(row.cut_for), row.thickness, row.width, row.length)
        alike.setdefault(what, []).append(row)
    for same in alike.values():
        first = same[0]
        if len(same) == 1:
            yield held_amount(first, show)
        else:
            yield _amount(first.article.kind, sum(row.amount for row in same), "", first, show, first.cut_for)


def _amount(kind: str, amount: int, typed: str, sized: Sized, show: Show, cut_for: str = "") -> str:
    if kind == Article.Kind.LIQUID:
        return show_volume(Volume(amount, typed))
    if kind == Article.Kind.ADHESIVE:
        return show_mass(Mass(amount, typed))
    values = {"count": thousands(amount), "for": unbroken(cut_for), "size": size_words(sized, show)}
    if cut_for:
        return _cut(kind, amount) % values
    return (_sized(kind, amount) if values["size"] else _bare(kind, amount)) % values


def _cut(kind: str, amount: int) -> str:
    if kind == Article.Kind.BLANK:
        return ngettext("%(count)s blank cut for %(for)s", "%(count)s blanks cut for %(for)s", amount)
    return ngettext("%(count)s piece cut for %(for)s", "%(count)s pieces cut for %(for)s", amount)


def _sized(kind: str, amount: int) -> str:
    if kind == Article.Kind.LENGTH_STOCK:
        return ngettext("%(count)s stick of %(size)s", "%(count)s sticks of %(size)s", amount)
    if kind == Article.Kind.BLANK:
        return ngettext("%(count)s board of %(size)s", "%(count)s boards of %(size)s", amount)
    return ngettext("%(count)s sheet of %(size)s", "%(count)s sheets of %(size)s", amount)


def _bare(kind: str, amount: int) -> str:
    """Without sizes, which only pieces and what is used up go without for good."""
    if kind == Article.Kind.LENGTH_STOCK:
        return ngettext("%(count)s stick", "%(count)s sticks", amount)
    if kind == Article.Kind.BLANK:
        return ngettext("%(count)s board", "%(count)s boards", amount)
    if kind == Article.Kind.SHEET:
        return ngettext("%(count)s sheet", "%(count)s sheets", amount)
    return ngettext("%(count)s piece", "%(count)s pieces", amount)


def size_words(sized: Sized, show: Show) -> str:
    """`2 in by 9 in by 48 in`, the sizes that are known; nothing where none is."""
    sizes = (sized.thickness, sized.width, sized.length)
    return _(" by ").join(show(size) for size in sizes if size is not None)
