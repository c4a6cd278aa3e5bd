from __future__ import annotations

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from club.base.access import Role
from tests.factories import AccountFactory, PersonFactory, RoleGrantFactory, WorkshopFactory

pytestmark = pytest.mark.django_db


def names_on(client: Client, **asked: str) -> list[str]:
    return [person.name for person in client.get("/people/", asked).context["page"]]


def test_everybody_is_listed_by_name_with_roles_and_sign_in(as_coordinator: Client) -> None:
    ilse = AccountFactory(person__name="ilse Brandt").person
    RoleGrantFactory(person=ilse, role=Role.HELPER, workshop=WorkshopFactory(name="Kiln Room"))
    RoleGrantFactory(person=ilse, role=Role.TREASURER)
    AccountFactory(person__name="Åsa", is_active=False)
    PersonFactory(name="Zeno")

    page = as_coordinator.get("/people/").content.decode()

    assert page.index("Åsa") < page.index("ilse Brandt") < page.index("Zeno")
    assert "helper, Kiln Room; treasurer" in page
    assert "barred" in page


@pytest.mark.parametrize("words", ["oberg", "ÖBERG", "asa  ob", "Öberg Åsa"])
def test_a_part_of_a_name_finds_it_without_accents_or_case(as_coordinator: Client, words: str) -> None:
    PersonFactory(name="Åsa Öberg")
    PersonFactory(name="Odo Falk")

    assert names_on(as_coordinator, name=words) == ["Åsa Öberg"]


@pytest.mark.parametrize("words", ["%", "_", "' OR 1=1 --", "\x00<script>", "{{ page }}", "x" * 5000])
def test_hostile_words_find_nobody_and_do_no_harm(as_coordinator: Client, words: str) -> None:
    PersonFactory(name="Odo Falk")

    answer = as_coordinator.get("/people/", {"name": words})

    assert answer.status_code == 200
    assert "Show everybody" in answer.content.decode()
    assert "<script>" not in answer.content.decode().partition('<div id="people">')[2].partition("</main>")[0]


def test_a_script_gets_only_the_part_that_changes(as_coordinator: Client) -> None:
    PersonFactory(name="Odo Falk")

    answer = as_coordinator.get("/people/", {"name": "odo"}, headers={"HX-Request": "true"})

    page = answer.content.decode()
    assert "Odo Falk" in page
    assert "<html" not in page
    assert "HX-Request" in answer.headers["Vary"]


def test_going_back_in_the_browser_gets_the_whole_page(as_coordinator: Client) -> None:
    headers = {"HX-Request": "true", "HX-History-Restore-Request": "true"}

    assert "<html" in as_coordinator.get("/people/", headers=headers).content.decode()


def test_a_page_holds_twenty_five_and_leads_on_with_the_same_words(as_coordinator: Client) -> None:
    for number in range(27):
        PersonFactory(name=f"Turner {number:02}")

    first = as_coordinator.get("/people/", {"name": "turner"})

    assert len(first.context["page"]) == 25
    assert "?name=turner&amp;page=2" in first.content.decode()
    assert names_on(as_coordinator, name="turner", page="2") == ["Turner 25", "Turner 26"]


@pytest.mark.parametrize("page", ["0", "99", "x", "-1"])
def test_a_page_that_is_not_there_shows_one_that_is(as_coordinator: Client, page: str) -> None:
    assert as_coordinator.get("/people/", {"page": page}).status_code == 200


def test_a_longer_list_asks_the_database_no_more_often(as_coordinator: Client) -> None:
    def queries() -> int:
        with CaptureQueriesContext(
            connection,
        ) as asked:
            as_coordinator.get("/people/")
        return len(asked)

    AccountFactory(person=RoleGrantFactory(workshop=WorkshopFactory()).person)
    few = queries()
    for _ in range(24):
        AccountFactory(person=RoleGrantFactory(workshop=WorkshopFactory()).person)

    assert queries() == few
    assert few <= 12
