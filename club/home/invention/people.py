"""The demonstration club's workshops and people."""

from __future__ import annotations

from collections.abc import Mapping

from club.base.csv_rows import CsvRow
from club.home.invention.lists import good, lines_of
from club.lathes.actions import add_workshop
from club.lathes.forms.workshop import WorkshopForm
from club.lathes.models import Workshop
from club.people.actions.persons import add_person
from club.people.actions.roles import give_role
from club.people.actions.sign_ins import give_sign_in
from club.people.forms import PersonForm
from club.people.models import Person

PASSWORD = "curls and shavings"
AGE_BANDS = {"adult": "adult", "16 or 17": "16_17", "under 16": "under_16"}


def load_workshops() -> dict[str, Workshop]:
    """By their names."""
    rows = (add_workshop(None, good(WorkshopForm(line.cells))) for line in lines_of("workshops.csv"))
    return {workshop.name: workshop for workshop in rows}


def load_people(workshops: Mapping[str, Workshop]) -> dict[str, Person]:
    """By their names, of which none is there twice."""
    people = (_person(line, workshops) for line in lines_of("people.csv"))
    return {person.name: person for person in people}


def _person(line: CsvRow, workshops: Mapping[str, Workshop]) -> Person:
    cells = line.cells
    person = add_person(None, good(PersonForm({**cells, "age_band": AGE_BANDS[cells["age band"]]})))
    give_role(None, person, cells["role"].replace(" ", "_"), workshops.get(cells["workshop"]))
    if cells["sign-in name"]:
        give_sign_in(None, person, cells["sign-in name"], PASSWORD, lasting=True)
    return person
