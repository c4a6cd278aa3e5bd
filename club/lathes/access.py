"""The only way a view gets a lathe or a workshop: the access check is in the query."""

from __future__ import annotations

from django.contrib.auth.models import AnonymousUser
from django.shortcuts import get_object_or_404

from club.base.access import workshops_where
from club.lathes.models import Lathe, Workshop
from club.lathes.models.lathe import LatheQuerySet
from club.people.models import Account


def lathes_for(account: Account | AnonymousUser, address: str, method: str = "GET") -> LatheQuerySet:
    return Lathe.objects.in_workshops(workshops_where(account, address, method))


def lathe_for(account: Account | AnonymousUser, pk: int, address: str, method: str = "GET") -> Lathe:
    """The lathe with its speeds and bars, or 404 when this account may not do this to it."""
    return get_object_or_404(lathes_for(account, address, method).whole(), pk=pk)


def workshops_for(account: Account | AnonymousUser, address: str, method: str = "GET") -> list[Workshop]:
    allowed = workshops_where(account, address, method)
    found = Workshop.objects.all()
    return list(found if allowed is None else found.filter(pk__in=allowed))


def may_add_workshops(account: Account | AnonymousUser) -> bool:
    """Only for whoever may write in every workshop: a new one lies in nobody's reach yet."""
    return workshops_where(account, "lathes:workshop_new", "POST") is None


def workshop_for(account: Account | AnonymousUser, pk: int, address: str, method: str = "GET") -> Workshop:
    allowed = workshops_where(account, address, method)
    found = Workshop.objects.all() if allowed is None else Workshop.objects.filter(pk__in=allowed)
    return get_object_or_404(found, pk=pk)
