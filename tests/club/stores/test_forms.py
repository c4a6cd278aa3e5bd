from __future__ import annotations

import pytest
from django.http import QueryDict
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.django import TestCase

from club.base.quantities.length import parse_length
from club.base.quantities.mass import Mass
from club.base.quantities.volume import Volume
from club.stores.forms.article import ArticleForm
from club.stores.forms.fields import LinesField, MassField, MoneyField, VolumeField
from club.stores.forms.held import HeldForm
from club.stores.forms.meets import SpecificationsForm
from club.stores.forms.offer import OfferForm
from club.stores.forms.supplier import SupplierForm
from club.stores.models import Article, Held, Offer, Supplier
from tests.factories import ArticleFactory, HeldFactory, OfferFactory, SupplierFactory

pytestmark = pytest.mark.django_db

# What people paste and what others try: NUL, half a surrogate, right-to-left, a script, very much of it.
HOSTILE = ("\x00", "\ud800", "\u202eelpam", "\u200b", "a" * 100_000, "\ufdfa" * 400)
KINDS = Article.Kind.values


def asked(form: ArticleForm | OfferForm | HeldForm) -> list[str]:
    return [field.name for field in form.visible_fields()]


@pytest.mark.parametrize(
    ("kind", "sizes"),
    [
        ("length_stock", ["length"]),
        ("blank", ["thickness", "width", "length"]),
        ("sheet", ["width", "length", "holds"]),
        ("liquid", ["holds"]),
        ("adhesive", ["holds"]),
        ("piece", ["holds"]),
        ("consumed", ["holds"]),
    ],
)
def test_an_offer_is_asked_only_what_its_kind_has(kind, sizes):
    form = OfferForm(None, Offer(article=ArticleFactory(kind=kind)), [])

    assert asked(form) == ["supplier", "label", *sizes, "price"]


@pytest.mark.parametrize(
    ("kind", "own"),
    [
        ("length_stock", ["length", "across"]),
        ("blank", ["cut_for", "thickness", "width", "length", "moisture"]),
        ("sheet", ["cut_for", "width", "length"]),
        ("liquid", []),
        ("adhesive", []),
        ("piece", []),
        ("consumed", []),
    ],
)
def test_a_shelf_is_asked_only_what_its_kind_has(kind, own):
    form = HeldForm(None, Held(article=ArticleFactory(kind=kind)), ["Maple, 2 in square"])

    assert asked(form) == ["amount", *own, "label", "where", "fit"]


@pytest.mark.parametrize("kind", KINDS)
def test_a_kerf_is_asked_for_what_is_sawn(kind):
    is_sawn = kind in {"length_stock", "blank"}

    form = ArticleForm({"name": "Thing"}, Article(kind=kind))

    assert ("kerf" in form.errors) is is_sawn
    assert ("trim" in form.fields) is is_sawn


@pytest.mark.parametrize("name", ["corks", "CORKS", " Corks "])
def test_two_articles_are_never_called_the_same(name):
    ArticleFactory(name="Corks")

    form = ArticleForm({"name": name}, Article(kind="piece"))

    assert "There is an article of this name already" in form.errors["name"][0]


def test_an_article_may_keep_its_own_name():
    article = ArticleFactory(name="Corks")

    assert ArticleForm({"name": "corks", "revision": "1"}, article).is_valid()


@pytest.mark.parametrize("text", HOSTILE)
@pytest.mark.parametrize("name", ["name", "specification", "note"])
def test_an_article_is_not_made_of_hostile_text(name, text):
    form = ArticleForm({"name": "Corks", name: text}, Article(kind="piece"))

    assert list(form.errors) == [name]
    assert len(form.errors[name]) == 1
    assert form[name].value() == text


def test_markup_is_a_name_like_any_other():
    form = ArticleForm({"name": "<script>alert(1)</script>"}, Article(kind="piece"))

    assert form.is_valid()


@pytest.mark.parametrize("text", HOSTILE)
@pytest.mark.parametrize(
    "name", ["name", "address", "our_number", "delivery", "least_order", "delivery_days"]
)
def test_a_supplier_is_not_made_of_hostile_text(name, text):
    good = {"name": "Reed", "delivery": "0", "least_order": "0", "delivery_days": "0"}

    form = SupplierForm({**good, name: text}, Supplier())

    assert list(form.errors) == [name]


@pytest.mark.parametrize("text", HOSTILE)
@pytest.mark.parametrize("kind", KINDS)
def test_nothing_is_written_of_hostile_text_on_a_shelf_or_in_an_offer(kind, text):
    article = ArticleFactory(kind=kind)
    held = HeldForm(None, Held(article=article), ["Maple"])
    offer = OfferForm(None, Offer(article=article), [SupplierFactory()])

    for form in (held, offer):
        names = [name for name in asked(form) if name != "fit"]
        form.is_bound, form.data = True, QueryDict(mutable=True)
        form.data.update({**dict.fromkeys(names, text), "revision": "1"})

        assert {*form.errors} == {*names}


@pytest.mark.parametrize(
    ("text", "minor"), [("12.50", 1250), ("12,5", 1250), ("0", 0), ("1 250 EUR", 125_000)]
)
def test_money_is_read_as_people_write_it(text, minor):
    assert MoneyField().clean(text) == minor


