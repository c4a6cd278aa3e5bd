from __future__ import annotations

import re

import pytest
from axes.models import AccessAttempt
from django.db import IntegrityError, transaction
from django.test import Client

from club.base.access import Role
from club.base.changes import changes_of
from club.base.models import Change
from club.people.actions.sign_ins import LEGIBLE, NameTakenError, first_password, give_sign_in
from club.people.models import Account
from tests.conftest import SignInAs
from tests.factories import PASSWORD, AccountFactory, PersonFactory

pytestmark = pytest.mark.django_db


def give(client: Client, person, name: str = "odo"):
    return client.post(f"/people/{person.pk}/sign-in/give/", {"name": name})


def sign_in(client: Client, password: str):
    return client.post("/people/sign-in/", {"username": "odo", "password": password})


def password_on(answer) -> str:
    (password,) = re.findall(r"[a-z2-9]{4}-[a-z2-9]{4}-[a-z2-9]{4}", answer.content.decode())
    return str(password)


def test_the_first_password_is_shown_once_and_signs_in(as_coordinator: Client, client: Client) -> None:
    person = PersonFactory(name="Odo Falk")

    answer = give(as_coordinator, person)

    assert sign_in(client, password_on(answer)).status_code == 302
    assert client.get("/people/me/").headers["Location"] == "/people/me/password/"
    assert "no-store" in answer.headers["Cache-Control"]
    assert password_on(answer) not in as_coordinator.get(person.get_absolute_url()).content.decode()


def test_no_change_holds_the_password(as_coordinator: Client) -> None:
    person = PersonFactory()

    password = password_on(give(as_coordinator, person))

    assert changes_of(person).get().lines[0] == ["sign-in name", "", "odo"]
    assert not [change for change in Change.objects.all() if password in str(vars(change))]
    assert "argon2" not in str([vars(change) for change in Change.objects.all()])


def test_no_session_holds_the_password(as_coordinator: Client) -> None:
    password = password_on(give(as_coordinator, PersonFactory()))

    assert password not in str(dict(as_coordinator.session))


def test_a_first_password_is_long_and_legible() -> None:
    made = {first_password() for _ in range(50)}

    assert len(made) == 50
    assert all(set(password) <= {*LEGIBLE, "-"} and len(password) == 14 for password in made)
    assert not set(LEGIBLE) & set("01ilo")


@pytest.mark.parametrize("name", ["odo", "ODO", "Odo"])
def test_a_name_that_is_taken_is_refused_in_whatever_case(as_coordinator: Client, name: str) -> None:
    AccountFactory(name="odo")
    person = PersonFactory()

    answer = give(as_coordinator, person, name)

    assert answer.status_code == 422
    assert "Somebody signs in with that name already." in answer.content.decode()
    assert not Account.objects.filter(person=person).exists()


def test_the_database_refuses_the_same_name_in_another_case() -> None:
    AccountFactory(name="odo")

    with pytest.raises(IntegrityError), transaction.atomic():
        AccountFactory(name="ODO")


def test_whoever_is_slower_learns_that_the_name_is_taken() -> None:
    AccountFactory(name="odo")

    with pytest.raises(NameTakenError):
        give_sign_in(None, PersonFactory(), "Odo", PASSWORD)


@pytest.mark.parametrize("name", ["", "o d o", "<b>", "odo\x00", "o" * 61, "odo/falk"])
def test_a_name_that_won_t_do_is_refused(as_coordinator: Client, name: str) -> None:
    person = PersonFactory()

    assert give(as_coordinator, person, name).status_code == 422
    assert not Account.objects.filter(person=person).exists()


def test_a_person_has_one_sign_in(as_coordinator: Client) -> None:
    account = AccountFactory(name="odo")

    answer = give(as_coordinator, account.person, "odo.two")

    assert answer.headers["Location"] == account.person.get_absolute_url()
    assert Account.objects.filter(person=account.person).get().name == "odo"


def test_it_asks_before_a_password_is_made_anew(as_coordinator: Client) -> None:
    account = AccountFactory()

    as_coordinator.get(f"/people/{account.person_id}/sign-in/password/")

    assert Account.objects.get(pk=account.pk).check_password(PASSWORD)


def test_a_new_first_password_ends_the_old_one_and_the_wait(as_coordinator: Client, client: Client) -> None:
    account = AccountFactory(name="odo")
    AccessAttempt.objects.create(username="odo", ip_address="127.0.0.1", failures_since_start=9)
    client.force_login(account)

    answer = as_coordinator.post(f"/people/{account.person_id}/sign-in/password/")

    account.refresh_from_db()
    assert account.check_password(password_on(answer))
    assert account.must_change_password is True
    assert client.get("/people/me/").headers["Location"].startswith("/people/sign-in/")
    assert sign_in(client, password_on(answer)).status_code == 302
    assert ["password", "", "made anew"] in changes_of(account.person).get().lines


def test_somebody_without_a_sign_in_has_no_password_to_renew(as_coordinator: Client) -> None:
    person = PersonFactory()

    assert as_coordinator.post(f"/people/{person.pk}/sign-in/password/").status_code == 404
    assert as_coordinator.post(f"/people/{person.pk}/sign-in/bar/").status_code == 404


def test_it_asks_before_a_sign_in_is_barred(as_coordinator: Client) -> None:
    account = AccountFactory(person__name="Odo Falk")

    page = as_coordinator.get(f"/people/{account.person_id}/sign-in/bar/").content.decode()

    assert "Bar the sign-in of Odo Falk?" in page
    assert Account.objects.get(pk=account.pk).is_active


def test_a_barred_sign_in_is_out_at_once_and_can_be_opened(as_coordinator: Client, client: Client) -> None:
    account = AccountFactory(name="odo")
    client.force_login(account)

    as_coordinator.post(f"/people/{account.person_id}/sign-in/bar/")
    barred = client.get("/people/me/").status_code
    as_coordinator.post(f"/people/{account.person_id}/sign-in/open/")

    assert barred == 302
    assert sign_in(client, PASSWORD).status_code == 302
    lines = [change.lines for change in changes_of(account.person)]
    assert lines == [[["may sign in", "no", "yes"]], [["may sign in", "yes", "no"]]]


def test_the_last_coordinator_can_not_be_barred(as_coordinator: Client) -> None:
    person = as_coordinator.account.person  # type: ignore[attr-defined]

    asked = as_coordinator.get(f"/people/{person.pk}/sign-in/bar/")
    answer = as_coordinator.post(f"/people/{person.pk}/sign-in/bar/")

    assert (asked.status_code, answer.status_code) == (200, 422)
    for page in (asked, answer):
        assert "is the last coordinator of every workshop who can sign in" in page.content.decode()
    assert as_coordinator.get("/people/").status_code == 200


def test_of_two_coordinators_one_can_be_barred(as_coordinator: Client, sign_in_as: SignInAs) -> None:
    other = sign_in_as(Role.COORDINATOR).account  # type: ignore[attr-defined]

    as_coordinator.post(f"/people/{other.person_id}/sign-in/bar/")

    other.refresh_from_db()
    assert other.is_active is False
