from __future__ import annotations

from dataclasses import replace

import pytest

from club.base.quantities.length import parse_length
from club.stores.models import Article
from club.stores.supplies import stocked
from projects.kit.counting import Heads
from projects.kit.offers import Pack, Supplier
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
)
from projects.kit.totals import totals
from projects.library.domain.materials import ConsumedNeed, LengthNeed, Need, PieceNeed, SheetNeed, SpareCount
from projects.library.domain.recipe import Recipe
from tests.factories import (
    ArticleFactory,
    HeldFactory,
    MetSpecificationFactory,
    OfferFactory,
    SupplierFactory,
)
from tests.projects.library.examples import BOWL, KNOB, inches

pytestmark = pytest.mark.django_db

CORK = PieceNeed("cork", "Cork 3/8 in")


def recipe_of(*needs: Need) -> Recipe:
    return replace(KNOB, materials=needs)


def meets(specification: str, kind: str = "piece", **values: object) -> Article:
    """An article of this kind that meets the specification."""
    article: Article = ArticleFactory(kind=kind, **values)
    MetSpecificationFactory(article=article, specification=specification)
    return article


def test_a_need_that_nothing_meets_has_no_supply():
    found = stocked(recipe_of(CORK))

    assert found.articles == {"cork": ()}
    assert found.supplies == {}
    assert found.suppliers == ()


def test_an_article_of_another_kind_meets_nothing():
    meets("Cork 3/8 in", kind="consumed")

    assert stocked(recipe_of(CORK)).articles == {"cork": ()}


def test_counts_and_packs_of_several_articles_add_up():
    supplier = SupplierFactory(name="Reed and Rush", delivery=450, least_order=2000)
    brown, black = meets("cork 3/8 IN", name="Brown corks"), meets("Cork 3/8 in", name="Black corks")
    held = HeldFactory(article=brown, amount=7), HeldFactory(article=black, amount=5, label="C1")
    bag = OfferFactory(article=brown, supplier=supplier, label="bag", holds=50, price=895)

    found = stocked(recipe_of(CORK))

    key, seller = f"offer-{bag.pk}", f"supplier-{supplier.pk}"
    assert found.articles == {"cork": (black, brown)}
    assert found.supplies == {"cork": CountSupply(12, (Pack(key, seller, 50, 895),))}
    assert found.suppliers == (Supplier(seller, delivery=450, least_order=2000),)
    assert found.names == {
        key: "Brown corks, bag",
        seller: "Reed and Rush",
        f"held-{held[0].pk}": "Brown corks",
        f"held-{held[1].pk}": "Black corks, marked C1",
    }
    assert (found.offers, found.sellers) == ({key: bag}, {seller: supplier})


def test_what_is_unfit_is_left_out():
    article = meets("Cork 3/8 in")
    HeldFactory(article=article, amount=9, fit=False)
    HeldFactory(article=article, amount=2)

    assert stocked(recipe_of(CORK)).supplies == {"cork": CountSupply(2)}


def test_sticks_lie_there_one_by_one_with_their_saw():
    article = meets("Dowel", kind="length_stock", kerf=parse_length("1/16 in"), trim=parse_length("1/4 in"))
    held = HeldFactory(
        article=article, amount=2, length=parse_length("30 in"), across=parse_length("12.6 mm")
    )
    offer = OfferFactory(article=article, length=parse_length("48 in"), price=360)

    found = stocked(recipe_of(LengthNeed("dowel", "Dowel", inches("1/2"), inches("2"))))

    stick = HeldStick(f"held-{held.pk}", 762_000_000, 12_600_000)
    assert found.supplies["dowel"] == StickSupply(
        Saw(1_587_500, 6_350_000),
        (stick, stick),
        (Stick(f"offer-{offer.pk}", 1_219_200_000, 360, f"supplier-{offer.supplier_id}"),),
    )


def test_the_widest_kerf_and_the_longest_trim_count():
    meets("Dowel", kind="length_stock", kerf=parse_length("1 mm"), trim=parse_length("10 mm"))
    meets("Dowel", kind="length_stock", kerf=parse_length("3 mm"))

    found = stocked(recipe_of(LengthNeed("dowel", "Dowel", inches("1/2"), inches("2"))))

    assert found.supplies["dowel"] == StickSupply(Saw(3_000_000, 10_000_000))


