"""What is ordered for a class, a sheet for each supplier; every price and sum in words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from django.conf import settings
from django.utils.translation import gettext as _

from club.base.quantities.length import LengthStyle
from club.classes.kit_rows import reader_of
from club.classes.kit_totals import ClassTotals
from club.stores.models import Offer, Supplier
from club.stores.money import money
from projects.kit.offers import Bought
from projects.kit.sentences.findings import finding_sentence
from projects.kit.totals import Order


@dataclass(frozen=True)
class OrderLine:
    """So many of one pack: the article's name, the supplier's name of the pack, its price and the sum."""

    article: str
    pack: str
    count: int
    price: str
    cost: str


@dataclass(frozen=True)
class OrderSheet:
    """`short` says by how much the goods are under the supplier's least order, "" where they aren't."""

    supplier: Supplier
    lines: tuple[OrderLine, ...]
    goods: str
    delivery: str
    cost: str
    short: str

    @property
    def address(self) -> list[str]:
        return self.supplier.address.splitlines()


def orders_of(found: ClassTotals, lengths: LengthStyle) -> tuple[OrderSheet, ...]:
    """By the suppliers' names."""
    reader = reader_of(found, lengths)
    short = {each.path: finding_sentence(each, "", reader) for each in found.totals.findings}
    sheets = (_sheet(order, found, short.get(order.supplier.key, "")) for order in found.totals.orders)
    return tuple(sorted(sheets, key=lambda sheet: sheet.supplier.name.casefold()))


def tax_words() -> str:
    """Whether the club's prices have their tax in them."""
    return _("Prices with tax.") if settings.PRICES_WITH_TAX else _("Prices without tax.")


def _sheet(order: Order, found: ClassTotals, short: str) -> OrderSheet:
    supplier = found.stocked.sellers[order.supplier.key]
    return OrderSheet(
        supplier=supplier,
        lines=tuple(_lines(order.bought, found)),
        goods=money(order.goods),
        delivery=money(order.supplier.delivery) if order.supplier.delivery else "",
        cost=money(order.cost),
        short=short,
    )


def _lines(bought: Iterable[Bought], found: ClassTotals) -> Iterable[OrderLine]:
    """A pack that serves two lines of the kit is ordered once."""
    counts: dict[str, int] = {}
    for each in bought:
        counts[each.pack.article] = counts.get(each.pack.article, 0) + each.count
    lines = [_line(found.stocked.offers[key], count) for key, count in counts.items()]
    return sorted(lines, key=lambda line: (line.article.casefold(), line.pack))


def _line(offer: Offer, count: int) -> OrderLine:
    return OrderLine(offer.article.name, offer.label, count, money(offer.price), money(count * offer.price))
