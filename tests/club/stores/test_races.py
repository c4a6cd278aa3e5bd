from __future__ import annotations

import pytest
from django.urls import reverse

from club.base.models import Change
from club.stores.models import Article, Held, MetSpecification, Offer
from tests.at_once import at_once
from tests.factories import ArticleFactory, HeldFactory, SupplierFactory

pytestmark = pytest.mark.django_db(transaction=True)
AT_ONCE = 8
ONE_KEPT = {302: 1, 422: AT_ONCE - 1}


def test_of_many_who_count_one_row_at_once_exactly_one_is_kept(as_coordinator):
    held = HeldFactory(amount=50)
    address = reverse("stores:held_mend", args=[held.article_id, held.pk])

    answers = at_once(
        as_coordinator, address, [{"amount": str(number), "revision": "1"} for number in range(AT_ONCE)]
    )

    held.refresh_from_db()
    assert answers == ONE_KEPT
    assert held.revision == 2
    assert Change.objects.count() == 1


def test_what_is_sent_again_and_again_lies_on_the_shelf_once(as_coordinator):
    address = reverse("stores:held_new", args=[ArticleFactory().pk])

    answers = at_once(as_coordinator, address, [{"amount": "5", "fit": "on", "revision": "1"}] * AT_ONCE)

    assert answers == ONE_KEPT
    assert Held.objects.count() == Change.objects.count() == 1


def test_an_offer_sent_again_and_again_is_made_once(as_coordinator):
    form = {"supplier": SupplierFactory().pk, "label": "bag", "holds": "5", "price": "1", "revision": "1"}

    answers = at_once(
        as_coordinator, reverse("stores:offer_new", args=[ArticleFactory().pk]), [form] * AT_ONCE
    )

    assert answers == ONE_KEPT
    assert Offer.objects.count() == 1


def test_of_many_who_add_one_article_at_once_exactly_one_is_kept(as_coordinator):
    address = f"{reverse('stores:new')}?kind=piece"

    answers = at_once(as_coordinator, address, [{"name": "Corks", "specification": "Cork"}] * AT_ONCE)

    assert answers == ONE_KEPT
    assert Article.objects.count() == MetSpecification.objects.count() == 1


def test_a_specification_that_many_say_at_once_is_met_once(as_coordinator):
    article = ArticleFactory()

    answers = at_once(
        as_coordinator, reverse("stores:meets_new", args=[article.pk]), [{"other": "Cork"}] * AT_ONCE
    )

    assert answers == {302: AT_ONCE}
    assert MetSpecification.objects.count() == Change.objects.count() == 1
