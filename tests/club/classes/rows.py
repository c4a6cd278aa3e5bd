"""A club with a room of lathes, an edition to teach and people, as rows for tests of classes."""

from __future__ import annotations

from datetime import UTC, date, datetime, time
from typing import Any

from club.base.roles import Role
from club.classes.actions.classes import plan_class
from club.classes.models import ClassSession
from club.lathes.models import Lathe, Workshop
from club.people.models import Person
from projects.library.actions import add_project
from projects.library.domain.recipe import Recipe
from projects.library.models import Edition
from tests.factories import LatheFactory, PersonFactory, RoleGrantFactory, WorkshopFactory
from tests.projects.library.examples import KNOB

DAY = date(2030, 3, 7)
NOW = datetime(2030, 3, 1, 12, tzinfo=UTC)


def kept_edition(recipe: Recipe = KNOB) -> Edition:
    found = Edition.objects.kept().filter(project__key=recipe.key).first()
    return found or add_project(None, recipe, kept=True)


def room(lathes: int = 3, **facts: Any) -> Workshop:
    """A workshop with lathes 1, 2, 3 ..."""
    workshop = WorkshopFactory(**facts)
    for number in range(1, lathes + 1):
        LatheFactory(workshop=workshop, number=number)
    return workshop


def lathes_of(workshop: Workshop) -> list[Lathe]:
    return list(Lathe.objects.filter(workshop=workshop))


def teacher(name: str = "Tove Teach") -> Person:
    found: Person = RoleGrantFactory(person__name=name, role=Role.INSTRUCTOR.value).person
    return found


def planned(workshop: Workshop | None = None, **facts: Any) -> ClassSession:
    """A class of the evening of DAY, at all lathes of its workshop, one sitting unless said."""
    workshop = workshop or room()
    helpers = facts.pop("helpers", ())
    lathes = facts.pop("lathes", lathes_of(workshop))
    usual: dict[str, Any] = {"day": DAY, "at": time(18, 30), "minutes": 150}
    if "edition" not in facts:
        usual["edition"] = kept_edition()
    if "instructor" not in facts:
        usual["instructor"] = teacher()
    session = ClassSession(workshop=workshop, **{**usual, **facts})
    return plan_class(None, session, lathes, helpers)


def people(count: int) -> list[Person]:
    return [PersonFactory() for _ in range(count)]
