from __future__ import annotations

import pytest
from django.test import Client

from club.base.access import Role
from club.base.changes import changes_of
from club.base.quantities.length import LengthStyle
from club.people.models import Account
from tests.conftest import SignInAs
from tests.factories import PASSWORD, AccountFactory, RoleGrantFactory, WorkshopFactory

pytestmark = pytest.mark.django_db

NEW = "a long grain of ash"


def change(client: Client, current: str = PASSWORD, new: str = NEW, again: str = NEW):
    return client.post("/people/me/password/", {"current": current, "new": new, "again": again})


def signed_in(**facts: object) -> tuple[Client, Account]:
    account = AccountFactory(**facts)
    client = Client()
    client.force_login(account)
    return client, account


def test_ones_own_page_shows_what_the_club_knows() -> None:
    client, account = signed_in(
        name="ilse.b", person__name="Ilse Brandt", person__email="ilse@turners.example"
    )
    RoleGrantFactory(person=account.person, role=Role.HELPER, workshop=WorkshopFactory(name="Kiln Room"))

    page = client.get("/people/me/").content.decode()

    for words in ("Ilse Brandt", "ilse.b", "ilse@turners.example", "helper, Kiln Room"):
        assert words in page


def test_lengths_are_shown_the_chosen_way_and_the_change_is_kept() -> None:
    client, account = signed_in()

    answer = client.post("/people/me/", _style("MILLIMETRES"))

    account.refresh_from_db()
    assert answer.status_code == 302
    assert account.lengths == _style("MILLIMETRES")["lengths"]
    assert changes_of(account.person).get().lines == [
        ["lengths are shown", "as they were typed", "millimetres"]
    ]


def _style(name: str) -> dict[str, str]:
    return {"lengths": LengthStyle[name].value}


def test_every_way_to_show_lengths_can_be_chosen() -> None:
    assert [value for value, _words in Account.LENGTH_STYLES] == [style.value for style in LengthStyle]


def test_an_unknown_way_is_refused_and_nothing_changes() -> None:
    client, account = signed_in()

    answer = client.post("/people/me/", {"lengths": "cubits"})

    account.refresh_from_db()
    assert answer.status_code == 422
    assert account.lengths == _style("AS_TYPED")["lengths"]


def test_the_new_password_holds_and_this_place_stays_signed_in() -> None:
    client, account = signed_in()
    elsewhere = Client()
    elsewhere.force_login(account)

    answer = change(client)

    account.refresh_from_db()
    assert answer.headers["Location"] == "/people/me/"
    assert account.check_password(NEW)
    assert client.get("/people/me/").status_code == 200
    assert elsewhere.get("/people/me/").status_code == 302


def test_the_change_is_kept_without_any_password() -> None:
    client, account = signed_in()

    change(client)

    kept = changes_of(account.person).get()
    assert kept.lines == [["password", "", "chosen by themselves"]]
    assert NEW not in str(vars(kept))


@pytest.mark.parametrize(
    ("given", "field", "sentence"),
    [
        ({"current": "wrong"}, "current", "This is not the password you signed in with."),
        ({"again": "something else"}, "again", "The two new passwords differ. Type the same one in both."),
        (
            {"new": PASSWORD, "again": PASSWORD},
            "new",
            "This is the password you have now. Choose another one.",
        ),
        (
            {"new": "short", "again": "short"},
            "new",
            "This password is too short. It must contain at least 10",
        ),
        ({"new": "password123", "again": "password123"}, "new", "This password is too common."),
        (
            {"new": "odo.falkner", "again": "odo.falkner"},
            "new",
            "The password is too similar to the sign-in name.",
        ),
    ],
)
def test_a_password_that_won_t_do_is_refused_with_one_sentence(given, field: str, sentence: str) -> None:
    client, account = signed_in(name="odo.falkner")

    answer = change(client, **given)

    account.refresh_from_db()
    assert answer.status_code == 422
    assert list(answer.context["form"].errors) == [field]
    assert answer.context["form"].errors[field][0].startswith(sentence)
    assert account.check_password(PASSWORD)


def test_with_a_first_password_every_page_leads_to_choosing_ones_own(sign_in_as: SignInAs) -> None:
    client = sign_in_as(Role.COORDINATOR)
    account = client.account  # type: ignore[attr-defined]
    account.must_change_password = True
    account.save()

    answers = [
        client.get(address) for address in ("/", "/people/", "/people/me/", "/lathes/", "/people/sign-in/")
    ]

    assert {answer.headers["Location"] for answer in answers} == {"/people/me/password/"}
    assert client.get("/people/me/password/").status_code == 200


def test_once_it_is_chosen_all_pages_open(sign_in_as: SignInAs) -> None:
    client = sign_in_as(Role.COORDINATOR)
    account = client.account  # type: ignore[attr-defined]
    account.must_change_password = True
    account.save()

    change(client)

    assert client.get("/people/").status_code == 200


def test_whoever_has_a_first_password_may_still_sign_out() -> None:
    client, _account = signed_in(must_change_password=True)

    client.post("/people/sign-out/")

    assert "_auth_user_id" not in client.session
