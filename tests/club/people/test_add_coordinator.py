from __future__ import annotations

import io

import pytest
from django.core.management import CommandError, call_command
from django.test import Client

from club.people.models import Account, Person
from tests.factories import AccountFactory

pytestmark = pytest.mark.django_db

PASSWORD = "long grain ash"


@pytest.fixture
def typed(monkeypatch: pytest.MonkeyPatch):
    """typed(text): what stands in standard input, which is no terminal."""
    return lambda text: monkeypatch.setattr("sys.stdin", io.StringIO(text))


def add(name: str = "Ilse Brandt", sign_in: str = "ilse.b") -> str:
    said = io.StringIO()
    call_command("add_coordinator", name=name, sign_in=sign_in, stdout=said)
    return said.getvalue()


def test_an_empty_installation_gets_somebody_who_can_let_everybody_in(typed, client: Client) -> None:
    typed(f"{PASSWORD}\n")

    said = add()

    assert said == "Ilse Brandt signs in as ilse.b.\n"
    client.post("/people/sign-in/", {"username": "ilse.b", "password": PASSWORD})
    assert client.get("/people/").status_code == 200
    assert client.get("/people/").context["page"][0].role_grants.get().workshop is None


def test_on_a_terminal_it_asks_for_everything(monkeypatch: pytest.MonkeyPatch) -> None:
    answers = iter(["Ilse Brandt", "ilse.b"])
    terminal = io.StringIO()
    terminal.isatty = lambda: True  # type: ignore[method-assign]
    monkeypatch.setattr("sys.stdin", terminal)
    monkeypatch.setattr("builtins.input", lambda _question: next(answers))
    monkeypatch.setattr("club.management.commands.add_coordinator.getpass", lambda _question: PASSWORD)

    call_command("add_coordinator", stdout=io.StringIO())

    assert Account.objects.get().check_password(PASSWORD)


def test_two_different_passwords_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    answers = iter([PASSWORD, "something else"])
    terminal = io.StringIO()
    terminal.isatty = lambda: True  # type: ignore[method-assign]
    monkeypatch.setattr("sys.stdin", terminal)
    monkeypatch.setattr("club.management.commands.add_coordinator.getpass", lambda _question: next(answers))

    with pytest.raises(CommandError, match="The two new passwords differ"):
        add()


@pytest.mark.parametrize(
    ("facts", "password", "sentence"),
    [
        ({"sign_in": "TAKEN"}, PASSWORD, "Somebody signs in with that name already"),
        ({"sign_in": "two words"}, PASSWORD, "Use letters, digits"),
        ({"name": "x" * 121}, PASSWORD, "at most 120 characters"),
        ({}, "short", "too short"),
        ({}, "", "too short"),
        ({"sign_in": "ilse.brandt"}, "ilse.brandt1", "too similar"),
    ],
)
def test_it_refuses_with_one_sentence_and_changes_nothing(typed, facts, password: str, sentence: str) -> None:
    AccountFactory(name="taken")
    typed(f"{password}\n")

    with pytest.raises(CommandError, match=sentence) as refusal:
        add(**facts)

    assert "\n" not in str(refusal.value)
    assert (Account.objects.count(), Person.objects.count()) == (1, 1)
