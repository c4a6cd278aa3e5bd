from __future__ import annotations

import datetime

import pytest
import time_machine
from axes.models import AccessAttempt
from django.test import Client

from club.people.throttle import listen_again
from tests.factories import PASSWORD, AccountFactory

pytestmark = pytest.mark.django_db

NOW = datetime.datetime(2026, 3, 4, 18, 0, tzinfo=datetime.UTC)


@pytest.fixture(autouse=True)
def clock():
    with time_machine.travel(NOW, tick=False) as traveller:
        yield traveller


@pytest.fixture(autouse=True)
def ilse() -> None:
    AccountFactory(name="ilse.b")


def sign_in(client: Client, password: str, name: str = "ilse.b", address: str = "192.0.2.1"):
    return client.post(
        "/people/sign-in/", {"username": name, "password": password}, headers={}, REMOTE_ADDR=address
    )


def try_wrong(client: Client, times: int, **where: str) -> list[int]:
    return [sign_in(client, "wrong", **where).status_code for _ in range(times)]


def test_after_five_wrong_tries_the_name_is_not_listened_to(client: Client) -> None:
    assert try_wrong(client, 6) == [422, 422, 422, 422, 429, 429]


def test_then_the_right_password_is_refused_too(client: Client) -> None:
    try_wrong(client, 6)

    answer = sign_in(client, PASSWORD)

    assert answer.status_code == 429
    assert "_auth_user_id" not in client.session


def test_the_page_says_when_to_try_again_and_whom_to_ask(client: Client, clock) -> None:
    try_wrong(client, 6)
    clock.shift(datetime.timedelta(minutes=4, seconds=30))

    page = " ".join(sign_in(client, PASSWORD).content.decode().split())

    assert "It is listened to again in 11 minutes." in page
    assert "ask a coordinator of the club" in page


def test_a_quarter_of_an_hour_later_the_right_password_is_taken(client: Client, clock) -> None:
    try_wrong(client, 6)
    clock.shift(datetime.timedelta(minutes=15, seconds=1))

    assert sign_in(client, PASSWORD).status_code == 302


def test_shortly_before_it_is_not(client: Client, clock) -> None:
    try_wrong(client, 6)
    clock.shift(datetime.timedelta(minutes=14, seconds=59))

    assert sign_in(client, PASSWORD).status_code == 429


def test_tries_while_waiting_do_not_lengthen_the_wait(client: Client, clock) -> None:
    try_wrong(client, 6)
    clock.shift(datetime.timedelta(minutes=10))
    try_wrong(client, 3)
    clock.shift(datetime.timedelta(minutes=5, seconds=1))

    assert sign_in(client, PASSWORD).status_code == 302


def test_capitals_do_not_make_five_more_tries(client: Client) -> None:
    try_wrong(client, 3)

    assert try_wrong(client, 2, name="ILSE.B") == [422, 429]


def test_an_unknown_name_is_throttled_like_a_known_one(client: Client) -> None:
    assert try_wrong(client, 6, name="nobody") == [422, 422, 422, 422, 429, 429]


def test_another_place_is_still_listened_to(client: Client) -> None:
    try_wrong(client, 6)

    assert sign_in(client, PASSWORD, address="192.0.2.2").status_code == 302


def test_another_name_from_the_same_place_is_still_listened_to(client: Client) -> None:
    AccountFactory(name="odo")
    try_wrong(client, 6)

    assert sign_in(client, PASSWORD, name="odo").status_code == 302


def test_a_right_password_forgets_the_wrong_ones(client: Client) -> None:
    try_wrong(client, 4)
    sign_in(client, PASSWORD)
    client.post("/people/sign-out/")

    assert try_wrong(client, 4) == [422, 422, 422, 422]


def test_a_name_can_be_listened_to_again_before_its_time(client: Client) -> None:
    try_wrong(client, 6)

    listen_again("ILSE.B")

    assert sign_in(client, PASSWORD).status_code == 302


def test_no_password_is_kept_with_the_tries(client: Client) -> None:
    sign_in(client, "a secret tried in vain")

    kept = AccessAttempt.objects.get()

    assert "a secret tried in vain" not in " ".join(str(value) for value in vars(kept).values())
