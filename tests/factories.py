"""Rows for tests. A factory makes the least that is true; a test names what it is about."""

from __future__ import annotations

import functools

import factory
from django.contrib.auth.hashers import make_password

from club.base.access import Role
from club.lathes.models import Lathe, Workshop
from club.people.models import Account, Person, RoleGrant

PASSWORD = "bead cove fillet"


@functools.cache
def hashed_password() -> str:
    """The hash of PASSWORD, worked out once: Argon2 is slow on purpose."""
    return make_password(PASSWORD)


class WorkshopFactory(factory.django.DjangoModelFactory[Workshop]):
    class Meta:
        model = Workshop

    name = factory.Sequence(lambda number: f"Room {number}")
    zone = "Europe/Berlin"


class PersonFactory(factory.django.DjangoModelFactory[Person]):
    class Meta:
        model = Person

    name = factory.Sequence(lambda number: f"Person {number}")


class AccountFactory(factory.django.DjangoModelFactory[Account]):
    class Meta:
        model = Account

    person = factory.SubFactory(PersonFactory)
    name = factory.Sequence(lambda number: f"person.{number}")
    password = factory.LazyFunction(hashed_password)


class RoleGrantFactory(factory.django.DjangoModelFactory[RoleGrant]):
    class Meta:
        model = RoleGrant

    person = factory.SubFactory(PersonFactory)
    role = Role.STUDENT.value
    workshop = None


class LatheFactory(factory.django.DjangoModelFactory[Lathe]):
    class Meta:
        model = Lathe

    workshop = factory.SubFactory(WorkshopFactory)
    number = factory.Sequence(lambda number: number % 999 + 1)
