from __future__ import annotations

from typing import Any
from urllib.parse import urlencode

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from club.base.access import Role
from club.base.changes import changes_of
from club.base.quantities.length import parse_length
from club.stores.asked_for import asked_for
from club.stores.models import Article, Held, MetSpecification, Offer, Supplier
from tests.factories import (
    ArticleFactory,
    HeldFactory,
    MetSpecificationFactory,
    OfferFactory,
    SupplierFactory,
    WorkshopFactory,
)
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.rows import draft

pytestmark = pytest.mark.django_db

TOWEL = {"kind": "consumed", "specification": "Paper towel"}


def meets_add(**query: str) -> str:
    return f"{reverse('stores:meets_add')}?{urlencode({**TOWEL, **query})}"


def test_an_article_comes_in_and_stands_in_the_list(as_coordinator):
    address = f"{reverse('stores:new')}?kind=length_stock"

    answer = as_coordinator.post(address, {"name": "Maple dowel", "kerf": "1/8 in"}, follow=True)

    article = Article.objects.get()
    assert answer.redirect_chain[0][0] == article.get_absolute_url()
    assert (article.kind, article.kerf.nm) == ("length_stock", 3_175_000)
    assert "Maple dowel" in as_coordinator.get(reverse("stores:list")).content.decode()


def test_an_article_of_no_kind_is_asked_for_one(as_coordinator):
    page = as_coordinator.get(f"{reverse('stores:new')}?kind=gold&specification=Towel&next=/stores/")

    assert "?kind=piece&amp;specification=Towel&amp;next=%2Fstores%2F" in page.content.decode()


def test_the_list_says_what_lies_there_in_words(as_coordinator):
    article = ArticleFactory(kind="length_stock")
    for inch in ("36 in", "36 in", "12 in"):
        HeldFactory(article=article, amount=2, length=parse_length(inch))
    HeldFactory(article=article, amount=9, length=parse_length("36 in"), fit=False)

    lines = as_coordinator.get(reverse("stores:list")).context["lines"]

    assert [line.lying for line in lines] == ["4 sticks of 36\u00a0in; 2 sticks of 12\u00a0in"]


@pytest.mark.parametrize(
    ("query", "found"),
    [
        ("", ["Board", "Cork", "Oil"]),
        ("q=tin", ["Oil"]),
        ("q=red maple", ["Board"]),
        ("kind=piece", ["Cork"]),
        ("lacks=shelf", ["Cork", "Oil"]),
        ("lacks=supplier", ["Board", "Oil"]),
        ("lacks=specification", ["Cork", "Oil"]),
        ("kind=gold&lacks=love", ["Board", "Cork", "Oil"]),
    ],
)
def test_the_list_is_narrowed_down(as_coordinator, query, found):
    board = ArticleFactory(name="Board", kind="blank")
    HeldFactory(article=board)
    for specification in ("Red maple disc", "Red maple square"):
        MetSpecificationFactory(article=board, specification=specification)
    OfferFactory(article=ArticleFactory(name="Cork"))
    HeldFactory(article=ArticleFactory(name="Oil", kind="liquid", note="in a tin"), amount=0)

    lines = as_coordinator.get(f"{reverse('stores:list')}?{query}").context["lines"]

    assert [line.article.name for line in lines] == found


def test_the_head_of_the_list_counts_what_is_missing(as_coordinator):
    OfferFactory(article=HeldFactory().article)
    ArticleFactory()

    counts = as_coordinator.get(reverse("stores:list")).context["counts"]

    assert counts == {"total": 2, "shelf": 1, "supplier": 1, "specification": 2}


def test_a_longer_list_asks_the_database_no_more(as_coordinator):
    def queries() -> int:
        for address in (reverse("stores:list"), reverse("stores:suppliers")):
            with CaptureQueriesContext(connection) as asked:
                as_coordinator.get(address)
            counted.append(len(asked))
        return len(asked)

    counted: list[int] = []
    OfferFactory(article=HeldFactory().article)
    queries()
    for _ in range(10):
        OfferFactory(article=MetSpecificationFactory(article=HeldFactory().article).article)
    queries()

    assert counted[:2] == counted[2:]


