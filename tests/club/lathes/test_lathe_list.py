from __future__ import annotations

import pytest
from django.urls import reverse

from club.base.access import Role
from club.base.quantities.length import parse_length
from tests.factories import LatheFactory, WorkshopFactory

pytestmark = pytest.mark.django_db


@pytest.fixture
def kiln():
    return WorkshopFactory(name="Kiln Room")


def test_the_queries_do_not_grow_with_the_lathes(as_coordinator, django_assert_max_num_queries):
    LatheFactory.create_batch(40)

    with django_assert_max_num_queries(12):
        page = as_coordinator.get(reverse("lathes:list"))

    assert len(page.context["page"].object_list) == 40


def test_htmx_gets_only_the_lathes(as_coordinator):
    LatheFactory()

    answer = as_coordinator.get(reverse("lathes:list"), headers={"HX-Request": "true"})

    assert "<!doctype" not in answer.content.decode()
    assert "HX-Request" in answer["Vary"]


def test_it_is_narrowed_by_number_words_workshop_and_condition(as_coordinator, kiln):
    one = LatheFactory(workshop=kiln, number=71, plate="Bowl lathe")
    LatheFactory(number=72, condition="out", condition_reason="quill")

    def found(**asked):
        page = as_coordinator.get(reverse("lathes:list"), asked).context["page"]
        return [lathe.number for lathe in page.object_list]

    assert found(q="71") == [71]
    assert found(q="bowl") == [71]
    assert found(q="quill") == [72]
    assert found(workshop=one.workshop_id) == [71]
    assert found(condition="out") == [72]
    assert found(q="nothing like it") == []
    assert len(found(workshop="x", condition="y", page="zz")) == 2


def test_an_empty_club_is_told_how_to_begin(as_coordinator, sign_in_as):
    assert "Bring in a list" in as_coordinator.get(reverse("lathes:list")).content.decode()
    assert (
        "A coordinator brings them in" in sign_in_as(Role.HELPER).get(reverse("lathes:list")).content.decode()
    )


def test_lengths_stand_in_the_readers_units(as_coordinator, kiln):
    LatheFactory(workshop=kiln, swing_over_bed=parse_length("12 in"))
    as_coordinator.account.lengths = "millimetres"
    as_coordinator.account.save()

    page = as_coordinator.get(reverse("lathes:list")).content.decode()

    assert "304.8\u00a0mm" in page
    assert "12\u00a0in" not in page
