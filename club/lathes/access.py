"""The only way a view gets a lathe or a workshop: the access check is in the query."""

from __future__ import annotations

from django.contrib.auth.models import AnonymousUser
from django.db.models import QuerySet
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


def workshops_in_reach(
    account: Account | AnonymousUser, address: str, method: str = "GET"
) -> QuerySet[Workshop]:
    allowed = workshops_where(account, address, method)
    return Workshop.objects.all() if allowed is None else Workshop.objects.filter(pk__in=allowed)


def workshops_for(account: Account | AnonymousUser, address: str, method: str = "GET") -> list[Workshop]:
    return list(workshops_in_reach(account, address, method))


def may_add_workshops(account: Account | AnonymousUser) -> bool:
    """Only for whoever may write in every workshop: a new one lies in nobody's reach yet."""
    return workshops_where(account, "lathes:workshop_new", "POST") is None


def workshop_for(account: Account | AnonymousUser, pk: int, address: str, method: str = "GET") -> Workshop:
    return get_object_or_404(workshops_in_reach(account, address, method), pk=pk)
