from __future__ import annotations

import pytest
from django.db import IntegrityError
from django.urls import reverse

from club.base.access import Role
from club.base.changes import changes_of
from tests.factories import LatheFactory, WorkshopFactory

pytestmark = pytest.mark.django_db


def test_one_is_made_and_mended_with_its_changes(as_coordinator):
    as_coordinator.post(
        reverse("lathes:workshop_new"), {"name": "Barn", "address": "", "zone": "Europe/Oslo"}
    )
    made = as_coordinator.get(reverse("lathes:workshops")).context["workshops"][0]

    as_coordinator.post(
        reverse("lathes:workshop_mend", args=[made.pk]),
        {"name": "Long Barn", "zone": "Europe/Oslo", "revision": "1"},
    )

    assert changes_of(made).first().lines == [["name", "Barn", "Long Barn"]]


def test_whoever_reads_one_workshop_is_led_to_no_other(sign_in_as):
    kiln = LatheFactory().workshop
    WorkshopFactory(name="Far Barn")
    client = sign_in_as(Role.HELPER, kiln)

    pages = [client.get(reverse(address)) for address in ("lathes:workshops", "lathes:list")]

    assert ["Far Barn" in page.content.decode() for page in pages] == [False, False]
    assert [shop.pk for shop in pages[0].context["workshops"]] == [kiln.pk]
    assert list(pages[1].context["form"].fields["workshop"].queryset) == [kiln]


@pytest.mark.parametrize("name", ["Barn", "BARN", "barn "])
def test_two_are_never_called_the_same(as_coordinator, name):
    WorkshopFactory(name="Barn")

    answer = as_coordinator.post(reverse("lathes:workshop_new"), {"name": name, "zone": "Europe/Oslo"})

    assert "There is a workshop of this name already" in answer.content.decode()


def test_one_may_change_the_capitals_of_its_own_name(as_coordinator):
    barn = WorkshopFactory(name="barn")

    as_coordinator.post(
        reverse("lathes:workshop_mend", args=[barn.pk]),
        {"name": "Barn", "zone": "Europe/Oslo", "revision": "1"},
    )

    barn.refresh_from_db()
    assert barn.name == "Barn"


def zone_offered(client):
    return client.get(reverse("lathes:workshop_new")).context["form"]["zone"].value()


def test_the_zone_of_the_installation_is_offered(as_coordinator, settings):
    settings.TIME_ZONE = "Europe/Dublin"

    assert zone_offered(as_coordinator) == "Europe/Dublin"


def test_no_zone_is_offered_where_nobody_set_one(as_coordinator, settings):
    settings.TIME_ZONE = "UTC"

    assert not zone_offered(as_coordinator)


def test_a_workshop_keeps_its_own_zone_on_its_form(as_coordinator, settings):
    settings.TIME_ZONE = "Europe/Dublin"
    workshop = WorkshopFactory(zone="America/Chicago")

    page = as_coordinator.get(reverse("lathes:workshop_mend", args=[workshop.pk]))

    assert page.context["form"]["zone"].value() == "America/Chicago"


@pytest.mark.parametrize("zone", ["", "Europe/Nowhere", "../etc/passwd", "UTC+1"])
def test_an_unknown_zone_is_refused(as_coordinator, zone):
    answer = as_coordinator.post(reverse("lathes:workshop_new"), {"name": "Barn", "zone": zone})

    assert "Write the time zone as Europe/Dublin" in answer.content.decode()


def test_two_people_at_one_workshop_do_not_overwrite_each_other(as_coordinator):
    barn = WorkshopFactory(name="Barn", revision=2)
    opened_early = {"name": "Old Barn", "zone": "Europe/Oslo", "revision": "1"}

    answer = as_coordinator.post(reverse("lathes:workshop_mend", args=[barn.pk]), opened_early)

    barn.refresh_from_db()
    assert answer.status_code == 422
    assert "Somebody else changed this" in answer.content.decode()
    assert 'value="Old Barn"' in answer.content.decode()
    assert barn.name == "Barn"


def test_the_database_too_keeps_names_apart_that_differ_in_capitals_only(as_coordinator):
    WorkshopFactory(name="Barn")

    with pytest.raises(IntegrityError):
        WorkshopFactory(name="BARN")
