"""What the stores have for the knobs of evening A, as rows. Prices are made up."""

from __future__ import annotations

from typing import Any

from club.base.quantities.length import Length, parse_length
from club.stores.models import Article, Held, Offer, Supplier
from tests.factories import (
    ArticleFactory,
    HeldFactory,
    MetSpecificationFactory,
    OfferFactory,
    SupplierFactory,
)

DOWEL = "Maple dowel 1/2 in"
SQUARE = "Maple, 1 1/2 in square"


def inches(text: str) -> Length:
    return parse_length(f"{text} in")


def article(specification: str, kind: str, **facts: Any) -> Article:
    """An article that meets this specification and is called by it."""
    made = ArticleFactory(name=facts.pop("name", specification), kind=kind, **facts)
    MetSpecificationFactory(article=made, specification=specification)
    return made


def dowels() -> Article:
    """Half-inch dowel, cut with a kerf of 1/16 and 1/8 trimmed off the ends all told."""
    return article(DOWEL, "length_stock", kerf=inches("1/16"), trim=inches("1/8"))


def squares() -> Article:
    """Squares of 1 1/2 in, kerf 1/8, 1/4 trimmed."""
    return article(SQUARE, "blank", kerf=inches("1/8"), trim=inches("1/4"))


def rod(of: Article, label: str, across: str, length: str = "36") -> Held:
    return HeldFactory(article=of, label=label, across=inches(across), length=inches(length))


def square(of: Article, length: str = "36", **facts: Any) -> Held:
    sizes = {"thickness": inches("1 1/2"), "width": inches("1 1/2"), "length": inches(length)}
    return HeldFactory(article=of, **{**sizes, "moisture": 9, **facts})


def sticks(of: Article, price: int, supplier: Supplier, length: str = "36") -> Offer:
    return OfferFactory(
        article=of, supplier=supplier, price=price, length=inches(length), label=f"{length} in, no. 44"
    )


def evening_a() -> Supplier:
    """Rods R1 and R2 and one square on the shelf; the dowel is sold, and so are towels by the roll of 50."""
    mill = SupplierFactory(
        name="Reed Mill", address="Weir Lane 3\nQuernby", our_number="K 211", delivery=450, least_order=1_000
    )
    dowel, blank = dowels(), squares()
    rod(dowel, "R1", "0.484")
    rod(dowel, "R2", "0.499")
    square(blank)
    sticks(dowel, 180, mill)
    towel = article("Paper towel", "consumed")
    OfferFactory(article=towel, supplier=mill, label="roll of 50", holds=50, price=320)
    return mill
