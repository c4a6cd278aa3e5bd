"""The kit of a class as its pages show it: what is needed, lies there, is bought, and what it costs."""

from __future__ import annotations

from dataclasses import dataclass

from django.utils import timezone
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from club.base.quantities.length import LengthStyle
from club.classes.kit_rows import KitRow, rows_of
from club.classes.kit_totals import ClassTotals, totals_of
from club.classes.models import ClassSession
from club.classes.models.sign_up import TAKING
from club.classes.orders import OrderSheet, orders_of, tax_words
from club.stores.money import money
from projects.kit.sentences.workings import kits_sum
from projects.library.sentences.materials import spares_words


@dataclass(frozen=True)
class KitPage:
    """All but `count`, the number of kits, in words.

    `missing` are the lines that can't all be had; `before` are the classes that take from the same shelves
    first; `a_head` is "" for a class without students; `mind` are sentences on what somebody has to see to.
    """

    session: ClassSession
    count: int
    kits: str
    spares: str
    rows: tuple[KitRow, ...]
    before: tuple[ClassSession, ...]
    orders: tuple[OrderSheet, ...]
    goods: str
    delivery: str
    cost: str
    a_head: str
    tax: str
    mind: tuple[str, ...]

    @property
    def missing(self) -> tuple[KitRow, ...]:
        return tuple(row for row in self.rows if not row.is_complete)

    @property
    def is_complete(self) -> bool:
        return not self.missing

    @property
    def cut_rows(self) -> tuple[KitRow, ...]:
        """Lines with something to cut."""
        return tuple(row for row in self.rows if row.cuts)


def kit_of(session: ClassSession, lengths: LengthStyle) -> KitPage:
    """The kit page of a class, in four queries besides those of the class itself."""
    return kit_page(totals_of(session), lengths)


def kit_page(found: ClassTotals, lengths: LengthStyle) -> KitPage:
    """The same from totals that are there already."""
    totals, session = found.totals, found.session
    orders = orders_of(found, lengths)
    return KitPage(
        session=session,
        count=totals.kits.all,
        kits=kits_sum(totals.kits),
        spares=spares_words(session.spares),
        rows=rows_of(found, lengths),
        before=_before(found),
        orders=orders,
        goods=money(sum(order.goods for order in totals.orders)),
        delivery=money(sum(order.supplier.delivery for order in totals.orders)),
        cost=money(totals.cost),
        a_head="" if totals.cost_a_head is None else money(totals.cost_a_head),
        tax=tax_words(),
        mind=tuple(words for words in (_too_few(session), *(order.short for order in orders)) if words),
    )


def _too_few(session: ClassSession) -> str:
    """That more people have a place than kits are made for."""
    now = timezone.now()
    rows = (row for row in session.sign_ups.all() if row.state in TAKING)
    people = sum(row.until is None or row.until > now for row in rows)
    if people <= session.students:
        return ""
    said = ngettext(
        "Kits are made for %(students)s student, and %(people)s people are on the list.",
        "Kits are made for %(students)s students, and %(people)s people are on the list.",
        session.students,
    )
    return said % {"students": session.students, "people": people}


def _before(found: ClassTotals) -> tuple[ClassSession, ...]:
    return tuple(dict.fromkeys(promise.session for promise in found.promises))


@dataclass(frozen=True)
class BuyingLine:
    """What is bought of one thing: `Maple dowel 1/2 in`, twice 36 in, `3.60 EUR`."""

    specification: str
    packs: str
    cost: str


@dataclass(frozen=True)
class KitSummary:
    """The kit in short, for a class's page."""

    kits: str
    buying: tuple[BuyingLine, ...]
    cost: str
    a_head: str
    missing: tuple[str, ...]
    mind: tuple[str, ...]


def kit_summary(session: ClassSession, lengths: LengthStyle) -> KitSummary:
    """What is bought for a class, what it costs, and what can't be had."""
    return summary_of(kit_of(session, lengths))


def summary_of(page: KitPage) -> KitSummary:
    buying = (
        BuyingLine(row.specification, _(", ").join(pack.words for pack in row.packs), row.cost)
        for row in page.rows
        if row.packs
    )
    missing = tuple(row.specification for row in page.missing)
    return KitSummary(page.kits, tuple(buying), page.cost, page.a_head, missing, page.mind)