def test_a_count_is_kept_with_who_changed_it(as_coordinator):
    held = HeldFactory(amount=5, where="bench")
    address = reverse("stores:held_mend", args=[held.article_id, held.pk])

    as_coordinator.post(address, {"amount": "3", "where": "bench", "fit": "on", "revision": "1"})

    change = changes_of(held.article)[0]
    assert Held.objects.get().amount == 3
    assert change.lines == [["on the shelf", "5 pieces, bench", "3 pieces, bench"]]
    assert change.by == as_coordinator.account


def test_a_count_from_an_old_page_keeps_what_was_typed(as_coordinator):
    held = HeldFactory(amount=5, revision=2)
    address = reverse("stores:held_mend", args=[held.article_id, held.pk])

    answer = as_coordinator.post(address, {"amount": "3", "where": "by the door", "revision": "1"})

    assert answer.status_code == 422
    assert "Somebody else changed this" in answer.content.decode()
    assert 'value="by the door"' in answer.content.decode()
    assert Held.objects.get().amount == 5


def test_an_offer_comes_in_with_its_price_for_one(as_coordinator):
    article, supplier = ArticleFactory(kind="sheet"), SupplierFactory()
    typed = {"supplier": supplier.pk, "label": "ten", "width": "9 in", "length": "11 in", "holds": "10"}

    as_coordinator.post(
        reverse("stores:offer_new", args=[article.pk]), {**typed, "price": "6.95", "revision": "1"}
    )

    offers = as_coordinator.get(article.get_absolute_url()).context["offers"]
    assert [(line.amount, line.price, line.for_one) for line in offers] == [
        ("10 sheets of 9\u00a0in by 11\u00a0in", "6.95\u00a0EUR", "about 0.70\u00a0EUR a sheet")
    ]


def test_an_offer_without_any_supplier_leads_to_one_and_back(as_coordinator):
    article = ArticleFactory()
    address = reverse("stores:offer_new", args=[article.pk])
    page = as_coordinator.get(address).content.decode()
    way = f"{reverse('stores:supplier_new')}?next={address}"

    answer = as_coordinator.post(
        way, {"name": "Reed", "delivery": "0", "least_order": "0", "delivery_days": "2"}
    )

    assert way in page
    assert answer.headers["Location"] == address
    assert Supplier.objects.get().delivery_days == 2


def test_a_supplier_who_sells_nothing_is_taken_out(as_coordinator):
    idle, busy = SupplierFactory(), OfferFactory().supplier
    for supplier in (idle, busy):
        as_coordinator.post(reverse("stores:supplier_remove", args=[supplier.pk]), {"revision": "1"})

    assert [*Supplier.objects.all()] == [busy]


@pytest.mark.parametrize("address", ["stores:offer_remove", "stores:held_remove", "stores:meets_remove"])
def test_a_part_of_one_article_is_not_reached_through_another(as_coordinator, address):
    parts = {
        "stores:offer_remove": OfferFactory,
        "stores:held_remove": HeldFactory,
        "stores:meets_remove": MetSpecificationFactory,
    }
    part: Any = parts[address]()

    answer = as_coordinator.post(reverse(address, args=[ArticleFactory().pk, part.pk]), {"revision": "1"})

    assert answer.status_code == 404
    assert type(part).objects.exists()


def test_parts_are_taken_off(as_coordinator):
    offer = OfferFactory()
    held, met = HeldFactory(article=offer.article), MetSpecificationFactory(article=offer.article)

    for address, part in (("held", held), ("meets", met), ("offer", offer)):
        as_coordinator.post(
            reverse(f"stores:{address}_remove", args=[offer.article_id, part.pk]), {"revision": "1"}
        )

    assert not any(model.objects.exists() for model in (Offer, Held, MetSpecification))


def test_an_article_is_said_to_meet_what_a_kit_asks_for_and_the_way_leads_back(as_coordinator):
    article = ArticleFactory(kind="consumed")
    back = "/classes/7/kit/"

    answer = as_coordinator.post(meets_add(next=back), {"article": article.pk})

    assert answer.headers["Location"] == back
    assert article.met.get().specification == "Paper towel"


