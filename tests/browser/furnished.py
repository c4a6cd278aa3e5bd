"""The club in which every page is looked at: the demonstration, and the people and lathes it lacks."""

from __future__ import annotations

from dataclasses import replace

from django.test import Client
from django.urls import reverse

from club.base.access import Role
from club.home.demonstration import load_demonstration
from club.lathes.models import Lathe, Workshop
from club.people.models import Account, Person
from projects.library.models import Course, Edition
from tests.browser.class_rows import furnish_class_pages
from tests.browser.planning_rows import furnish_classes
from tests.browser.store_rows import furnish_stores
from tests.factories import AccountFactory, PersonFactory, RoleGrantFactory
from tests.projects.library.examples import KNOB, with_step
from tests.projects.library.rows import draft

# Arguments of an address, by the name that a sample of a page calls them.
Rows = dict[str, dict[str, int | str]]

COORDINATOR = "ilse"
HELPER = "maren"
NEWCOMER = "newcomer"
LOCKED_OUT = "locked-out"
WRONG_PASSWORD = "not the password"


def furnish() -> Rows:
    """Load the club and answer with the rows that pages are about."""
    load_demonstration()
    _add_people()
    woods: Rows = {"wood": {"key": "maple_sugar"}, "wood not turned": {"key": "oleander"}}
    workshop: Rows = {"workshop": {"pk": Workshop.objects.get(name="Kiln Loft").pk}}
    return {
        **_lathes(),
        **_people(),
        **workshop,
        **woods,
        "draft": {"key": _draft()},
        **_library(),
        **furnish_stores(),
        **furnish_classes(),
        **furnish_class_pages(),
    }


def _draft() -> str:
    """A project that is being written, with a step that isn't right yet; its key."""
    knob = replace(with_step(KNOB, "rough", stage=None), key="knob-in-the-making", title="Knob in the making")
    return draft(knob).project.key


def _library() -> Rows:
    """An edition that has one before it, the two, and a course."""
    edition = Edition.objects.kept().select_related("project").order_by("-number")[0]
    key = edition.project.key
    making = Edition.objects.drafts().select_related("project").get(project__key="egg-cup")
    return {
        "project": {"key": key},
        "edition": {"key": key, "number": edition.number},
        "edition in the making": {"key": making.project.key, "number": making.number},
        "draft to keep": {"key": making.project.key},
        "two editions": {"key": key, "older": 1, "newer": edition.number},
        "course": {"key": Course.objects.all()[0].key},
    }


def furnish_nothing() -> Rows:
    """A club with nobody but its first coordinator."""
    person = AccountFactory(person__name="Ilse Brandt", name=COORDINATOR).person
    RoleGrantFactory(person=person, role=Role.COORDINATOR.value)
    return {}


def _add_people() -> None:
    """A sign-in in each state, and one that was tried too often."""
    AccountFactory(person__name="Barred Baluster", name="barred", is_active=False)
    AccountFactory(person__name="Newcomer Newel", name=NEWCOMER, must_change_password=True)
    renewed = AccountFactory(person__name="Renewed Rung", name="renewed").person
    RoleGrantFactory(person=renewed, workshop=Workshop.objects.get(name="Kiln Loft"))
    PersonFactory(name="Nameless Newel")
    lock_out(LOCKED_OUT)


def lock_out(name: str) -> None:
    """Try this sign-in name until it is listened to no more."""
    for _ in range(5):
        Client().post(reverse("people:sign_in"), {"username": name, "password": WRONG_PASSWORD})


def _lathes() -> Rows:
    lathes = {
        "lathe": Lathe.objects.get(workshop__name="Sluice Room", number=1),
        "lathe limited": Lathe.objects.get(workshop__name="Sluice Room", number=5),
        "lathe out": Lathe.objects.get(workshop__name="Sluice Room", number=8),
        "lathe unmeasured": Lathe.objects.get(workshop__name="Kiln Loft", number=6),
    }
    return {name: {"pk": lathe.pk} for name, lathe in lathes.items()}


def _people() -> Rows:
    coordinator, helper = (Account.objects.get(name=name).person for name in (COORDINATOR, HELPER))
    people = {
        "coordinator": coordinator,
        "helper": helper,
        "barred": Person.objects.get(account__name="barred"),
        "renewed": Person.objects.get(account__name="renewed"),
        "student": Person.objects.get(name="Hester Vane"),
    }
    found: Rows = {name: {"pk": person.pk} for name, person in people.items()}
    for name in ("coordinator", "helper"):
        grant = people[name].role_grants.get()
        found[f"role of {name}"] = {"person_pk": grant.person_id, "pk": grant.pk}
    return found
