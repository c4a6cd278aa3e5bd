"""Rows for tests. A factory makes the least that is true; a test names what it is about."""

from __future__ import annotations

import functools

import factory
from django.contrib.auth.hashers import make_password

from club.base.access import Role
from club.lathes.models import Lathe, Workshop
from club.people.models import Account, Person, RoleGrant
from club.stores.models import Article, Held, MetSpecification, Offer, Supplier
from club.stores.specifications import specification_key

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


class SupplierFactory(factory.django.DjangoModelFactory[Supplier]):
    class Meta:
        model = Supplier

    name = factory.Sequence(lambda number: f"Supplier {number}")


class ArticleFactory(factory.django.DjangoModelFactory[Article]):
    class Meta:
        model = Article

    name = factory.Sequence(lambda number: f"Article {number}")
    kind = Article.Kind.PIECE.value


class OfferFactory(factory.django.DjangoModelFactory[Offer]):
    """A pack of one; sizes as its kind asks for them are the test's."""

    class Meta:
        model = Offer

    article = factory.SubFactory(ArticleFactory)
    supplier = factory.SubFactory(SupplierFactory)
    label = factory.Sequence(lambda number: f"pack {number}")
    price = 100


class HeldFactory(factory.django.DjangoModelFactory[Held]):
    class Meta:
        model = Held

    article = factory.SubFactory(ArticleFactory)
    amount = 1


class MetSpecificationFactory(factory.django.DjangoModelFactory[MetSpecification]):
    """The key follows the specification as `specification_key` makes it."""

    class Meta:
        model = MetSpecification

    article = factory.SubFactory(ArticleFactory)
    specification = factory.Sequence(lambda number: f"specification {number}")
    key = factory.LazyAttribute(lambda met: specification_key(met.specification))
