"""The only way a view gets a person, a role or a sign-in."""

from __future__ import annotations

from django.core.exceptions import PermissionDenied
from django.db.models import QuerySet
from django.http import Http404, HttpRequest
from django.shortcuts import get_object_or_404

from club.base.access import STAFF, workshops_where
from club.lathes.models import Workshop
from club.people.models import Account, Person, PersonQuerySet, RoleGrant


def signed_in(request: HttpRequest) -> Account:
    """Who asks, at an address that the table keeps for people who have signed in."""
    if not request.user.is_authenticated:
        raise PermissionDenied
    return request.user


def people_for(account: Account) -> PersonQuerySet:
    """Everybody the club knows, for whoever the table lets in here."""
    return Person.objects.whole()


def person_for(account: Account, pk: int) -> Person:
    return get_object_or_404(people_for(account), pk=pk)


def person_to_mend(account: Account, pk: int) -> Person:
    """The person, or 403 when they hold a staff role beyond the reach of this coordinator.

    Whoever may mend a person's sign-in can become that person, so a coordinator of one workshop mends nobody
    who is staff in another.
    """
    person = person_for(account, pk)
    if not oversees(account, person):
        raise PermissionDenied
    return person


def sign_in_to_mend(account: Account, pk: int) -> Account:
    """The account of a person, 404 when there is none."""
    found = person_to_mend(account, pk).sign_in
    if found is None:
        raise Http404
    return found


def oversees(account: Account, person: Person) -> bool:
    reach = workshops_where(account, "people:mend", "POST")
    held = {grant.workshop_id for grant in person.role_grants.all() if grant.role in STAFF}
    return reach is None or held <= reach


def grant_to_withdraw(account: Account, person_pk: int, pk: int) -> RoleGrant:
    """A role of this person, or 403 when it reaches further than this coordinator's own."""
    grant = get_object_or_404(
        RoleGrant.objects.select_related("person", "workshop"), pk=pk, person_id=person_pk
    )
    if not reaches(account, grant):
        raise PermissionDenied
    return grant


def reaches(account: Account, grant: RoleGrant) -> bool:
    reach = workshops_where(account, "people:withdraw_role", "POST")
    return reach is None or grant.workshop_id in reach


def workshops_to_grant(account: Account) -> tuple[QuerySet[Workshop], bool]:
    """The workshops in which this account may give roles, and whether it may give one for all of them."""
    reach = workshops_where(account, "people:give_role", "POST")
    if reach is None:
        return Workshop.objects.all(), True
    return Workshop.objects.filter(pk__in=reach), False
