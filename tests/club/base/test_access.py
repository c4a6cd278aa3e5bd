from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest
from django.contrib.auth.models import AnonymousUser
from django.test import Client
from django.urls import reverse

from club.base import access_table
from club.base.access import Grant, Role, may, workshops_where
from tests.factories import AccountFactory

HERE, THERE = 7, 8


def bearer(*grants: Grant, active: bool = True) -> Any:
    return SimpleNamespace(is_authenticated=True, is_active=active, grants=grants)


def test_a_role_opens_what_the_table_gives_it_and_nothing_else() -> None:
    helper = bearer(Grant(Role.HELPER, None))

    assert may(helper, "lathes:condition", "POST") is True
    assert may(helper, "lathes:mend", "POST") is False
    assert may(helper, "people:list") is False


def test_a_head_is_allowed_wherever_a_get_is() -> None:
    helper = bearer(Grant(Role.HELPER, None))

    assert may(helper, "lathes:list", "HEAD") is True
    assert may(helper, "people:list", "HEAD") is False


def test_an_unknown_address_is_closed_to_everybody() -> None:
    assert may(bearer(*(Grant(role, None) for role in Role)), "people:no_such_address") is False


def test_a_method_without_a_row_is_closed_to_everybody() -> None:
    assert may(bearer(*(Grant(role, None) for role in Role)), "people:list", "DELETE") is False


def test_a_role_in_one_workshop_reaches_no_further() -> None:
    instructor = bearer(Grant(Role.INSTRUCTOR, HERE))

    assert may(instructor, "lathes:condition", "POST", HERE) is True
    assert may(instructor, "lathes:condition", "POST", THERE) is False
    assert may(instructor, "lathes:condition", "POST") is True


def test_a_role_in_every_workshop_reaches_each() -> None:
    assert may(bearer(Grant(Role.INSTRUCTOR, None)), "lathes:condition", "POST", THERE) is True


def test_the_workshops_of_a_role_are_those_it_was_given_for() -> None:
    mixed = bearer(Grant(Role.COORDINATOR, HERE), Grant(Role.HELPER, THERE))

    assert workshops_where(mixed, "lathes:mend", "POST") == frozenset({HERE})
    assert workshops_where(mixed, "lathes:condition", "POST") == frozenset({HERE, THERE})
    assert workshops_where(mixed, "lathes:list", "HEAD") == frozenset({HERE, THERE})
    assert workshops_where(bearer(Grant(Role.COORDINATOR, None)), "lathes:mend", "POST") is None


def test_what_is_open_to_anyone_is_open_in_every_workshop() -> None:
    assert workshops_where(AnonymousUser(), "lathes:measuring") is None
    assert workshops_where(AnonymousUser(), "people:me") == frozenset()


def test_a_barred_account_keeps_its_roles_and_may_use_none() -> None:
    barred = bearer(Grant(Role.COORDINATOR, None), active=False)

    assert may(barred, "people:list") is False
    assert workshops_where(barred, "lathes:mend", "POST") == frozenset()


def test_a_stranger_is_sent_to_sign_in_and_back(client: Client, db: None) -> None:
    answer = client.get(reverse("people:list") + "?name=ilse")

    assert answer.status_code == 302
    assert answer.headers["Location"] == "/people/sign-in/?next=/people/%3Fname%3Dilse"


def test_a_stranger_who_posts_where_nothing_opens_is_sent_to_sign_in(client: Client, db: None) -> None:
    answer = client.post(reverse("people:open_sign_in", args=[1]))

    assert answer.headers["Location"] == "/people/sign-in/"


def test_a_fragment_sends_the_whole_page_to_sign_in(client: Client, db: None) -> None:
    headers = {"HX-Request": "true", "HX-Current-URL": "http://testserver/people/?name=il"}

    answer = client.get(reverse("people:list"), headers=headers)

    assert answer.status_code == 200
    assert answer.headers["HX-Redirect"] == "/people/sign-in/?next=/people/%3Fname%3Dil"


def test_somebody_without_the_role_gets_a_page_that_names_who_to_ask(client: Client, db: None) -> None:
    client.force_login(AccountFactory())

    answer = client.get(reverse("people:list"))

    assert answer.status_code == 403
    assert "ask a coordinator" in answer.content.decode()


def test_a_method_without_a_row_names_the_methods_there_are(as_coordinator: Client) -> None:
    answer = as_coordinator.delete(reverse("people:new"))

    assert answer.status_code == 405
    assert answer.headers["Allow"] == "GET, POST"


def test_an_address_without_a_row_is_refused_even_to_a_coordinator(
    as_coordinator: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delitem(access_table.METHODS, "people:list")

    assert as_coordinator.get(reverse("people:list")).status_code == 403


def test_a_tag_in_a_template_asks_the_same_table(as_coordinator: Client) -> None:
    from django.template import Context, Template

    words = '{% may "people:list" as open %}{{ open }} {% may "people:list" "DELETE" as gone %}{{ gone }}'

    shown = Template(words).render(Context({"user": as_coordinator.account}))  # type: ignore[attr-defined]

    assert shown == "True False"
    assert Template(words).render(Context({})) == "False False"
