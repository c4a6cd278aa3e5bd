"""The demonstration club: an invention, brought in the way a club brings in its own lists."""

from __future__ import annotations

from pathlib import Path

from django.db import transaction

from club.base.csv_rows import CsvRow, read_list
from club.lathes.actions import add_workshop
from club.lathes.forms.workshop import WorkshopForm
from club.lathes.lists import bring_in, plan_list
from club.lathes.models import Workshop
from club.people.actions.persons import add_person
from club.people.actions.roles import give_role
from club.people.actions.sign_ins import give_sign_in
from club.people.forms import PersonForm
from club.people.models import Account, Person
from projects.library import exchange

FOLDER = Path(__file__).resolve().parent.parent / "management" / "demonstration"
CLUB = "Quernby Turners"
PASSWORD = "curls and shavings"
AGE_BANDS = {"adult": "adult", "16 or 17": "16_17", "under 16": "under_16"}


def load_demonstration() -> bool:
    """Make the club where there is none yet; whether it was made. All of it comes in, or nothing does."""
    if Workshop.objects.exists() or Account.objects.exists():
        return False
    with transaction.atomic():
        workshops = {row.cells["name"]: _workshop(row) for row in _rows("workshops.csv")}
        people = [_person(row, workshops) for row in _rows("people.csv")]
        coordinator = next(person.account for person in people if person.sign_in)
        plan = plan_list(_text("lathes.csv"), list(workshops.values()))
        if not plan.is_good:
            raise ValueError(*plan.all_problems)
        bring_in(coordinator, plan)
        _library(coordinator)
    return True


def _text(name: str) -> str:
    return (FOLDER / name).read_text(encoding="utf-8")


def _rows(name: str) -> tuple[CsvRow, ...]:
    return read_list(_text(name)).rows


def _library(by: Account) -> None:
    """The projects and courses, as another club's library comes in."""
    plan = exchange.plan_library((FOLDER / "library.json").read_bytes())
    if not plan.is_good:
        raise ValueError(*plan.all_problems)
    exchange.bring_in(by, plan, plan.mark)


def _workshop(row: CsvRow) -> Workshop:
    form = WorkshopForm(row.cells)
    if not form.is_valid():
        raise ValueError(form.errors)
    return add_workshop(None, form.instance)


def _person(row: CsvRow, workshops: dict[str, Workshop]) -> Person:
    cells = row.cells
    form = PersonForm({**cells, "age_band": AGE_BANDS[cells["age band"]]})
    if not form.is_valid():
        raise ValueError(form.errors)
    person = add_person(None, form.instance)
    give_role(None, person, cells["role"].replace(" ", "_"), workshops.get(cells["workshop"]))
    if cells["sign-in name"]:
        give_sign_in(None, person, cells["sign-in name"], PASSWORD, lasting=True)
    return person
