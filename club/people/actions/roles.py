"""Giving and withdrawing roles, and the rule that somebody must keep the keys."""

from __future__ import annotations

from django.db import IntegrityError, transaction
from django.utils.translation import gettext

from club.base.changes import record_change
from club.base.roles import Role
from club.lathes.models import Workshop
from club.people.models import Account, Person, RoleGrant


class LastKeyError(Exception):
    """Without this person nobody could sign in and give a role again."""


class RoleHeldError(Exception):
    """The person has this role there already."""


@transaction.atomic
def give_role(by: Account | None, person: Person, role: str, workshop: Workshop | None) -> RoleGrant:
    """Raises RoleHeldError when somebody was quicker."""
    try:
        with transaction.atomic():
            grant = RoleGrant.objects.create(person=person, role=role, workshop=workshop)
    except IntegrityError as error:
        raise RoleHeldError from error
    record_change(by, person, {}, {gettext("role"): str(grant)})
    return grant


@transaction.atomic
def withdraw_role(by: Account, grant: RoleGrant) -> None:
    """Raises LastKeyError for the last coordinator of every workshop who can sign in."""
    if grant.role == Role.COORDINATOR and grant.workshop_id is None:
        hold_the_keys()
        if is_last_key(grant.person):
            raise LastKeyError
    record_change(by, grant.person, {gettext("role"): str(grant)}, {})
    grant.delete()


def hold_the_keys() -> None:
    """Lock the roles of all coordinators of every workshop, so that two can't go at the same moment."""
    keys = RoleGrant.objects.select_for_update().filter(role=Role.COORDINATOR, workshop=None)
    list(keys.order_by("pk").values_list("pk"))


def is_last_key(person: Person) -> bool:
    """Whether this person alone can sign in as coordinator of every workshop."""
    keys = RoleGrant.objects.keys_to_the_club()
    return keys.filter(person=person).exists() and not keys.exclude(person=person).exists()
