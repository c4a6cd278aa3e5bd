"""The only way a view gets a class or a line of its list: the access check is in the query."""

from __future__ import annotations

from django.contrib.auth.models import AnonymousUser
from django.shortcuts import get_object_or_404

from club.base.access import workshops_where
from club.classes.models import ClassSession, SignUp
from club.classes.models.class_session import ClassSessionQuerySet
from club.people.models import Account


def classes_for(account: Account | AnonymousUser, address: str, method: str = "GET") -> ClassSessionQuerySet:
    return ClassSession.objects.in_workshops(workshops_where(account, address, method))


def class_for(account: Account | AnonymousUser, pk: int, address: str, method: str = "GET") -> ClassSession:
    """The class with its lathes, people and list, or 404 when this account may not do this to it."""
    return get_object_or_404(classes_for(account, address, method).whole(), pk=pk)


def sign_up_for(
    account: Account | AnonymousUser, pk: int, number: int, address: str, method: str = "GET"
) -> SignUp:
    """The sign-up of this number in the class, which is whole."""
    session = class_for(account, pk, address, method)
    found = get_object_or_404(
        SignUp.objects.select_related("person", "lathe"), class_session=pk, number=number
    )
    found.class_session = session
    return found
