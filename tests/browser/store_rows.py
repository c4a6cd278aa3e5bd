"""What lies in the stores in which every page is looked at: an article of each kind, and what they lack."""

from __future__ import annotations

from club.base.quantities.length import parse_length
from club.stores.models import Article, Held, MetSpecification, Offer, Supplier
from tests.factories import (
    ArticleFactory,
    HeldFactory,
    MetSpecificationFactory,
    OfferFactory,
    SupplierFactory,
)
from tests.projects.library.examples import inches

KERF, TRIM = inches("1/8"), inches("1/4")


def furnish_stores() -> dict[str, dict[str, int | str]]:
    """Rows that pages of the stores are about, by the name that a sample calls them."""
    supplier = SupplierFactory(
        name="Sedge Row Timber",
        address="Sedge Row 4\nAldwick",
        delivery=650,
        least_order=2500,
        delivery_days=3,
    )
    articles = [*_for_cutting(supplier), *_by_count(supplier)]
    bare = ArticleFactory(name="Zebrano offcuts", kind="blank", kerf=KERF)
    found: dict[str, dict[str, int | str]] = {
        f"article, {article.kind}": {"pk": article.pk} for article in articles
    }
    for article in articles:
        found |= _parts_of(article)
    found["article, bare"] = {"pk": bare.pk}
    found["supplier"] = {"pk": supplier.pk}
    found["supplier, idle"] = {"pk": SupplierFactory(name="Idle Osier").pk}
    return found


def _for_cutting(supplier: Supplier) -> list[Article]:
    """Sticks measured and not, boards and a lot that is cut, sheets whole and torn."""
    dowel = ArticleFactory(
        name="Hornbeam dowel 1/2 in", kind="length_stock", kerf=KERF, trim=TRIM, note="Straight ones only."
    )
    HeldFactory(article=dowel, amount=3, length=inches("30"), across=parse_length("12.6 mm"), label="R1")
    HeldFactory(article=dowel, amount=2, length=inches("48"), fit=False, where="rack 2, at the door")
    OfferFactory(article=dowel, supplier=supplier, label="H 12, 36 in", price=360, length=inches("36"))
    board = ArticleFactory(name="Hornbeam boards", kind="blank", kerf=KERF)
    sizes = {
        "thickness": parse_length("52 mm"),
        "width": parse_length("150 mm"),
        "length": parse_length("1 m"),
    }
    HeldFactory(article=board, amount=1, moisture=11, **sizes)
    HeldFactory(article=board, amount=9, label="L 4", cut_for="Hornbeam 50 mm square")
    OfferFactory(article=board, supplier=supplier, label="board 52", price=2875, **sizes)
    paper = ArticleFactory(name="Sandpaper P100", kind="sheet")
    sheet = {"width": inches("9"), "length": inches("11")}
    HeldFactory(article=paper, amount=14, **sheet)
    OfferFactory(article=paper, supplier=supplier, label="pack of 10", holds=10, price=695, **sheet)
    MetSpecificationFactory(article=board, specification="Hornbeam 50 mm square")
    MetSpecificationFactory(article=paper, specification="Sandpaper P100, a piece 2 3/4 in by 4 1/2 in")
    return [dowel, board, paper]


def _by_count(supplier: Supplier) -> list[Article]:
    oil = ArticleFactory(name="Poppy oil", kind="liquid")
    HeldFactory(article=oil, amount=750 * 10**6, amount_typed="750 ml", where="metal cabinet")
    OfferFactory(article=oil, supplier=supplier, label="tin", holds=10**9, holds_typed="1 l", price=1890)
    glue = ArticleFactory(name="White glue", kind="adhesive")
    HeldFactory(article=glue, amount=4 * 10**11, amount_typed="400 g")
    OfferFactory(
        article=glue, supplier=supplier, label="bottle", holds=10**12, holds_typed="1 kg", price=1240
    )
    ring = ArticleFactory(name="Brass rings 22 mm", kind="piece")
    HeldFactory(article=ring, amount=41)
    OfferFactory(article=ring, supplier=supplier, label="bag of 50", holds=50, price=895)
    towel = ArticleFactory(name="Lint cloth", kind="consumed")
    HeldFactory(article=towel, amount=0)
    OfferFactory(article=towel, supplier=supplier, label="roll", holds=120, price=310)
    return [oil, glue, ring, towel]


def _parts_of(article: Article) -> dict[str, dict[str, int | str]]:
    """The first offer, row and specification of an article, as their addresses name them."""
    parts = {
        "offer": Offer.objects.filter(article=article).first(),
        "held": Held.objects.filter(article=article).first(),
        "met": MetSpecification.objects.filter(article=article).first(),
    }
    return {
        f"{name}, {article.kind}": {"article_pk": article.pk, "pk": part.pk}
        for name, part in parts.items()
        if part
    }
