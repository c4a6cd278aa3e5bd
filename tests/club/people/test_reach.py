"""A coordinator of one workshop reaches no further than that workshop."""

from __future__ import annotations

import pytest
from django.test import Client

from club.base.access import Role
from club.lathes.models import Workshop
from tests.conftest import SignInAs
from tests.factories import AccountFactory, PersonFactory, RoleGrantFactory, WorkshopFactory

pytestmark = pytest.mark.django_db


@pytest.fixture
def here() -> Workshop:
    return WorkshopFactory(name="Kiln Room")


@pytest.fixture
def local(sign_in_as: SignInAs, here: Workshop) -> Client:
    return sign_in_as(Role.COORDINATOR, here)


def writes_to(person) -> list[str]:
    base = f"/people/{person.pk}"
    return [f"{base}/mend/", f"{base}/sign-in/password/", f"{base}/sign-in/bar/", f"{base}/sign-in/open/"]


def give(client: Client, person, role: Role, workshop: object = ""):
    return client.post(f"/people/{person.pk}/roles/give/", {"role": role.value, "workshop": workshop})


def test_they_give_roles_in_their_own_workshop(local: Client, here: Workshop) -> None:
    person = PersonFactory()

    give(local, person, Role.COORDINATOR, here.pk)

    assert person.role_grants.get().workshop == here


def test_they_give_none_in_another_or_in_every_workshop(local: Client) -> None:
    person = PersonFactory()

    answers = [give(local, person, Role.HELPER, WorkshopFactory().pk), give(local, person, Role.HELPER)]

    assert [answer.status_code for answer in answers] == [422, 422]
    assert "your own role doesn&#x27;t reach further" in answers[0].content.decode()
    assert not person.role_grants.exists()


def test_they_give_themselves_no_wider_role(local: Client) -> None:
    person = local.account.person  # type: ignore[attr-defined]

    give(local, person, Role.COORDINATOR)

    assert person.role_grants.get().workshop is not None


def test_the_form_offers_only_their_workshop(local: Client) -> None:
    WorkshopFactory(name="Sluice Room")

    page = local.get(f"/people/{PersonFactory().pk}/roles/give/").content.decode()

    assert "Kiln Room" in page
    assert "Sluice Room" not in page
    assert "every workshop" not in page


@pytest.mark.parametrize("everywhere", [True, False])
def test_they_withdraw_no_role_beyond_their_workshop(local: Client, everywhere: bool) -> None:
    grant = RoleGrantFactory(role=Role.HELPER.value, workshop=None if everywhere else WorkshopFactory())

    answer = local.post(f"/people/{grant.person_id}/roles/{grant.pk}/withdraw/")

    assert answer.status_code == 403
    assert grant.person.role_grants.exists()


def test_they_withdraw_one_in_their_workshop(local: Client, here: Workshop) -> None:
    grant = RoleGrantFactory(role=Role.HELPER.value, workshop=here)

    local.post(f"/people/{grant.person_id}/roles/{grant.pk}/withdraw/")

    assert not grant.person.role_grants.exists()


@pytest.mark.parametrize("role", [Role.COORDINATOR, Role.INSTRUCTOR, Role.TREASURER])
def test_they_can_not_take_over_somebody_who_is_staff_elsewhere(local: Client, role: Role) -> None:
    account = AccountFactory()
    RoleGrantFactory(person=account.person, role=role.value)
    password = account.password

    answers = [local.post(address) for address in writes_to(account.person)]

    account.refresh_from_db()
    assert [answer.status_code for answer in answers] == [403] * 4
    assert (account.password, account.is_active) == (password, True)


def test_they_give_no_sign_in_to_somebody_who_is_staff_elsewhere(local: Client) -> None:
    person = RoleGrantFactory(role=Role.COORDINATOR.value).person

    answer = local.post(f"/people/{person.pk}/sign-in/give/", {"name": "mine.now"})

    assert answer.status_code == 403
    assert person.sign_in is None


def test_they_look_after_students_and_their_own_staff(local: Client, here: Workshop) -> None:
    student, helper = AccountFactory(), AccountFactory()
    RoleGrantFactory(person=student.person, role=Role.STUDENT.value)
    RoleGrantFactory(person=helper.person, role=Role.HELPER.value, workshop=here)

    for account in (student, helper):
        local.post(f"/people/{account.person_id}/sign-in/bar/")
        account.refresh_from_db()

    assert (student.is_active, helper.is_active) == (False, False)


def test_a_page_beyond_their_reach_says_who_mends_it(local: Client) -> None:
    person = RoleGrantFactory(role=Role.INSTRUCTOR.value).person

    page = local.get(person.get_absolute_url()).content.decode()

    assert "a coordinator of every workshop mends this person" in page
    assert "/mend/" not in page
    assert "/withdraw/" not in page
    assert "/sign-in/give/" not in page
