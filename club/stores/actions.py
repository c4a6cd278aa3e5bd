"""Writes to the stores: each one short transaction, each with its change row.

What belongs to an article (its offers, what lies there, what it meets) is told in the article's log.
`by` is None for work at the server itself.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

from django.db import transaction

from club.base.changes import Snapshot, record_change, snapshot
from club.base.writing import StaleError, unless_taken
from club.people.models import Account
from club.stores.models import Article, Held, MetSpecification, Offer, Supplier
from club.stores.sentences.changes import held_lines, met_lines, offer_lines, supplier_lines
from club.stores.specifications import specification_key

Row = TypeVar("Row")

NOTHING: Snapshot = {}
HELD_FIELDS = (*Held.change_fields, "amount_typed", "revision")
OFFER_FIELDS = (*Offer.change_fields, "holds_typed")


@transaction.atomic
def add_supplier(by: Account | None, supplier: Supplier) -> Supplier:
    """Raises TakenError when there is one of this name."""
    with unless_taken():
        supplier.save(force_insert=True)
    record_change(by, supplier, None, supplier_lines(supplier))
    return supplier


@transaction.atomic
def mend_supplier(by: Account | None, supplier: Supplier, revision: int | None) -> Supplier:
    """Keep the supplier as its form now has it; raises StaleError when `revision` is not the newest."""
    current = _locked_supplier(supplier.pk, revision)
    supplier.revision = current.revision + 1
    with unless_taken():
        supplier.save(update_fields=(*Supplier.change_fields, "revision"))
    record_change(by, supplier, supplier_lines(current), supplier_lines(supplier))
    return supplier


@transaction.atomic
def remove_supplier(by: Account | None, supplier: Supplier, revision: int | None) -> Supplier:
    """Raises StaleError also while something is offered by this supplier."""
    current = _locked_supplier(supplier.pk, revision)
    if current.offers.exists():
        raise StaleError
    record_change(by, current, supplier_lines(current), None)
    Supplier.objects.filter(pk=current.pk).delete()
    return current


@transaction.atomic
def add_article(by: Account | None, article: Article, meets: Sequence[str] = ()) -> Article:
    """A new article and the specifications it meets; raises TakenError when there is one of this name."""
    with unless_taken():
        article.save(force_insert=True)
    record_change(by, article, None, snapshot(article))
    meet_all(by, article, meets)
    return article


@transaction.atomic
def mend_article(by: Account | None, article: Article, revision: int | None) -> Article:
    """Keep the article as its form now has it; its kind stays, since all its sizes hang on it."""
    current = _locked(article.pk, revision)
    article.revision, article.kind = current.revision + 1, current.kind
    with unless_taken():
        article.save(update_fields=(*Article.change_fields, "revision"))
    record_change(by, article, snapshot(current), snapshot(article))
    return article


@transaction.atomic
def remove_article(by: Account | None, article: Article, revision: int | None) -> Article:
    """With its offers, what lies there and what it meets."""
    current = _locked(article.pk, revision)
    record_change(by, current, snapshot(current), None)
    Article.objects.filter(pk=current.pk).delete()
    return current


@transaction.atomic
def add_offer(by: Account | None, offer: Offer, revision: int | None) -> Offer:
    """`revision` is the article's, so that a form sent twice adds one offer; StaleError, TakenError."""
    _advance(offer.article, revision)
    _hold_supplier(offer)
    with unless_taken():
        offer.save(force_insert=True)
    record_change(by, offer.article, NOTHING, offer_lines(offer))
    return offer


@transaction.atomic
def mend_offer(by: Account | None, offer: Offer, revision: int | None) -> Offer:
    """`revision` is the article's; raises StaleError, TakenError."""
    _advance(offer.article, revision)
    _hold_supplier(offer)
    current = _there(Offer.objects.select_related("article", "supplier").filter(pk=offer.pk).first())
    with unless_taken():
        offer.save(update_fields=OFFER_FIELDS)
    record_change(by, offer.article, offer_lines(current), offer_lines(offer))
    return offer


@transaction.atomic
def remove_offer(by: Account | None, offer: Offer, revision: int | None) -> Offer:
    """`revision` is the article's; raises StaleError."""
    _advance(offer.article, revision)
    record_change(by, offer.article, offer_lines(offer), NOTHING)
    Offer.objects.filter(pk=offer.pk).delete()
    return offer


@transaction.atomic
def add_held(by: Account | None, held: Held, revision: int | None) -> Held:
    """`revision` is the article's, so that a form sent twice adds one row; raises StaleError."""
    _advance(held.article, revision)
    held.save(force_insert=True)
    record_change(by, held.article, NOTHING, held_lines(held))
    return held


@transaction.atomic
def mend_held(by: Account | None, held: Held, revision: int | None) -> Held:
    """As it has been counted anew; `revision` is its own, so that two people may count two rows."""
    current = _locked_held(held.pk, revision)
    held.revision = current.revision + 1
    held.save(update_fields=HELD_FIELDS)
    record_change(by, held.article, held_lines(current), held_lines(held))
    return held


@transaction.atomic
def remove_held(by: Account | None, held: Held, revision: int | None) -> Held:
    """`revision` is its own; raises StaleError."""
    current = _locked_held(held.pk, revision)
    record_change(by, current.article, held_lines(current), NOTHING)
    Held.objects.filter(pk=current.pk).delete()
    return current


@transaction.atomic
def meet(by: Account | None, article: Article, specification: str) -> MetSpecification:
    """Say that the article meets this specification; nothing changes when it was said before."""
    current = _there(Article.objects.select_for_update().filter(pk=article.pk).first())
    met, is_new = MetSpecification.objects.get_or_create(
        article=current,
        key=specification_key(specification),
        defaults={"specification": specification},
    )
    if is_new:
        record_change(by, current, NOTHING, met_lines(met))
    return met


@transaction.atomic
def meet_all(by: Account | None, article: Article, specifications: Sequence[str]) -> list[MetSpecification]:
    """The same for several, all or none."""
    return [meet(by, article, specification) for specification in specifications]


@transaction.atomic
def unmeet(by: Account | None, met: MetSpecification) -> MetSpecification:
    """Raises StaleError when somebody else was faster."""
    current = _there(MetSpecification.objects.select_for_update().filter(pk=met.pk).first())
    record_change(by, met.article, met_lines(current), NOTHING)
    MetSpecification.objects.filter(pk=current.pk).delete()
    return met


def _there(row: Row | None) -> Row:
    if row is None:
        raise StaleError
    return row


def _locked_supplier(pk: int, revision: int | None) -> Supplier:
    return _there(Supplier.objects.select_for_update().filter(pk=pk, revision=revision or 0).first())


def _locked(pk: int, revision: int | None) -> Article:
    return _there(Article.objects.select_for_update().filter(pk=pk, revision=revision or 0).first())


def _locked_held(pk: int, revision: int | None) -> Held:
    rows = Held.objects.select_for_update(of=("self",)).select_related("article")
    return _there(rows.filter(pk=pk, revision=revision or 0).first())


def _hold_supplier(offer: Offer) -> None:
    """Nobody takes the supplier away while something of theirs is written."""
    _there(Supplier.objects.select_for_update().filter(pk=offer.supplier_id).first())


def _advance(article: Article, revision: int | None) -> None:
    """The next revision of an article something of which changes, also in the caller's hands."""
    article.revision = _locked(article.pk, revision).revision + 1
    Article.objects.filter(pk=article.pk).update(revision=article.revision)
