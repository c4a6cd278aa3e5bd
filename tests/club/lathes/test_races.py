from __future__ import annotations

import pytest
from django.db import connection
from django.urls import reverse

from club.base.models import Change
from club.lathes.models import Lathe, Workshop
from tests.at_once import at_once
from tests.factories import LatheFactory, WorkshopFactory

pytestmark = pytest.mark.django_db(transaction=True)
AT_ONCE = 12
LEAST = {"number": "7", "condition": "in_service"}


def test_of_many_who_mend_one_lathe_at_once_exactly_one_is_kept(as_coordinator):
    lathe = LatheFactory(number=7)
    form = LEAST | {"workshop": lathe.workshop_id, "revision": "1"}

    answers = at_once(
        as_coordinator,
        reverse("lathes:mend", args=[lathe.pk]),
        [form | {"plate": f"Plate {number}"} for number in range(AT_ONCE)],
    )

    lathe.refresh_from_db()
    assert answers == {302: 1, 422: AT_ONCE - 1}
    assert lathe.revision == 2
    assert Change.objects.get().lines[-1] == ["maker's plate", "", lathe.plate]


def test_of_many_who_add_one_number_at_once_exactly_one_is_kept(as_coordinator):
    form = LEAST | {"workshop": WorkshopFactory().pk}

    answers = at_once(as_coordinator, reverse("lathes:new"), [form] * AT_ONCE)

    assert answers == {302: 1, 422: AT_ONCE - 1}
    assert Lathe.objects.count() == Change.objects.count() == 1


def test_of_many_who_name_one_workshop_at_once_exactly_one_is_kept(as_coordinator):
    form = {"name": "Long Barn", "zone": "Europe/Oslo"}

    answers = at_once(as_coordinator, reverse("lathes:workshop_new"), [form] * AT_ONCE)

    assert answers == {302: 1, 422: AT_ONCE - 1}
    assert Workshop.objects.count() == 1


@pytest.mark.skipif("connection.vendor != 'sqlite'")
def test_sqlite_keeps_what_it_said_it_kept():
    """Write-ahead log and FULL: a commit is on the disk before it is answered (sqlite.org/pragma.html)."""
    with connection.cursor() as cursor:
        modes = [cursor.execute(f"PRAGMA {name}").fetchone()[0] for name in ("journal_mode", "synchronous")]

    assert modes == ["wal", 2]