@pytest.mark.parametrize(
    "elsewhere",
    ["https://elsewhere.example/", "//elsewhere.example", "/\\elsewhere.example", "javascript:0", "x"],
)
def test_no_way_leads_out_of_the_club(as_coordinator, elsewhere):
    article = ArticleFactory(kind="consumed")

    page = as_coordinator.get(meets_add(next=elsewhere))
    answer = as_coordinator.post(meets_add(next=elsewhere), {"article": article.pk})

    assert answer.headers["Location"] == article.get_absolute_url()
    assert "elsewhere" not in page.content.decode()


def test_only_articles_of_the_kind_are_offered(as_coordinator):
    ArticleFactory(name="Cork", kind="piece")
    ArticleFactory(name="Towels", kind="consumed")

    page = as_coordinator.get(meets_add()).content.decode()

    assert "Towels" in page
    assert "Cork" not in page


def test_a_new_article_for_it_has_it_filled_in(as_coordinator):
    way = as_coordinator.get(meets_add(next="/stores/asked-for/")).context["new_article"]
    form = as_coordinator.get(way).context["form"]
    typed = {"name": "Towels", "specification": form["specification"].value()}

    answer = as_coordinator.post(way, typed)

    assert form["name"].value() == "Paper towel"
    assert answer.headers["Location"] == "/stores/asked-for/"
    assert MetSpecification.objects.get().article.name == "Towels"


@pytest.mark.parametrize(
    "query",
    [
        "",
        "kind=gold&specification=Cork",
        "kind=piece",
        "kind=piece&specification=%00",
        f"kind=piece&specification={'x' * 300}",
    ],
)
def test_an_address_that_asks_for_nothing_leads_nowhere(as_coordinator, query):
    assert as_coordinator.get(f"{reverse('stores:meets_add')}?{query}").status_code == 404


def test_what_projects_ask_for_is_listed_with_what_meets_it(as_coordinator):
    draft(KNOB)
    draft(BOWL)
    towels = MetSpecificationFactory(article__kind="consumed", specification="PAPER towel").article

    page = as_coordinator.get(reverse("stores:asked_for"))

    by_words = {need.specification: need for need in asked_for()}
    assert by_words["Paper towel"].articles == (towels,)
    assert by_words["Walnut oil"].articles == ()
    assert by_words["Cherry disc 8 in, 3 in thick"].titles == ("Small bowl",)
    assert page.content.decode().count("Say what meets it") == len(by_words) - 1


def test_an_article_is_said_to_meet_several_at_once(as_coordinator):
    draft(KNOB)
    article = ArticleFactory(kind="sheet")
    MetSpecificationFactory(article=article, specification="sandpaper p180")
    address = reverse("stores:meets_new", args=[article.pk])

    offered = as_coordinator.get(address).context["form"].fields["asked_for"].choices
    as_coordinator.post(address, {"asked_for": ["Sandpaper P120"], "other": "Sandpaper 120"})

    assert [key for key, _words in offered] == ["Sandpaper P120", "Sandpaper P240"]
    assert {met.key for met in article.met.all()} == {"sandpaper p120", "sandpaper p180", "sandpaper 120"}


def test_whoever_writes_in_one_workshop_writes_in_the_stores_of_the_club(sign_in_as):
    client = sign_in_as(Role.INSTRUCTOR, WorkshopFactory())

    client.post(f"{reverse('stores:new')}?kind=piece", {"name": "Corks"})

    assert Article.objects.get().name == "Corks"


@pytest.mark.parametrize("role", [Role.HELPER, Role.TREASURER, Role.SAFETY_OFFICER])
def test_whoever_only_reads_is_led_to_no_form(sign_in_as, role):
    offer = OfferFactory(article=HeldFactory(article=MetSpecificationFactory().article).article)
    draft(KNOB)
    client = sign_in_as(role)
    forms = ("mend", "remove", "/new/", "/meets/")

    for page in (
        offer.article.get_absolute_url(),
        offer.supplier.get_absolute_url(),
        reverse("stores:list"),
        reverse("stores:suppliers"),
        reverse("stores:asked_for"),
    ):
        html = client.get(page).content.decode().partition("<main")[2]

        assert not [form for form in forms if f'{form}"' in html or f"{form}/" in html]


def test_a_script_in_a_name_is_only_text(as_coordinator):
    article = ArticleFactory(name="<script>alert(1)</script>")

    page = as_coordinator.get(article.get_absolute_url()).content.decode()

    assert "<script>alert" not in page
    assert "&lt;script&gt;alert(1)" in page
