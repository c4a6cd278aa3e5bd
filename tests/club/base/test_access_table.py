"""Every address there is, tried by every role and by nobody, with every method, against the table."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from django.db import transaction
from django.http import HttpResponse
from django.test import Client
from django.urls import URLPattern, URLResolver, get_resolver, reverse

from club.base.access_table import METHODS, TABLE
from club.base.roles import Everyone, Role, Who
from club.classes.actions.lists import sign_up
from projects.library.course_actions import add_course
from projects.library.models import Course
from tests.club.classes.rows import NOW, kept_edition, planned
from tests.conftest import SignInAs
from tests.factories import (
    AccountFactory,
    HeldFactory,
    LatheFactory,
    MetSpecificationFactory,
    OfferFactory,
    PersonFactory,
    RoleGrantFactory,
    WorkshopFactory,
)
from tests.projects.library.examples import KNOB
from tests.projects.library.rows import draft

NOBODY = "nobody"
TRIED = ("GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS")


def all_patterns(
    patterns: list[URLPattern | URLResolver], namespace: str = ""
) -> Iterator[tuple[str, frozenset[str]]]:
    """Every address of the installation with the names of its arguments."""
    for entry in patterns:
        if isinstance(entry, URLResolver):
            inner = f"{namespace}{entry.namespace}:" if entry.namespace else namespace
            yield from all_patterns(entry.url_patterns, inner)
        else:
            assert entry.name, f"{entry.pattern} has no name, so the table can't hold it"
            yield f"{namespace}{entry.name}", frozenset(entry.pattern.converters)


ADDRESSES = dict(all_patterns(get_resolver().url_patterns))


def samples() -> dict[str, dict[str, int | str]]:
    """A row for each argument, by address or by the room of the address."""
    workshop = WorkshopFactory()
    lathe = LatheFactory(workshop=workshop)
    grant = RoleGrantFactory(person=AccountFactory().person, workshop=workshop)
    edition = draft()
    course = add_course(None, Course(key="evenings", title="Evenings", summary="Two."), [edition.project.key])
    project = {"key": edition.project.key, "number": edition.number}
    courses = ("projects:course", "projects:course_mend", "projects:course_delete")
    return {
        "home": {"pk": lathe.pk},
        **dict.fromkeys(("home:project", "home:edition", "home:handout", "home:handout_pdf"), project),
        "projects": {**project, "older": edition.number, "newer": edition.number},
        "projects:schema": {"form": "library"},
        **{address: {"key": course.key} for address in courses},
        "lathes": {"pk": lathe.pk},
        "lathes:workshop": {"pk": workshop.pk},
        "lathes:workshop_mend": {"pk": workshop.pk},
        "projects:wood": {"key": "maple_sugar"},
        **stores_samples(),
        **class_samples(),
        "people": {"pk": grant.person_id},
        "people:withdraw_role": {"pk": grant.pk, "person_pk": grant.person_id},
    }


def stores_samples() -> dict[str, dict[str, int | str]]:
    offer = OfferFactory()
    held = HeldFactory(article=offer.article)
    met = MetSpecificationFactory(article=offer.article)
    parts: dict[str, Any] = {"offer": offer, "held": held, "meets": met}
    own = {f"stores:{name}_{deed}": part for name, part in parts.items() for deed in ("mend", "remove")}
    whose = ("supplier", "supplier_mend", "supplier_remove")
    return {
        "stores": {"pk": offer.article_id},
        **{address: {"article_pk": offer.article_id, "pk": part.pk} for address, part in own.items()},
        **{f"stores:{name}": {"pk": offer.supplier_id} for name in whose},
    }


def class_samples() -> dict[str, dict[str, int | str]]:
    """A class with somebody in it."""
    session = planned(edition=kept_edition(replace(KNOB, key="knob-that-is-taught")))
    line = sign_up(None, session, PersonFactory(), NOW)
    row: dict[str, int | str] = {"pk": session.pk, "number": line.number}
    printed = [address for address in ADDRESSES if address.startswith("home:class_")]
    return {"classes": row, **dict.fromkeys(printed, row)}


def arguments_of(address: str, rows: dict[str, dict[str, int | str]]) -> dict[str, int | str]:
    known = rows.get(address) or rows.get(address.partition(":")[0], {})
    missing = ADDRESSES[address] - known.keys()
    assert not missing, f"samples() has no row for {sorted(missing)} of {address}: add one"
    return {name: known[name] for name in ADDRESSES[address]}


def is_let_in(who: Who, role: str) -> bool:
    if who is Everyone.ANYONE:
        return True
    return role != NOBODY and (who is Everyone.SIGNED_IN or role in who)


def expected(address: str, role: str, method: str) -> bool:
    who = TABLE.get((address, "GET" if method == "HEAD" else method))
    return who is not None and is_let_in(who, role)


def was_let_in(address: str, answer: HttpResponse) -> bool:
    """Whether the view answered: a page, its own redirect, an unknown row or a form with errors."""
    if answer.status_code in (403, 405):
        return False
    assert answer.status_code < 500, f"{address} broke with {answer.status_code}"
    went = answer.headers.get("Location", "")
    sent_away = went.startswith(reverse("people:sign_in"))
    return not (sent_away and ("next=" in went or "GET" not in METHODS[address]))


def try_out(client: Client, url: str, method: str) -> HttpResponse:
    """One request, whose writes are taken back before the next."""
    with transaction.atomic():
        answer: Any = client.generic(method, url, content_type="application/x-www-form-urlencoded")
        transaction.set_rollback(True)
    return answer  # type: ignore[no-any-return]


def test_the_table_has_a_row_for_every_address_and_no_other_row() -> None:
    assert set(METHODS) == set(ADDRESSES)


def test_an_address_stands_in_the_table_once() -> None:
    from club.base.access_table import ROWS

    addresses = [address for address, _methods, _who in ROWS]

    assert len(addresses) == len(set(addresses))


@pytest.mark.django_db
@pytest.mark.parametrize("address", sorted(ADDRESSES))
def test_an_address_lets_in_whom_the_table_names_and_nobody_else(address: str, sign_in_as: SignInAs) -> None:
    clients = {NOBODY: Client(), **{str(role): sign_in_as(role) for role in Role}}
    url = reverse(address, kwargs=arguments_of(address, samples()))

    found = {
        (role, method): was_let_in(address, try_out(client, url, method))
        for role, client in clients.items()
        for method in TRIED
    }

    assert found == {key: expected(address, *key) for key in found}


# What the rows must say, kept apart from the table so that a slip in it shows. By the club's own rule.
@pytest.mark.parametrize(
    ("address", "method", "roles"),
    [
        ("people:list", "GET", {"coordinator"}),
        ("people:mend", "POST", {"coordinator"}),
        ("people:give_role", "POST", {"coordinator"}),
        ("people:give_sign_in", "POST", {"coordinator"}),
        ("lathes:import", "POST", {"coordinator"}),
        ("lathes:mend", "POST", {"coordinator"}),
        ("lathes:condition", "POST", {"coordinator", "instructor", "helper", "safety_officer"}),
        ("lathes:export", "GET", {"coordinator", "instructor", "safety_officer"}),
        ("lathes:list", "GET", {"coordinator", "instructor", "helper", "safety_officer", "treasurer"}),
        ("stores:list", "GET", {"coordinator", "instructor", "helper", "safety_officer", "treasurer"}),
        ("stores:held_mend", "POST", {"coordinator", "instructor"}),
        ("stores:remove", "POST", {"coordinator", "instructor"}),
        ("home:cards_pdf", "GET", {"coordinator", "instructor", "helper", "safety_officer", "treasurer"}),
    ],
)
def test_the_table_says_what_the_club_decided(address: str, method: str, roles: set[str]) -> None:
    assert TABLE[address, method] == frozenset(Role(role) for role in roles)


def test_only_these_open_without_signing_in() -> None:
    open_ones = {key for key, who in TABLE.items() if who is Everyone.ANYONE}

    assert open_ones == {
        ("home:start", "GET"),
        ("home:card", "GET"),
        ("lathes:measuring", "GET"),
        ("people:sign_in", "GET"),
        ("people:sign_in", "POST"),
        ("people:sign_out", "POST"),
    }