def test_boards_are_for_cutting_and_blanks_are_cut_already():
    specification = BOWL.materials[0].specification
    article = meets(specification, kind="blank", kerf=parse_length("3 mm"))
    sizes = {
        name: parse_length(f"{inch} in") for name, inch in (("thickness", 3), ("width", 9), ("length", 48))
    }
    lot = HeldFactory(article=article, amount=4, moisture=9, cut_for=specification.upper())
    board = HeldFactory(article=article, amount=1, moisture=12, **sizes)
    HeldFactory(article=article, amount=8, cut_for="Another disc")
    offer = OfferFactory(article=article, price=5400, **sizes)

    found = stocked(BOWL)

    measures = (76_200_000, 228_600_000, 1_219_200_000)
    assert found.supplies["blank"] == BlankSupply(
        Saw(3_000_000),
        (BlankLot(f"held-{lot.pk}", 4, 9),),
        (Board(f"held-{board.pk}", *measures, moisture_percent=12),),
        (Board(f"offer-{offer.pk}", *measures, price=5400, supplier=f"supplier-{offer.supplier_id}"),),
    )


def test_sheets_are_torn_already_or_whole():
    article = meets("Sandpaper P120", kind="sheet")
    size = {"width": parse_length("9 in"), "length": parse_length("11 in")}
    HeldFactory(article=article, amount=11, cut_for="sandpaper p120")
    HeldFactory(article=article, amount=3, **size)
    offer = OfferFactory(article=article, holds=10, price=690, **size)

    found = stocked(recipe_of(SheetNeed("grit", "Sandpaper P120", inches("2 3/4"), inches("4 1/2"), 120)))

    sheet = Sheet(228_600_000, 279_400_000)
    pack = SheetPack(f"offer-{offer.pk}", f"supplier-{offer.supplier_id}", sheet, 10, 690)
    assert found.supplies["grit"] == SheetSupply(11, (sheet,) * 3, (pack,))


def test_what_lies_there_counts_for_one_need_of_a_recipe_only():
    article = meets("Paper towel", kind="consumed")
    MetSpecificationFactory(article=article, specification="Rag")
    HeldFactory(article=article, amount=30)
    offer = OfferFactory(article=article, holds=100)

    found = stocked(recipe_of(ConsumedNeed("towel", "Paper towel", 3), ConsumedNeed("rag", "Rag")))

    pack = Pack(f"offer-{offer.pk}", f"supplier-{offer.supplier_id}", 100, 100)
    assert found.supplies == {"towel": CountSupply(30, (pack,)), "rag": CountSupply(0, (pack,))}


def test_what_is_cut_for_one_need_is_left_to_it_by_the_others():
    article = meets("Sandpaper P120", kind="sheet")
    MetSpecificationFactory(article=article, specification="Sandpaper P120, long")
    size = {"width": parse_length("9 in"), "length": parse_length("11 in")}
    HeldFactory(article=article, amount=6, cut_for="Sandpaper P120, long", **size)

    found = stocked(
        recipe_of(
            SheetNeed("grit", "Sandpaper P120", inches("2"), inches("4"), 120),
            SheetNeed("long", "Sandpaper P120, long", inches("2"), inches("8"), 120),
        )
    )

    assert found.supplies == {"grit": SheetSupply(), "long": SheetSupply(6)}


def test_a_row_too_large_to_be_true_does_not_fill_the_memory():
    article = meets("Dowel", kind="length_stock")
    HeldFactory(article=article, amount=10**12, length=parse_length("1 m"))

    found = stocked(recipe_of(LengthNeed("dowel", "Dowel", inches("1/2"), inches("2"))))

    assert len(found.supplies["dowel"].shelf) == 2_000


def test_the_stores_are_asked_alike_however_much_lies_in_them(django_assert_max_num_queries):
    for need in KNOB.materials:
        for _ in range(5):
            article = meets(need.specification, kind=need.kind)
            HeldFactory.create_batch(3, article=article)
            OfferFactory.create_batch(3, article=article)

    with django_assert_max_num_queries(3):
        found = stocked(KNOB)
        assert found.names

    assert all(len(articles) == 5 for articles in found.articles.values())


def test_a_kit_is_totalled_from_the_stores():
    """13 heads, a cork each; 12 lie there, so a bag is bought: 8.95 and 4.50 delivery."""
    supplier = SupplierFactory(delivery=450)
    article = meets("Cork 3/8 in")
    HeldFactory(article=article, amount=12)
    OfferFactory(article=article, supplier=supplier, holds=50, price=895)
    recipe = replace(recipe_of(CORK), spares=SpareCount(0))

    stores = stocked(recipe)
    found = totals(recipe, Heads(12), stores.supplies, stores.suppliers)

    assert (found.lines[0].to_buy, found.cost) == (1, 895 + 450)
