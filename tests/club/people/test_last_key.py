"""Two coordinators at the same moment: one of them must stay."""

from __future__ import annotations

import threading
from collections.abc import Callable

import pytest
from django.db import connection

from club.base.access import Role
from club.people.actions.roles import LastKeyError, withdraw_role
from club.people.actions.sign_ins import bar_sign_in
from club.people.models import Account, RoleGrant
from tests.factories import AccountFactory, RoleGrantFactory


def at_once(*deeds: Callable[[], None]) -> list[str]:
    """Do all of these in threads that start together; how each ended."""
    start = threading.Barrier(len(deeds))
    ended: list[str] = []

    def run(deed: Callable[[], None]) -> None:
        start.wait()
        try:
            deed()
            ended.append("done")
        except LastKeyError:
            ended.append("refused")
        finally:
            connection.close()

    threads = [threading.Thread(target=run, args=(deed,)) for deed in deeds]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return sorted(ended)


@pytest.mark.django_db(transaction=True)
@pytest.mark.parametrize("_again", range(5))
def test_of_two_coordinators_who_go_at_once_one_stays(_again: int) -> None:
    first, second = AccountFactory(), AccountFactory()
    RoleGrantFactory(person=first.person, role=Role.COORDINATOR.value)
    grant = RoleGrantFactory(person=second.person, role=Role.COORDINATOR.value)

    ended = at_once(
        lambda: bar_sign_in(second, Account.objects.get(pk=first.pk)),
        lambda: withdraw_role(first, RoleGrant.objects.get(pk=grant.pk)),
    )

    assert ended == ["done", "refused"]
    assert RoleGrant.objects.keys_to_the_club().count() == 1
