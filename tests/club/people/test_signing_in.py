from __future__ import annotations

import re
from unittest.mock import Mock

import pytest
from django.conf import settings
from django.contrib.auth.hashers import Argon2PasswordHasher
from django.contrib.sessions.models import Session
from django.test import Client
from django.urls import reverse

from tests.factories import PASSWORD, AccountFactory

pytestmark = pytest.mark.django_db

SIGN_IN = "/people/sign-in/"
NO_MATCH = "This name and this password don&#x27;t belong together."


def sign_in(client: Client, name: str, password: str = PASSWORD, **more: str):
    return client.post(SIGN_IN, {"username": name, "password": password, **more})


def is_signed_in(client: Client) -> bool:
    return "_auth_user_id" in client.session


def test_the_right_password_signs_in_and_leads_to_the_start(client: Client) -> None:
    AccountFactory(name="ilse.b")

    answer = sign_in(client, "ilse.b")

    assert (answer.status_code, answer.headers["Location"]) == (302, reverse("home:start"))
    assert is_signed_in(client)


def test_the_name_may_be_typed_in_any_case(client: Client) -> None:
    AccountFactory(name="ilse.b")

    sign_in(client, "ILSE.B")

    assert is_signed_in(client)


def test_the_password_may_not(client: Client) -> None:
    AccountFactory(name="ilse.b")

    sign_in(client, "ilse.b", PASSWORD.upper())

    assert not is_signed_in(client)


def test_blanks_around_a_password_count(client: Client) -> None:
    AccountFactory(name="ilse.b")

    sign_in(client, "ilse.b", f"{PASSWORD} ")

    assert not is_signed_in(client)


def test_the_password_is_kept_as_argon2_and_nothing_else_is_known() -> None:
    account = AccountFactory(password="")

    account.set_password(PASSWORD)

    assert account.password.startswith("argon2$argon2id$")
    assert settings.PASSWORD_HASHERS == ["django.contrib.auth.hashers.Argon2PasswordHasher"]


def test_wrong_name_wrong_password_and_barred_get_the_same_answer(client: Client) -> None:
    AccountFactory(name="ilse.b")
    AccountFactory(name="barred", is_active=False)

    answers = [
        sign_in(client, "ilse.b", "wrong"),
        sign_in(client, "nobody.here"),
        sign_in(client, "barred"),
    ]

    assert [answer.status_code for answer in answers] == [422, 422, 422]
    pages = {re.sub(r'value="[^"]*"', "", answer.content.decode()) for answer in answers}
    assert len(pages) == 1
    assert NO_MATCH in pages.pop()


def test_an_unknown_name_costs_a_hash_too(client: Client, monkeypatch: pytest.MonkeyPatch) -> None:
    encode = Mock(return_value="argon2$")
    monkeypatch.setattr(Argon2PasswordHasher, "encode", encode)

    sign_in(client, "nobody.here", "tried in vain")

    assert [call.args[0] for call in encode.call_args_list] == ["tried in vain"]


def test_an_empty_form_says_of_each_field_that_it_is_needed(client: Client) -> None:
    answer = sign_in(client, "", "")

    assert answer.status_code == 422
    assert set(answer.context["form"].errors) == {"username", "password"}


def test_what_was_typed_as_name_stays_and_can_do_no_harm(client: Client) -> None:
    hostile = '"><script>alert(1)</script>'

    answer = sign_in(client, hostile, "wrong")

    page = answer.content.decode()
    assert answer.status_code == 422
    assert "&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;" in page
    assert "<script>alert" not in page


@pytest.mark.parametrize(
    "text", ["ilse\x00b", "' OR 1=1 --", "\ud7ff\u202e", "n" * 5000, "{{ settings }}", "%s%n"]
)
def test_hostile_text_is_refused_like_any_wrong_name(client: Client, text: str) -> None:
    AccountFactory(name="ilse.b")

    answer = sign_in(client, text, text)

    assert answer.status_code == 422
    assert not is_signed_in(client)


