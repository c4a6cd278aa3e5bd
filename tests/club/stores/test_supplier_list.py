from __future__ import annotations

import pytest
from django.urls import reverse

from tests.factories import OfferFactory, SupplierFactory

pytestmark = pytest.mark.django_db


def test_suppliers_stand_in_the_order_of_their_names(as_coordinator):
    for name in ("Oakapple Timber", "Beech and Daughters", "Net Loft Oils"):
        OfferFactory(supplier=SupplierFactory(name=name))

    page = as_coordinator.get(reverse("stores:suppliers"))

    names = [line.supplier.name for line in page.context["lines"]]
    assert names == ["Beech and Daughters", "Net Loft Oils", "Oakapple Timber"]
