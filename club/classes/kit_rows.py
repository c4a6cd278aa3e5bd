"""The lines of a kit as a page shows them: every number with how it came about, what is missing in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from django.utils.translation import gettext as _

from club.base.quantities.length import Length, LengthStyle
from club.classes.kit_totals import ClassTotals
from club.classes.models import ClassSession
from club.classes.sentences import day_words
from club.stores.models import Article, Offer, Supplier
from club.stores.money import own_currency
from club.stores.supplies import Stocked
from projects.kit.line import Line
from projects.kit.offers import Bought
from projects.kit.sentences.amounts import amount_words, shelf_words
from projects.kit.sentences.findings import finding_sentence
from projects.kit.sentences.reader import Reader
from projects.kit.sentences.workings import worked_out
from projects.library.domain.materials import BlankNeed, LengthNeed, LiquidNeed, Need, SheetNeed
from projects.library.domain.recipe import Recipe
from projects.library.sentences.lengths import Show, shown_in
from projects.library.sentences.materials import amount_words as each_words

CUTS = frozenset({"cut", "cut_board"})
SAWN = frozenset({Article.Kind.LENGTH_STOCK, Article.Kind.BLANK})


@dataclass(frozen=True)
class Buying:
    """So many packs of one kind, `2` times `36 in`, and who sells them."""

    count: int
    pack: str
    supplier: Supplier

    @property
    def words(self) -> str:
        return f"{self.count} \N{MULTIPLICATION SIGN} {self.pack}"


@dataclass(frozen=True)
class KitRow:
    """One line of the table. Amounts are in words; `cost` is "" where nothing is bought.

    `articles` are what of the stores meets it, none where somebody has yet to choose one.
    """

    key: str
    kind: str
    specification: str
    each: str
    articles: tuple[Article, ...]
    needed: str
    from_shelf: str
    to_buy: str
    packs: tuple[Buying, ...]
    cost: str
    findings: tuple[str, ...]
    workings: tuple[str, ...]
    cuts: tuple[str, ...]
    is_complete: bool


def rows_of(found: ClassTotals, lengths: LengthStyle) -> tuple[KitRow, ...]:
    reader = reader_of(found, lengths)
    return tuple(_row(line, found, reader) for line in found.totals.lines)


def reader_of(found: ClassTotals, lengths: LengthStyle) -> Reader:
    recipe = found.session.edition.recipe
    typed = {length.nm: length for length in _typed(recipe.materials, found.stocked) if length.typed}
    names = {**found.stocked.names, **_sawn(found.stocked)}
    return Reader(lengths, recipe, own_currency(), names, typed)


def _sawn(found: Stocked) -> dict[str, str]:
    """Bought sticks and boards by their article alone: their length is said beside it."""
    return {
        key: _("%(article)s, bought") % {"article": offer.article.name}
        for key, offer in found.offers.items()
        if offer.article.kind in SAWN
    }


def _typed(needs: Iterable[Need], found: Stocked) -> Iterator[Length]:
    """Lengths as they were written in the stores and, before those, in the project."""
    for offer in found.offers.values():
        yield from (length for length in (offer.width, offer.length) if length)
    for articles in found.articles.values():
        for article in articles:
            yield from (length for length in (article.kerf, article.trim) if length)
    for need in needs:
        if isinstance(need, LengthNeed):
            yield from (need.across, need.length)
        if isinstance(need, SheetNeed):
            yield from (need.width, need.length)


def _row(line: Line, found: ClassTotals, reader: Reader) -> KitRow:
    needs = found.needs(line.keys)
    show = shown_in(reader.lengths, reader.recipe)
    said = [(each.code, worked_out(each, line, reader)) for each in line.workings]
    articles = {article: None for key in line.keys for article in found.stocked.articles[key]}
    return KitRow(
        key=line.keys[0],
        kind=line.kind,
        specification=needs[0].specification,
        each="; ".join(_each(need, reader.recipe, show) for need in needs),
        articles=tuple(articles),
        needed=amount_words(line.kind, line.need),
        from_shelf=shelf_words(line),
        to_buy=amount_words(line.kind, line.to_buy) if line.to_buy else _("none"),
        packs=tuple(_buying(each, line, found.stocked, reader) for each in line.purchase.bought),
        cost=reader.money(line.cost) if line.purchase.bought else "",
        findings=tuple(dict.fromkeys(finding_sentence(each, line.kind, reader) for each in line.findings)),
        workings=(*(words for _code, words in said), *_promised(line, found)),
        cuts=tuple(words for code, words in said if code in CUTS),
        is_complete=line.complete,
    )


def _each(need: Need, recipe: Recipe, show: Show) -> str:
    """What one piece takes; "" of a finish, whose amount is told by its sum."""
    if isinstance(need, LiquidNeed):
        return ""
    if isinstance(need, BlankNeed):
        return each_words(replace(need, blank=need.blank or recipe.blank), show)
    return each_words(need, show)


def _buying(bought: Bought, line: Line, found: Stocked, reader: Reader) -> Buying:
    offer = found.offers[bought.pack.article]
    return Buying(bought.count, _pack(offer, line, reader), offer.supplier)


def _pack(offer: Offer, line: Line, reader: Reader) -> str:
    """Sticks by their length, anything else as its supplier calls it."""
    if line.kind == LengthNeed.kind and offer.length:
        return reader.length(offer.length.nm)
    return offer.label


def _promised(line: Line, found: ClassTotals) -> Iterator[str]:
    for promise in found.promises:
        if promise.key in line.keys:
            words = {
                "session": session_words(promise.session),
                "amount": amount_words(line.kind, promise.amount),
            }
            yield _("%(session)s takes %(amount)s off the shelf first.") % words


def session_words(session: ClassSession) -> str:
    """A class among others: `Drawer knob, Thursday 3 December`."""
    values = {"title": session.edition.title, "day": day_words(session.day)}
    return _("%(title)s, %(day)s") % values
