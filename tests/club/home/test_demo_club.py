"""The demonstration club as it is loaded: whole, and lived in."""

from __future__ import annotations

from datetime import UTC, date, datetime

import pytest
from django.db import transaction

from club.base.roles import Role
from club.classes.models import ClassSession, SignUp
from club.home.demonstration import PASSWORD, load_demonstration
from club.lathes.domain.opening_hours import parse_openings
from club.lathes.models import Lathe, Workshop
from club.people.models import Account, Person, RoleGrant

TODAY = date(2026, 6, 3)
NOON = datetime(2026, 6, 3, 12, tzinfo=UTC)

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("club")]


@pytest.fixture(scope="module")
def club(django_db_setup, django_db_blocker):
    """Loaded once for all of these tests, none of which writes."""
    with django_db_blocker.unblock(), transaction.atomic():
        load_demonstration(TODAY)
        yield
        transaction.set_rollback(True)


def coming():
    return ClassSession.objects.coming(NOON).planned()


def past():
    return ClassSession.objects.past(NOON).planned()


def test_forty_people_have_the_roles_of_a_club():
    roles = list(RoleGrant.objects.values_list("role", flat=True))

    assert Person.objects.count() == 40
    assert [roles.count(role) for role in (Role.COORDINATOR, Role.SAFETY_OFFICER, Role.TREASURER)] == [
        1,
        1,
        1,
    ]
    assert (roles.count(Role.INSTRUCTOR), roles.count(Role.HELPER)) == (4, 5)
    assert roles.count(Role.STUDENT) == 28


def test_people_share_an_address_have_none_and_are_of_every_age():
    addresses = list(Person.objects.values_list("email", flat=True))
    shared = {each for each in addresses if each and addresses.count(each) > 1}

    assert len(shared) >= 3
    assert "" in addresses
    assert set(Person.objects.values_list("age_band", flat=True)) == set(Person.AgeBand.values)


@pytest.mark.parametrize("name", ["ilse", "pavo", "maren", "tobias", "renske"])
def test_a_sign_in_of_the_demonstration_opens(name):
    account = Account.objects.get(name=name)

    assert account.check_password(PASSWORD)
    assert not account.must_change_password


def test_students_have_no_sign_in():
    students = Person.objects.filter(role_grants__role=Role.STUDENT)

    assert not students.filter(account__isnull=False).exists()


def test_fourteen_lathes_stand_in_two_workshops_and_differ():
    lathes = Lathe.objects.all()

    assert lathes.count() == 14
    assert {lathe.workshop_id for lathe in lathes} == {room.pk for room in Workshop.objects.all()}
    assert [lathe.condition for lathe in lathes].count("out") == 1
    assert [lathe.condition for lathe in lathes].count("limited") == 2
    for measure, kinds in (
        ("nose_thread", 4),
        ("headstock_taper", 3),
        ("through_bore", 4),
        ("swing_over_bed", 5),
    ):
        assert len({getattr(lathe, measure) for lathe in lathes}) > kinds - 1
    assert any(lathe.through_bore is None for lathe in lathes)


def test_both_workshops_have_opening_hours_and_every_class_lies_in_them():
    openings = {room.pk: parse_openings(room.opening) for room in Workshop.objects.all()}

    outside = [
        session
        for session in ClassSession.objects.all()
        if not any(
            opening.weekday == session.day.weekday()
            and opening.begins <= session.at
            and session.hours.local_end.time() <= opening.ends
            for opening in openings[session.workshop_id]
        )
    ]

    assert len(openings) == 2
    assert outside == []


def test_six_classes_are_to_come_and_a_season_is_past():
    assert coming().count() == 6
    assert len({session.edition.project_id for session in coming()}) == 6
    assert len({session.workshop_id for session in coming()}) == 2
    assert past().count() == 12
    assert ClassSession.objects.coming(NOON).filter(state="cancelled").count() == 1


def test_the_coming_classes_are_in_every_state_a_club_knows():
    listed = list(coming().with_taken(NOON))

    assert any(session.sittings == 2 for session in listed)
    assert any(session.taken == session.places and session.waiting for session in listed)
    assert any(0 < session.taken < session.minimum for session in listed)
    assert {"in", "held", "waiting", "cancelled"} == set(
        SignUp.objects.filter(class_session__in=listed).values_list("state", flat=True)
    )


def test_everyone_who_is_in_the_next_class_has_a_place_and_a_kit():
    session = coming()[0]
    people = session.sign_ups.filter(state="in")

    assert people.count() >= 8
    assert not people.filter(lathe=None).exists()
    assert sorted(people.values_list("kit", flat=True)) == list(range(1, people.count() + 1))
