from __future__ import annotations

import sys
from getpass import getpass
from typing import Any

from django.contrib.auth.password_validation import validate_password
from django.core.exceptions import ValidationError
from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.forms import BaseForm

from club.people import sentences
from club.people.actions.sign_ins import NameTakenError, add_coordinator
from club.people.forms import PersonForm, SignInNameForm
from club.people.models import Account, Person


class Command(BaseCommand):
    help = (
        "Adds a coordinator of every workshop who can sign in: the first one of an empty installation. "
        "Asks on the terminal for what isn't given; without one, the password is read from standard input."
    )

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--name", help="the person's name")
        parser.add_argument("--sign-in", help="the name to sign in with, one word")

    def handle(self, *args: Any, **options: Any) -> None:
        # The first thing an empty installation needs: its tables.
        call_command("migrate", verbosity=0)
        name = options["name"] or input("Name: ")
        _refuse_wrong(PersonForm({"name": name, "age_band": Person.AgeBand.ADULT}))
        sign_in_name = options["sign_in"] or input("Sign-in name: ")
        _refuse_wrong(SignInNameForm({"name": sign_in_name}))
        password = _password(sign_in_name)
        try:
            account = add_coordinator(name.strip(), sign_in_name, password)
        except NameTakenError as error:
            raise CommandError(str(sentences.NAME_TAKEN)) from error
        self.stdout.write(f"{account} signs in as {account.name}.")


def _refuse_wrong(form: BaseForm) -> None:
    for faults in form.errors.values():
        raise CommandError(str(faults[0]))


def _password(sign_in_name: str) -> str:
    """Typed twice unseen on a terminal, else the first line of standard input."""
    asked = sys.stdin.isatty()
    password = getpass("Password: ") if asked else sys.stdin.readline().rstrip("\r\n")
    if asked and getpass("Password again: ") != password:
        raise CommandError(str(sentences.NOT_TWICE))
    try:
        validate_password(password, Account(name=sign_in_name))
    except ValidationError as error:
        raise CommandError(error.messages[0]) from error
    return password
