from __future__ import annotations

import pytest

from club.base.changes import changes_of
from club.base.quantities.length import parse_length
from club.base.writing import StaleError, TakenError
from club.stores import actions
from club.stores.models import Article, Held, MetSpecification, Offer, Supplier
from tests.factories import (
    ArticleFactory,
    HeldFactory,
    MetSpecificationFactory,
    OfferFactory,
    SupplierFactory,
)

pytestmark = pytest.mark.django_db


def latest(thing: Article | Supplier) -> tuple[str, list[list[str]]]:
    """The deed and the lines of the last change of it."""
    change = changes_of(thing)[0]
    return change.deed, change.lines


def test_a_supplier_is_added_with_its_money_in_words():
    supplier = actions.add_supplier(None, Supplier(name="Reed and Rush", delivery=450))

    deed, lines = latest(supplier)
    assert deed == "made"
    assert ["delivery", "", "4.50\u00a0EUR"] in lines


def test_a_second_supplier_of_a_name_is_refused_in_any_case():
    SupplierFactory(name="Reed and Rush")

    with pytest.raises(TakenError):
        actions.add_supplier(None, Supplier(name="REED and rush"))


def test_a_supplier_is_mended_with_what_changed():
    supplier = SupplierFactory(name="Reed", delivery_days=3)
    supplier.delivery_days = 5

    actions.mend_supplier(None, supplier, 1)

    assert Supplier.objects.get().revision == 2
    assert latest(supplier) == ("mended", [["days to deliver", "3", "5"]])


def test_a_supplier_mended_from_an_old_page_stays():
    supplier = SupplierFactory(name="Reed", revision=2)
    supplier.name = "Rush"

    with pytest.raises(StaleError):
        actions.mend_supplier(None, supplier, 1)

    assert Supplier.objects.get().name == "Reed"


def test_a_supplier_is_removed_and_the_log_keeps_it():
    supplier = SupplierFactory(name="Reed")

    actions.remove_supplier(None, supplier, 1)

    assert not Supplier.objects.exists()
    assert latest(supplier)[0] == "gone"


def test_a_supplier_who_offers_something_is_not_removed():
    supplier = OfferFactory().supplier

    with pytest.raises(StaleError):
        actions.remove_supplier(None, supplier, 1)

    assert Supplier.objects.exists()


def test_an_article_is_added_with_what_it_meets():
    article = actions.add_article(None, Article(name="Corks", kind="piece"), ["Cork 3/8 in"])

    met = MetSpecification.objects.get()
    assert (met.article, met.key) == (article, "cork 3/8 in")
    assert latest(article) == ("mended", [["meets", "", "Cork 3/8 in"]])


def test_an_article_of_a_name_there_is_already_is_refused_whole():
    ArticleFactory(name="Corks")

    with pytest.raises(TakenError):
        actions.add_article(None, Article(name="CORKS", kind="piece"), ["Cork 3/8 in"])

    assert not MetSpecification.objects.exists()


def test_an_article_keeps_its_kind_when_it_is_mended():
    article = ArticleFactory(name="Corks", kind="piece")
    article.name, article.kind = "Corks 3/8 in", "sheet"

    actions.mend_article(None, article, 1)

    kept = Article.objects.get()
    assert (kept.name, kept.kind, kept.revision) == ("Corks 3/8 in", "piece", 2)
    assert latest(kept) == ("mended", [["name", "Corks", "Corks 3/8 in"]])


def test_an_article_goes_with_all_that_belongs_to_it():
    article = MetSpecificationFactory().article
    OfferFactory(article=article)
    HeldFactory(article=article)

    actions.remove_article(None, article, 1)

    assert not any(model.objects.exists() for model in (Article, Offer, Held, MetSpecification))
    assert Supplier.objects.exists()


@pytest.mark.parametrize("write", [actions.mend_article, actions.remove_article])
def test_an_article_changed_since_stays(write):
    article = ArticleFactory(revision=3)

    with pytest.raises(StaleError):
        write(None, article, 2)

    assert Article.objects.get().revision == 3


def test_an_offer_is_told_in_the_log_of_its_article():
    article, supplier = ArticleFactory(kind="length_stock"), SupplierFactory(name="Reed")
    offer = Offer(article=article, supplier=supplier, label="dowel", price=360, length=parse_length("36 in"))

    actions.add_offer(None, offer, article.revision)

    assert latest(article) == (
        "mended",
        [["offer of Reed, dowel", "", "1 stick of 36\u00a0in, 3.60\u00a0EUR"]],
    )
    assert Article.objects.get().revision == article.revision == 2


