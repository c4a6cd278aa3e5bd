from __future__ import annotations

import pytest
from django.test import Client

from club.base.changes import changes_of
from club.people.models import Person
from tests.factories import PersonFactory

pytestmark = pytest.mark.django_db

FACTS = {"name": "Odo Falk", "email": "odo@turners.example", "phone": "+49 30 1234", "age_band": "16_17"}


def test_a_person_is_added_with_a_change_that_says_so(as_coordinator: Client) -> None:
    answer = as_coordinator.post("/people/new/", FACTS)

    person = Person.objects.get(name="Odo Falk")
    change = changes_of(person).get()
    assert answer.headers["Location"] == person.get_absolute_url()
    assert (person.email, person.phone, person.age_band) == ("odo@turners.example", "+49 30 1234", "16_17")
    assert (change.deed, change.by) == ("made", as_coordinator.account)  # type: ignore[attr-defined]


def test_a_name_and_an_age_are_enough(as_coordinator: Client) -> None:
    as_coordinator.post("/people/new/", {"name": "Odo Falk", "age_band": "adult"})

    assert Person.objects.filter(name="Odo Falk", email="", phone="").exists()


def test_two_people_may_share_a_name_and_an_e_mail(as_coordinator: Client) -> None:
    for _ in range(2):
        as_coordinator.post("/people/new/", FACTS)

    assert Person.objects.filter(email="odo@turners.example").count() == 2


def test_a_refused_form_keeps_what_was_typed(as_coordinator: Client) -> None:
    answer = as_coordinator.post("/people/new/", FACTS | {"email": "odo at home", "name": "<b>Odo</b>"})

    page = answer.content.decode()
    assert answer.status_code == 422
    assert 'value="odo at home"' in page
    assert "&lt;b&gt;Odo&lt;/b&gt;" in page
    assert not Person.objects.filter(phone="+49 30 1234").exists()


@pytest.mark.parametrize(
    ("given", "field", "sentence"),
    [
        ({"name": " "}, "name", "Write the person's name"),
        ({"name": "x" * 121}, "name", "Use at most 120 characters."),
        ({"name": "a\x00b"}, "name", ""),
        ({"email": "odo at home"}, "email", "Write the e-mail as name@place.example"),
        ({"phone": "1" * 41}, "phone", "Use at most 40 characters."),
        ({"age_band": "old"}, "age_band", ""),
    ],
)
def test_nonsense_is_refused_with_one_sentence(
    as_coordinator: Client, given: dict[str, str], field: str, sentence: str
) -> None:
    answer = as_coordinator.post("/people/new/", FACTS | given)

    errors = answer.context["form"].errors
    assert answer.status_code == 422
    assert list(errors) == [field]
    assert len(errors[field]) == 1
    assert errors[field][0].startswith(sentence)


def test_mending_keeps_what_was_there_before(as_coordinator: Client) -> None:
    person = PersonFactory(name="Odo Falk", phone="1")

    as_coordinator.post(f"/people/{person.pk}/mend/", FACTS | {"revision": person.revision})

    person.refresh_from_db()
    assert person.phone == "+49 30 1234"
    assert ["phone", "1", "+49 30 1234"] in changes_of(person).get().lines


def test_a_mended_name_is_found_by_its_new_letters(as_coordinator: Client) -> None:
    person = PersonFactory(name="Odo")

    as_coordinator.post(f"/people/{person.pk}/mend/", FACTS | {"name": "Åke", "revision": person.revision})

    assert Person.objects.matching("ake").get() == person


def test_saving_without_a_change_keeps_no_change(as_coordinator: Client) -> None:
    person = PersonFactory(**FACTS)

    as_coordinator.post(f"/people/{person.pk}/mend/", FACTS | {"revision": person.revision})

    assert not changes_of(person).exists()


@pytest.mark.parametrize("revision", ["1", "", "99", "x"])
def test_a_form_from_before_somebody_else_mended_is_not_taken(as_coordinator: Client, revision: str) -> None:
    person = PersonFactory(name="Odo Falk", revision=2)

    answer = as_coordinator.post(f"/people/{person.pk}/mend/", FACTS | {"revision": revision})

    person.refresh_from_db()
    assert answer.status_code == 422
    assert person.phone == ""
    assert 'value="+49 30 1234"' in answer.content.decode()


def test_a_refused_form_is_still_headed_by_the_name_that_is_kept(as_coordinator: Client) -> None:
    person = PersonFactory(name="Odo Falk")

    answer = as_coordinator.post(
        f"/people/{person.pk}/mend/", FACTS | {"name": "Ode", "email": "x", "revision": "1"}
    )

    assert "<h1>Mend Odo Falk</h1>" in answer.content.decode()


def test_nobody_has_a_page_where_nobody_is(as_coordinator: Client) -> None:
    addresses = ["", "mend/", "roles/give/", "sign-in/give/", "sign-in/bar/", "sign-in/password/"]

    assert {as_coordinator.get(f"/people/9999/{rest}").status_code for rest in addresses} == {404}
    assert "There is nothing here" in as_coordinator.get("/people/9999/").content.decode()


def test_a_person_s_page_shows_facts_and_changes_escaped(as_coordinator: Client) -> None:
    as_coordinator.post("/people/new/", FACTS | {"name": "<i>Odo</i>"})
    person = Person.objects.get(phone="+49 30 1234")

    page = as_coordinator.get(person.get_absolute_url()).content.decode()

    assert "<h1>&lt;i&gt;Odo&lt;/i&gt;</h1>" in page
    assert "<i>Odo" not in page
    assert "16 or 17" in page
    assert "has no sign-in" in page.lower()
