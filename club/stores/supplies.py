"""What the stores have and suppliers sell for a recipe, in the terms of `projects.kit`."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from club.base.quantities.length import Length
from club.stores.kinds import MOST_ONE_BY_ONE
from club.stores.models import Article, Held, MetSpecification, Offer, Supplier
from club.stores.sentences.names import held_name, offer_name
from club.stores.specifications import specification_key
from projects.kit import offers as kit_offers
from projects.kit.offers import Pack
from projects.kit.sawing import Saw, Stick
from projects.kit.supplies import (
    BlankLot,
    BlankSupply,
    Board,
    CountSupply,
    HeldStick,
    Sheet,
    SheetPack,
    SheetSupply,
    StickSupply,
    Supply,
)
from projects.library.domain.recipe import Recipe

__all__ = ["Stocked", "specification_key", "stocked"]


@dataclass(frozen=True)
class Stocked:
    """`supplies` and `articles` go by the keys of the recipe's needs; what nothing meets has no supply.

    Supplies speak in keys: `offer-12`, `held-3`, `supplier-2`. `names` has the words for each of them,
    `offers` and `sellers` the rows behind those that can be ordered.
    """

    supplies: Mapping[str, Supply]
    suppliers: tuple[kit_offers.Supplier, ...]
    names: Mapping[str, str]
    articles: Mapping[str, tuple[Article, ...]]
    offers: Mapping[str, Offer]
    sellers: Mapping[str, Supplier]


@dataclass(frozen=True)
class _Meeting:
    """What meets one need: its articles, what of them lies there, who sells them."""

    kind: str
    specification: str
    articles: Sequence[Article]
    held: Sequence[Held]
    offers: Sequence[Offer]

    @property
    def saw(self) -> Saw:
        """The widest kerf and the longest trim of the articles, so that never too many pieces are counted.

        Where no article has any it is a saw that takes nothing; the forms ask for a kerf, so only articles
        that were never cut lack one.
        """
        return Saw(_widest(each.kerf for each in self.articles), _widest(each.trim for each in self.articles))

    @property
    def cut(self) -> Iterator[Held]:
        """Rows that were cut for this very specification."""
        return (
            row for row in self.held if row.cut_for and specification_key(row.cut_for) == self.specification
        )

    @property
    def uncut(self) -> Iterator[Held]:
        return (row for row in self.held if not row.cut_for)


def stocked(recipe: Recipe, *, apart: bool = False) -> Stocked:
    """Everything that meets a need of the recipe, in three queries however much that is.

    A need is met by articles of its kind with its specification; packs and shelves of several add up. What is
    unfit is left out. What lies on the shelf counts for the first need that its article meets: a later one
    of the same recipe is given only offers, so that nothing is counted twice. With `apart` each need is given
    all that lies there, as if it stood alone.
    """
    articles = _articles_by_need(recipe)
    pks = {article.pk for found in articles.values() for article in found}
    held, offers = _held_of(pks), _offers_of(pks)
    meetings = dict(_meetings(recipe, articles, held, offers, apart=apart))
    every = [offer for found in offers.values() for offer in found]
    sellers = {supplier_key(offer.supplier): offer.supplier for offer in every}
    return Stocked(
        supplies={key: _supply(meeting) for key, meeting in meetings.items()},
        suppliers=tuple(
            kit_offers.Supplier(key, row.delivery, row.least_order) for key, row in sorted(sellers.items())
        ),
        names={**_names(held, every), **{key: row.name for key, row in sellers.items()}},
        articles=articles,
        offers={offer_key(offer): offer for offer in every},
        sellers=sellers,
    )


def offer_key(offer: Offer) -> str:
    return f"offer-{offer.pk}"


def held_key(held: Held) -> str:
    return f"held-{held.pk}"


def supplier_key(supplier: Supplier) -> str:
    return f"supplier-{supplier.pk}"


def _articles_by_need(recipe: Recipe) -> dict[str, tuple[Article, ...]]:
    wanted = {need.key: (need.kind, specification_key(need.specification)) for need in recipe.materials}
    met = MetSpecification.objects.filter(
        key__in={key for _kind, key in wanted.values()},
        article__kind__in={kind for kind, _key in wanted.values()},
    )
    found: dict[tuple[str, str], list[Article]] = defaultdict(list)
    for row in met.select_related("article").order_by("article__name", "article_id"):
        found[row.article.kind, row.key].append(row.article)
    return {need: tuple(found[what]) for need, what in wanted.items()}


def _held_of(articles: Iterable[int]) -> dict[int, list[Held]]:
    rows: dict[int, list[Held]] = defaultdict(list)
    for row in Held.objects.filter(article__in=articles, fit=True, amount__gt=0).select_related("article"):
        rows[row.article_id].append(row)
    return rows


def _offers_of(articles: Iterable[int]) -> dict[int, list[Offer]]:
    rows: dict[int, list[Offer]] = defaultdict(list)
    for row in Offer.objects.filter(article__in=articles).select_related("article", "supplier"):
        rows[row.article_id].append(row)
    return rows


def _meetings(
    recipe: Recipe,
    articles: Mapping[str, tuple[Article, ...]],
    held: Mapping[int, list[Held]],
    offers: Mapping[int, list[Offer]],
    *,
    apart: bool,
) -> Iterator[tuple[str, _Meeting]]:
    spoken_for: set[int] = set()
    for need in recipe.materials:
        if not articles[need.key]:
            continue
        pks = [article.pk for article in articles[need.key]]
        key = specification_key(need.specification)
        lying = [row for pk in pks for row in held.get(pk, ()) if row.pk not in spoken_for]
        sold = [row for pk in pks for row in offers.get(pk, ())]
        meeting = _Meeting(need.kind, key, articles[need.key], lying, sold)
        if not apart:
            spoken_for.update(row.pk for row in (*meeting.cut, *meeting.uncut))
        yield need.key, meeting


def _names(held: Mapping[int, list[Held]], offers: Iterable[Offer]) -> dict[str, str]:
    shelf = {held_key(row): held_name(row) for rows in held.values() for row in rows}
    return {**shelf, **{offer_key(offer): offer_name(offer) for offer in offers}}


def _supply(meeting: _Meeting) -> Supply:
    if meeting.kind == Article.Kind.LENGTH_STOCK:
        return _sticks(meeting)
    if meeting.kind == Article.Kind.BLANK:
        return _blanks(meeting)
    return _sheets(meeting) if meeting.kind == Article.Kind.SHEET else _counted(meeting)


def _counted(meeting: _Meeting) -> CountSupply:
    packs = (
        Pack(offer_key(each), supplier_key(each.supplier), each.holds, each.price) for each in meeting.offers
    )
    return CountSupply(sum(row.amount for row in meeting.held), tuple(packs))


def _sticks(meeting: _Meeting) -> StickSupply:
    shelf = (
        HeldStick(held_key(row), row.length.nm, row.across.nm if row.across else None)
        for row in _each(meeting.uncut)
        if row.length
    )
    offers = (
        Stick(offer_key(each), each.length.nm, each.price, supplier_key(each.supplier))
        for each in meeting.offers
        if each.length
    )
    return StickSupply(meeting.saw, tuple(shelf), tuple(offers))


def _sheets(meeting: _Meeting) -> SheetSupply:
    packs = (
        SheetPack(offer_key(each), supplier_key(each.supplier), sheet, each.holds, each.price)
        for each in meeting.offers
        if (sheet := _sheet(each))
    )
    sheets = (sheet for row in _each(meeting.uncut) if (sheet := _sheet(row)))
    return SheetSupply(sum(row.amount for row in meeting.cut), tuple(sheets), tuple(packs))


def _blanks(meeting: _Meeting) -> BlankSupply:
    lots = (BlankLot(held_key(row), row.amount, row.moisture) for row in meeting.cut)
    shelf = (
        Board(held_key(row), *sizes, moisture_percent=row.moisture)
        for row in _each(meeting.uncut)
        if (sizes := _sizes(row))
    )
    offers = (
        Board(offer_key(each), *sizes, price=each.price, supplier=supplier_key(each.supplier))
        for each in meeting.offers
        if (sizes := _sizes(each))
    )
    return BlankSupply(meeting.saw, tuple(lots), tuple(shelf), tuple(offers))


def _each(rows: Iterable[Held]) -> Iterator[Held]:
    """A row for each single thing it stands for."""
    return (row for row in rows for _one in range(min(row.amount, MOST_ONE_BY_ONE)))


def _sheet(row: Held | Offer) -> Sheet | None:
    return Sheet(row.width.nm, row.length.nm) if row.width and row.length else None


def _sizes(row: Held | Offer) -> tuple[int, int, int] | None:
    if row.thickness and row.width and row.length:
        return row.thickness.nm, row.width.nm, row.length.nm
    return None


def _widest(lengths: Iterable[Length | None]) -> int:
    return max((length.nm for length in lengths if length), default=0)
