from __future__ import annotations

from collections.abc import Callable

import pytest
from django.test import Client
from hypothesis import HealthCheck, settings

from club.base.access import Role
from club.lathes.models import Workshop
from club.people.models import Account
from club.start.debian import PAPER
from tests.factories import AccountFactory, RoleGrantFactory
from tests.paper import typesetting_is_quiet as typesetting_is_quiet

# A busy machine is no reason to fail: how fast examples come is the benchmark's matter.
settings.register_profile("house", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("house")

SignInAs = Callable[..., Client]


@pytest.fixture
def account_of(db: None) -> Callable[..., Account]:
    """account_of(Role.HELPER, workshop): an account with this role, everywhere or in one workshop."""

    def make(role: Role, workshop: Workshop | None = None, **facts: object) -> Account:
        account = AccountFactory(**facts)
        RoleGrantFactory(person=account.person, role=role.value, workshop=workshop)
        return account

    return make


@pytest.fixture
def sign_in_as(account_of: Callable[..., Account]) -> SignInAs:
    """sign_in_as(Role.HELPER, workshop): a client with this role signed in, as `client.account`."""

    def sign_in(role: Role, workshop: Workshop | None = None) -> Client:
        client = Client()
        client.account = account_of(role, workshop)  # type: ignore[attr-defined]
        client.force_login(client.account)  # type: ignore[attr-defined]
        return client

    return sign_in


@pytest.fixture
def as_coordinator(sign_in_as: SignInAs) -> Client:
    return sign_in_as(Role.COORDINATOR)


# Where a test asks for one of these, it asks the database.
ASKING = frozenset({"db", "transactional_db", "django_db_setup", "live_server"})


def pytest_itemcollected(item: pytest.Item) -> None:
    """Mark what asks the database, so that a second database need not run the rest again."""
    fixtures = set(getattr(item, "fixturenames", ()))
    if item.get_closest_marker("django_db") or fixtures & ASKING:
        item.add_marker("database")


def pytest_runtest_setup(item: pytest.Item) -> None:
    if item.get_closest_marker("pdf") and not PAPER.is_met():
        packages = " ".join(PAPER.packages)
        pytest.skip(f"Paper can't be made here: Debian's {packages} are missing.")