def test_an_offer_sent_twice_is_added_once():
    article, supplier = ArticleFactory(), SupplierFactory()
    actions.add_offer(None, Offer(article=article, supplier=supplier, label="bag", price=1), 1)

    with pytest.raises(StaleError):
        actions.add_offer(None, Offer(article=article, supplier=supplier, label="box", price=1), 1)

    assert [offer.label for offer in Offer.objects.all()] == ["bag"]


def test_a_pack_is_offered_once_by_a_supplier():
    offer = OfferFactory(label="bag")
    again = Offer(article=offer.article, supplier=offer.supplier, label="bag", price=2)

    with pytest.raises(TakenError):
        actions.add_offer(None, again, 1)

    assert Article.objects.get().revision == 1


def test_nothing_is_offered_by_a_supplier_who_is_gone():
    article, supplier = ArticleFactory(), SupplierFactory()
    offer = Offer(article=article, supplier=supplier, label="bag", price=1)
    Supplier.objects.all().delete()

    with pytest.raises(StaleError):
        actions.add_offer(None, offer, 1)


def test_a_price_is_mended_before_and_after():
    offer = OfferFactory(supplier__name="Reed", label="bag", holds=50, price=895)
    offer.price = 950

    actions.mend_offer(None, offer, 1)

    assert latest(offer.article)[1] == [
        ["offer of Reed, bag", "50 pieces, 8.95\u00a0EUR", "50 pieces, 9.50\u00a0EUR"]
    ]
    assert Offer.objects.get().price == 950


def test_an_offer_is_removed():
    offer = OfferFactory(supplier__name="Reed", label="bag")

    actions.remove_offer(None, offer, 1)

    assert not Offer.objects.exists()
    assert latest(offer.article)[1] == [["offer of Reed, bag", "1 piece, 1.00\u00a0EUR", ""]]


@pytest.mark.parametrize("write", [actions.mend_offer, actions.remove_offer])
def test_an_offer_of_an_article_that_changed_since_stays(write):
    offer = OfferFactory(article__revision=2, price=100)
    offer.price = 200

    with pytest.raises(StaleError):
        write(None, offer, 1)

    assert Offer.objects.get().price == 100


def test_what_lies_there_is_told_with_its_particulars():
    article = ArticleFactory(kind="length_stock")
    held = Held(
        article=article,
        label="R1",
        amount=3,
        length=parse_length("30 in"),
        across=parse_length("12.6 mm"),
        where="rack 2",
    )

    actions.add_held(None, held, 1)

    told = "3 sticks of 30\u00a0in, 12.6\u00a0mm across, rack 2"
    assert latest(article)[1] == [["on the shelf, R1", "", told]]


def test_two_rows_are_counted_without_getting_in_each_others_way():
    article = ArticleFactory()
    one, other = HeldFactory(article=article, amount=5), HeldFactory(article=article, amount=7)
    one.amount, other.amount = 4, 0

    actions.mend_held(None, one, 1)
    actions.mend_held(None, other, 1)

    assert [*Held.objects.order_by("pk").values_list("amount", "revision")] == [(4, 2), (0, 2)]


@pytest.mark.parametrize("write", [actions.mend_held, actions.remove_held])
def test_a_count_that_somebody_else_mended_since_stays(write):
    held = HeldFactory(amount=5, revision=2)
    held.amount = 1

    with pytest.raises(StaleError):
        write(None, held, 1)

    assert Held.objects.get().amount == 5


def test_a_row_is_removed():
    held = HeldFactory(label="C1", moisture=12, fit=False)

    actions.remove_held(None, held, 1)

    assert not Held.objects.exists()
    assert latest(held.article)[1] == [["on the shelf, C1", "1 piece, 12 % moisture, not fit for use", ""]]


def test_a_specification_is_met_once_however_it_is_written():
    article = ArticleFactory()
    first = actions.meet(None, article, "Cork 3/8 in")

    again = actions.meet(None, article, "cork  3/8 IN")

    assert again == first
    assert changes_of(article).count() == 1


def test_a_specification_is_met_no_more():
    met = MetSpecificationFactory(specification="Cork 3/8 in")

    actions.unmeet(None, met)

    assert not MetSpecification.objects.exists()
    assert latest(met.article)[1] == [["meets", "Cork 3/8 in", ""]]


def test_what_somebody_else_took_away_is_noticed():
    met = MetSpecificationFactory()
    article = met.article
    Article.objects.all().delete()

    with pytest.raises(StaleError):
        actions.unmeet(None, met)
    with pytest.raises(StaleError):
        actions.meet(None, article, "Cork")