def test_the_password_never_comes_back_in_the_page(client: Client) -> None:
    answer = sign_in(client, "ilse.b", "tried in vain")

    assert "tried in vain" not in answer.content.decode()


@pytest.mark.parametrize("wanted", ["/lathes/?q=5", "http://testserver/lathes/?q=5"])
def test_signing_in_leads_back_to_the_page_that_was_wanted(client: Client, wanted: str) -> None:
    AccountFactory(name="ilse.b")

    answer = sign_in(client, "ilse.b", next=wanted)

    assert answer.headers["Location"] == wanted


@pytest.mark.parametrize(
    "wanted",
    [
        "https://elsewhere.example/",
        "//elsewhere.example/",
        "/\\elsewhere.example",
        "javascript:alert(1)",
        "\x00/",
        "people:list",
        "lathes",
    ],
)
def test_signing_in_leads_nowhere_else(client: Client, wanted: str) -> None:
    AccountFactory(name="ilse.b")

    answer = sign_in(client, "ilse.b", next=wanted)

    assert answer.headers["Location"] == reverse("home:start")


def test_the_page_carries_only_own_addresses_along(client: Client) -> None:
    page = client.get(SIGN_IN, {"next": "https://elsewhere.example/"}).content.decode()

    assert "elsewhere" not in page


def test_the_wanted_page_survives_a_wrong_password(client: Client) -> None:
    answer = sign_in(client, "ilse.b", "wrong", next="/lathes/?q=5")

    assert 'name="next" value="/lathes/?q=5"' in answer.content.decode()


def test_whoever_is_signed_in_is_led_on(as_coordinator: Client) -> None:
    assert as_coordinator.get(SIGN_IN).headers["Location"] == reverse("home:start")


def test_the_key_of_the_session_is_new_after_signing_in(client: Client) -> None:
    AccountFactory(name="ilse.b")
    session = client.session
    session["before"] = True
    session.save()
    client.cookies[settings.SESSION_COOKIE_NAME] = str(session.session_key)
    old = session.session_key

    sign_in(client, "ilse.b")

    assert client.session.session_key != old
    assert not Session.objects.filter(session_key=old).exists()


def test_signing_out_ends_the_session(as_coordinator: Client) -> None:
    key = as_coordinator.session.session_key

    answer = as_coordinator.post("/people/sign-out/")

    assert answer.status_code == 302
    assert not Session.objects.filter(session_key=key).exists()
    assert as_coordinator.get("/people/me/").status_code == 302


def test_a_link_can_not_sign_anybody_out(as_coordinator: Client) -> None:
    answer = as_coordinator.get("/people/sign-out/")

    assert answer.status_code == 405
    assert is_signed_in(as_coordinator)


def test_a_form_from_elsewhere_is_not_taken() -> None:
    AccountFactory(name="ilse.b")
    client = Client(enforce_csrf_checks=True)

    answer = sign_in(client, "ilse.b")

    assert answer.status_code == 403
    assert "This form could not be taken" in answer.content.decode()
    assert not is_signed_in(client)


def test_the_cookie_is_kept_from_scripts_and_from_other_sites(client: Client) -> None:
    AccountFactory(name="ilse.b")

    sign_in(client, "ilse.b")

    cookie = client.cookies[settings.SESSION_COOKIE_NAME]
    assert cookie["httponly"] is True
    assert cookie["samesite"] == "Lax"
    assert bool(cookie["secure"]) is settings.HTTPS


def test_over_https_the_cookie_travels_encrypted_only(client: Client, settings) -> None:
    settings.SESSION_COOKIE_SECURE = True
    AccountFactory(name="ilse.b")

    sign_in(client, "ilse.b")

    assert client.cookies[settings.SESSION_COOKIE_NAME]["secure"] is True


def test_a_barred_account_is_out_at_once(as_coordinator: Client) -> None:
    account = as_coordinator.account  # type: ignore[attr-defined]
    account.is_active = False
    account.save()

    assert as_coordinator.get("/people/me/").headers["Location"].startswith(SIGN_IN)