def test_money_comes_back_as_it_can_be_read():
    assert MoneyField().prepare_value(125_005) == "1\u00a0250.05"
    assert MoneyField().clean("1\u00a0250.05") == 125_005


def test_an_example_of_a_price_has_the_decimals_of_the_currency(settings):
    settings.CURRENCY = "JPY"

    form = SupplierForm({"name": "Reed", "delivery": "free"}, Supplier())

    assert "1250" in form.errors["delivery"][0]


@pytest.mark.parametrize("text", ["0", "0 ml", "0 l"])
def test_a_bottle_may_be_empty_on_the_shelf_but_in_no_offer(text):
    assert VolumeField(zero=True).clean(text) == Volume(0)
    with pytest.raises(Exception, match=r"can't be 0|unit is missing"):
        VolumeField().clean(text)


def test_an_empty_tub_of_glue_is_nothing_too():
    assert MassField(zero=True).clean("0 kg") == Mass(0)


class AmountsComeBack(TestCase):
    @given(st.integers(1, 10**14))
    def test_what_nobody_typed_is_written_so_that_it_reads_the_same(self, amount):
        litres, grams = VolumeField(), MassField()

        assert litres.clean(litres.prepare_value(Volume(amount))) == Volume(amount)
        assert grams.clean(grams.prepare_value(Mass(amount))) == Mass(amount)


def test_an_address_keeps_its_lines():
    assert LinesField(300).clean(" Sedge Row 4\r\n  Aldwick \r\n") == "Sedge Row 4\nAldwick"


def test_what_is_kept_of_an_amount_is_its_text_as_well():
    article, supplier = ArticleFactory(kind="liquid"), SupplierFactory()
    typed = {"supplier": str(supplier.pk), "label": "tin", "holds": "0.5 l", "price": "9", "revision": "1"}

    form = OfferForm(typed, Offer(article=article), [supplier])

    assert form.is_valid()
    offer = form.filled()

    assert (offer.holds, offer.holds_typed, offer.price) == (500_000_000, "0.5 l", 900)


def test_a_pack_is_offered_once():
    offer = OfferFactory(label="bag", holds=50)
    typed = {"supplier": str(offer.supplier_id), "label": "bag", "holds": "10", "price": "9", "revision": "1"}

    form = OfferForm(typed, Offer(article=offer.article), [offer.supplier])

    assert "offers a pack of this name already" in form.errors["label"][0]


def test_an_offer_opens_as_it_was_typed():
    offer = OfferFactory(article__kind="liquid", holds=10**9, holds_typed="1 l", price=1890)

    form = OfferForm(None, offer, [offer.supplier])

    assert [form[name].value() for name in ("holds", "price", "supplier")] == [
        "1 l",
        "18.90",
        str(offer.supplier_id),
    ]


SIZES = {"thickness": "2 in", "width": "9 in", "length": "48 in"}


def blanks(**typed: str) -> HeldForm:
    article = ArticleFactory(kind="blank")
    return HeldForm({"amount": "4", "revision": "1", **typed}, Held(article=article), ["Maple, 2 in square"])


def test_boards_need_all_their_sizes():
    assert [*blanks(width="9 in").errors] == ["thickness", "length"]
    assert blanks(**SIZES).is_valid()


def test_blanks_that_are_cut_have_no_board_s_sizes():
    assert blanks(cut_for="Maple, 2 in square").is_valid()
    assert [*blanks(cut_for="Maple, 2 in square", **SIZES).errors] == ["cut_for"]


def test_nothing_is_cut_for_what_the_article_does_not_meet():
    assert blanks(cut_for="Something else").errors["cut_for"] == ["Choose one of those that are offered."]


def test_what_a_row_was_cut_for_stays_on_offer():
    held = HeldFactory(article__kind="blank", cut_for="An older one")
    typed = {"amount": "2", "cut_for": "An older one", "revision": "1"}

    assert HeldForm(typed, held, []).is_valid()


@pytest.mark.parametrize("amount", ["-1", "1.5", "2001", "a few", ""])
def test_sticks_are_counted_in_whole_numbers(amount):
    held = Held(article=ArticleFactory(kind="length_stock"))

    form = HeldForm({"amount": amount, "length": "30 in", "revision": "1"}, held, [])

    assert form.errors == {"amount": ["Write a whole number from 0 to 2\u00a0000."]}


def test_a_row_opens_as_it_was_typed():
    held = HeldFactory(
        article__kind="length_stock", amount=3, length=parse_length("2' 6\""), across=parse_length("½ in")
    )

    form = HeldForm(None, held, [])

    assert [form[name].value() for name in ("amount", "length", "across", "fit")] == [
        3,
        "2' 6\"",
        "½ in",
        True,
    ]


def test_a_specification_that_is_ticked_and_written_counts_once():
    data = QueryDict(mutable=True)
    data.setlist("asked_for", ["Cork 3/8 in", "Cork 1/2 in"])
    data["other"] = "cork  3/8 IN"

    form = SpecificationsForm(data, ["Cork 3/8 in", "Cork 1/2 in"])

    assert form.is_valid()
    assert len(form.specifications) == 2


def test_at_least_one_specification_is_said():
    assert "Tick one of them" in SpecificationsForm({"other": " "}, []).errors["other"][0]
