from __future__ import annotations

import pytest
from django.db import IntegrityError, transaction
from django.test import Client

from club.base.access import Role
from club.base.changes import changes_of
from club.people.actions.roles import RoleHeldError, give_role, is_last_key
from club.people.models import RoleGrant
from tests.conftest import SignInAs
from tests.factories import AccountFactory, PersonFactory, RoleGrantFactory, WorkshopFactory

pytestmark = pytest.mark.django_db

EVERYWHERE = ""


def give(client: Client, person, role: Role, workshop: object = EVERYWHERE):
    return client.post(f"/people/{person.pk}/roles/give/", {"role": role.value, "workshop": workshop})


def withdraw(client: Client, grant: RoleGrant):
    return client.post(f"/people/{grant.person_id}/roles/{grant.pk}/withdraw/")


def test_a_role_is_given_in_one_workshop(as_coordinator: Client) -> None:
    person, workshop = PersonFactory(), WorkshopFactory(name="Kiln Room")

    answer = give(as_coordinator, person, Role.HELPER, workshop.pk)

    grant = person.role_grants.get()
    assert answer.headers["Location"] == person.get_absolute_url()
    assert (grant.role, grant.workshop) == ("helper", workshop)
    assert changes_of(person).get().lines == [["role", "", "helper, Kiln Room"]]


def test_a_role_is_given_in_every_workshop(as_coordinator: Client) -> None:
    person = PersonFactory()

    give(as_coordinator, person, Role.TREASURER)

    assert person.role_grants.get().workshop is None


def test_a_role_opens_its_pages_at_the_next_request(sign_in_as: SignInAs, as_coordinator: Client) -> None:
    student = sign_in_as(Role.STUDENT)
    person = student.account.person  # type: ignore[attr-defined]
    assert student.get("/people/").status_code == 403

    give(as_coordinator, person, Role.COORDINATOR)

    assert student.get("/people/").status_code == 200


@pytest.mark.parametrize("everywhere", [True, False])
def test_a_role_held_already_is_not_given_twice(as_coordinator: Client, everywhere: bool) -> None:
    workshop = None if everywhere else WorkshopFactory()
    grant = RoleGrantFactory(role=Role.HELPER.value, workshop=workshop, person__name="Odo Falk")

    answer = give(as_coordinator, grant.person, Role.HELPER, workshop.pk if workshop else EVERYWHERE)

    assert answer.status_code == 422
    assert "Odo Falk has this role there already." in answer.content.decode()
    assert grant.person.role_grants.count() == 1


@pytest.mark.parametrize("everywhere", [True, False])
def test_the_database_refuses_the_same_role_twice(everywhere: bool) -> None:
    workshop = None if everywhere else WorkshopFactory()
    grant = RoleGrantFactory(role=Role.HELPER.value, workshop=workshop)

    with pytest.raises(IntegrityError), transaction.atomic():
        RoleGrantFactory(role=Role.HELPER.value, workshop=workshop, person=grant.person)


def test_the_database_refuses_a_role_nobody_knows() -> None:
    with pytest.raises(IntegrityError), transaction.atomic():
        RoleGrantFactory(role="emperor")


def test_whoever_is_slower_learns_that_the_role_is_held() -> None:
    person = RoleGrantFactory(role=Role.HELPER.value).person

    with pytest.raises(RoleHeldError):
        give_role(None, person, Role.HELPER, None)


@pytest.mark.parametrize(
    ("role", "workshop"), [("emperor", ""), ("helper", "9999"), ("helper", "x"), ("", "")]
)
def test_nonsense_is_refused(as_coordinator: Client, role: str, workshop: str) -> None:
    person = PersonFactory()

    answer = as_coordinator.post(f"/people/{person.pk}/roles/give/", {"role": role, "workshop": workshop})

    assert answer.status_code == 422
    assert not person.role_grants.exists()


def test_it_asks_before_a_role_goes(as_coordinator: Client) -> None:
    grant = RoleGrantFactory(role=Role.HELPER.value, person__name="Odo Falk")

    page = as_coordinator.get(f"/people/{grant.person_id}/roles/{grant.pk}/withdraw/").content.decode()

    assert "Withdraw helper from Odo Falk?" in page
    assert RoleGrant.objects.filter(pk=grant.pk).exists()


def test_a_role_is_withdrawn_with_a_change_that_says_so(as_coordinator: Client) -> None:
    grant = RoleGrantFactory(role=Role.HELPER.value)

    answer = withdraw(as_coordinator, grant)

    assert answer.headers["Location"] == grant.person.get_absolute_url()
    assert not grant.person.role_grants.exists()
    assert changes_of(grant.person).get().lines == [["role", "helper", ""]]


def test_a_role_is_only_found_under_its_own_person(as_coordinator: Client) -> None:
    grant, other = RoleGrantFactory(), PersonFactory()

    answer = as_coordinator.post(f"/people/{other.pk}/roles/{grant.pk}/withdraw/")

    assert answer.status_code == 404
    assert RoleGrant.objects.filter(pk=grant.pk).exists()


def test_the_last_coordinator_can_not_be_withdrawn(as_coordinator: Client) -> None:
    account = as_coordinator.account  # type: ignore[attr-defined]
    AccountFactory(is_active=False, person=RoleGrantFactory(role=Role.COORDINATOR.value).person)
    RoleGrantFactory(role=Role.COORDINATOR.value)
    AccountFactory(person=RoleGrantFactory(role=Role.COORDINATOR.value, workshop=WorkshopFactory()).person)

    answer = withdraw(as_coordinator, account.person.role_grants.get())

    assert answer.status_code == 422
    assert "is the last coordinator of every workshop who can sign in" in answer.content.decode()
    assert as_coordinator.get("/people/").status_code == 200


def test_the_page_says_so_before_it_is_asked(as_coordinator: Client) -> None:
    grant = as_coordinator.account.person.role_grants.get()  # type: ignore[attr-defined]

    page = as_coordinator.get(f"/people/{grant.person_id}/roles/{grant.pk}/withdraw/").content.decode()

    assert "is the last coordinator" in page
    assert "Withdraw it" not in page


def test_of_two_coordinators_one_can_go(as_coordinator: Client, sign_in_as: SignInAs) -> None:
    other = sign_in_as(Role.COORDINATOR)
    grant = as_coordinator.account.person.role_grants.get()  # type: ignore[attr-defined]

    answer = withdraw(as_coordinator, grant)

    assert answer.headers["Location"] == "/"
    assert as_coordinator.get("/people/").status_code == 403
    assert is_last_key(other.account.person)  # type: ignore[attr-defined]


def test_another_role_of_the_last_coordinator_can_go(as_coordinator: Client) -> None:
    person = as_coordinator.account.person  # type: ignore[attr-defined]
    grants = [
        RoleGrantFactory(person=person, role=Role.HELPER.value),
        RoleGrantFactory(person=person, role=Role.COORDINATOR.value, workshop=WorkshopFactory()),
    ]

    for grant in grants:
        withdraw(as_coordinator, grant)

    assert person.role_grants.get().role == "coordinator"
