"""Sign-ins: given, barred, opened, and their passwords. No password ever gets into the change log."""

from __future__ import annotations

import secrets

from django.db import IntegrityError, transaction
from django.utils.translation import gettext

from club.base.changes import Snapshot, record_change, snapshot
from club.base.roles import Role
from club.people.actions.persons import add_person
from club.people.actions.roles import LastKeyError, give_role, hold_the_keys, is_last_key
from club.people.models import Account, Person
from club.people.throttle import listen_again

# Without 0, 1, i, l and o, which look alike on a slip of paper: 12 of 31 are 59 bits.
LEGIBLE = "abcdefghjkmnpqrstuvwxyz23456789"


class NameTakenError(Exception):
    """Somebody signs in with this name already."""


def first_password() -> str:
    """A password to be read out once and changed at the first sign-in, as kq7m-x3fd-9hbe."""
    return "-".join("".join(secrets.choice(LEGIBLE) for _ in range(4)) for _ in range(3))


@transaction.atomic
def give_sign_in(
    by: Account | None, person: Person, name: str, password: str, *, lasting: bool = False
) -> Account:
    """An account for this person; raises NameTakenError when the name is taken or the person has one.

    Unless it is `lasting`, the password must be changed at the first sign-in.
    """
    try:
        with transaction.atomic():
            account = Account.objects.create_account(person, name, password, must_change_password=not lasting)
    except IntegrityError as error:
        raise NameTakenError from error
    record_change(by, person, {}, snapshot(account))
    return account


@transaction.atomic
def renew_password(by: Account, account: Account, password: str) -> None:
    """A first password once more, for somebody who forgot theirs; the throttle forgets their tries."""
    account.must_change_password = True
    _keep_password(by, account, password, gettext("made anew"))
    listen_again(account.name)


@transaction.atomic
def choose_password(account: Account, password: str) -> None:
    """The password of the account's own choice, which has been checked already."""
    account.must_change_password = False
    _keep_password(account, account, password, gettext("chosen by themselves"))


@transaction.atomic
def bar_sign_in(by: Account, account: Account) -> None:
    """Ends what is signed in too. Raises LastKeyError for the last coordinator of every workshop."""
    hold_the_keys()
    if is_last_key(account.person):
        raise LastKeyError
    _set_active(by, account, False)


@transaction.atomic
def open_sign_in(by: Account, account: Account) -> None:
    _set_active(by, account, True)


@transaction.atomic
def choose_lengths(account: Account, style: str) -> None:
    before = _kept(account)
    account.lengths = style
    account.save(update_fields=("lengths",))
    record_change(account, account.person, before, snapshot(account))


def _set_active(by: Account, account: Account, active: bool) -> None:
    before = _kept(account)
    account.is_active = active
    account.save(update_fields=("is_active",))
    record_change(by, account.person, before, snapshot(account))


def _keep_password(by: Account, account: Account, password: str, how: str) -> None:
    before = _kept(account)
    account.set_password(password)
    account.save(update_fields=("password", "must_change_password"))
    record_change(by, account.person, before, {**snapshot(account), gettext("password"): how})


def _kept(account: Account) -> Snapshot:
    """As the database has it: a form may have changed the one in hand already."""
    return snapshot(Account.objects.get(pk=account.pk))


@transaction.atomic
def add_coordinator(name: str, sign_in_name: str, password: str) -> Account:
    """Somebody who can let everybody else in, made at the server; raises NameTakenError."""
    person = add_person(None, Person(name=name))
    account = give_sign_in(None, person, sign_in_name, password, lasting=True)
    give_role(None, person, Role.COORDINATOR, None)
    return account
