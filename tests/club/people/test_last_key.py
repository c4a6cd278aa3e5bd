"""Two coordinators at the same moment: one of them must stay."""

from __future__ import annotations

import contextlib
import threading
from collections.abc import Callable

import pytest
from django.db import connection

from club.base.access import Role
from club.people.actions.roles import LastKeyError, is_last_key, withdraw_role
from club.people.actions.sign_ins import bar_sign_in
from club.people.models import Account, Person, RoleGrant
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


@pytest.fixture(autouse=True)
def both_look_before_either_writes(monkeypatch: pytest.MonkeyPatch) -> None:
    """After looking, each waits a moment for the other, who comes only where nothing keeps them apart."""
    meeting = threading.Barrier(2)

    def look(person: Person) -> bool:
        last = is_last_key(person)
        with contextlib.suppress(threading.BrokenBarrierError):
            meeting.wait(timeout=0.5)
        return last

    monkeypatch.setattr("club.people.actions.roles.is_last_key", look)
    monkeypatch.setattr("club.people.actions.sign_ins.is_last_key", look)


@pytest.mark.django_db(transaction=True)
def test_of_two_coordinators_who_go_at_once_one_stays() -> None:
    first, second = AccountFactory(), AccountFactory()
    RoleGrantFactory(person=first.person, role=Role.COORDINATOR.value)
    grant = RoleGrantFactory(person=second.person, role=Role.COORDINATOR.value)

    ended = at_once(
        lambda: bar_sign_in(second, Account.objects.get(pk=first.pk)),
        lambda: withdraw_role(first, RoleGrant.objects.get(pk=grant.pk)),
    )

    assert ended == ["done", "refused"]
    assert RoleGrant.objects.keys_to_the_club().count() == 1
