"""An article's page and a supplier's: what lies there and what is offered, in words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from club.base.quantities.length import LengthStyle
from club.stores.models import Held, Offer, Supplier
from club.stores.money import money
from club.stores.sentences.amounts import Show, held_amount, pack_amount
from club.stores.sentences.prices import price_for_one


@dataclass(frozen=True)
class OfferLine:
    """An offer with its amount, its price, and what one of it comes to."""

    offer: Offer
    amount: str
    price: str
    for_one: str


@dataclass(frozen=True)
class HeldLine:
    held: Held
    amount: str


@dataclass(frozen=True)
class Terms:
    """On what terms a supplier sends; nothing in words where it costs nothing or isn't asked for."""

    supplier: Supplier
    delivery: str
    least_order: str


def terms_of(supplier: Supplier) -> Terms:
    delivery, least = supplier.delivery, supplier.least_order
    return Terms(supplier, money(delivery) if delivery else "", money(least) if least else "")


def offer_lines(offers: Iterable[Offer], show: Show, lengths: LengthStyle) -> list[OfferLine]:
    return [
        OfferLine(offer, pack_amount(offer, show), money(offer.price), price_for_one(offer, lengths))
        for offer in offers
    ]


def held_lines(rows: Iterable[Held], show: Show) -> list[HeldLine]:
    return [HeldLine(held, held_amount(held, show)) for held in rows]
