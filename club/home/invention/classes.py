"""The demonstration club's classes, those to come and a season of past ones, and who is on their lists."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from club.classes.actions.classes import cancel_class, plan_class
from club.classes.actions.lists import give_up, hold, sign_up
from club.classes.domain.places import Place, place_named
from club.classes.models import ClassSession
from club.home.invention.days import Wanted, evenings_in, held_on
from club.home.invention.lists import lines_of, words_in
from club.lathes.models import Lathe, Workshop
from club.people.models import Account, Person
from projects.library.models import Edition

# Whoever comes to a past class signed up a week before, to a coming one just now.
WEEK = timedelta(days=7)
# To the evening of the fourth day after.
KEPT_FOR = timedelta(days=4, hours=11)
Cells = Mapping[str, str]


@dataclass(frozen=True)
class House:
    """What classes are made of, by the names in the lists; `by` is whoever writes them down."""

    by: Account
    workshops: Mapping[str, Workshop]
    people: Mapping[str, Person]
    lathes: Mapping[tuple[str, str], Lathe]
    editions: Mapping[tuple[str, str], Edition]


def house_of(by: Account, workshops: Mapping[str, Workshop], people: Mapping[str, Person]) -> House:
    """With the lathes and editions that are there by now."""
    return House(by, workshops, people, _lathes(), _editions())


def load_classes(house: House, today: date, now: datetime) -> None:
    """All classes; `now` is the moment in UTC at which people sign up for those to come."""
    lines = [line.cells for line in lines_of("classes.csv")]
    days = held_on((Wanted(int(cells["days"]), evenings_in(cells["on"])) for cells in lines), today)
    lists = _lists()
    for cells, (day, at) in zip(lines, days, strict=True):
        session = _session(house, cells, day, at)
        _fill(house, session, lists[cells["class"]], min(now, session.begins - WEEK))
        if cells["state"] == "cancelled":
            cancel_class(house.by, session, session.revision)


def _lathes() -> dict[tuple[str, str], Lathe]:
    """By workshop and number."""
    lathes = Lathe.objects.select_related("workshop")
    return {(lathe.workshop.name, str(lathe.number)): lathe for lathe in lathes}


def _editions() -> dict[tuple[str, str], Edition]:
    """By project and number; without a number it is the newest one kept."""
    kept = Edition.objects.kept().select_related("project").order_by("number")
    newest = {(edition.project.key, ""): edition for edition in kept}
    return {**newest, **{(edition.project.key, str(edition.number)): edition for edition in kept}}


def _lists() -> dict[str, list[Cells]]:
    """Who is on which list, in the order they came."""
    found: dict[str, list[Cells]] = {}
    for line in lines_of("lists.csv"):
        found.setdefault(line.cells["class"], []).append(line.cells)
    return found


def _session(house: House, cells: Cells, day: date, at: time) -> ClassSession:
    room = cells["workshop"]
    session = ClassSession(
        edition=house.editions[cells["project"], cells["edition"]],
        workshop=house.workshops[room],
        day=day,
        at=at,
        minutes=int(cells["minutes"]),
        sittings=int(cells["sittings"]),
        minimum=int(cells["fewest"]),
        lowered_to=int(cells["lowered to"]) if cells["lowered to"] else None,
        instructor=house.people[cells["instructor"]],
        demonstration_lathe=house.lathes.get((room, cells["demonstration lathe"])),
        note=cells["note"],
    )
    lathes = [house.lathes[room, number] for number in words_in(cells["lathes"])]
    helpers = [house.people[name] for name in words_in(cells["helpers"])]
    return plan_class(house.by, session, lathes, helpers)


def _fill(house: House, session: ClassSession, names: Iterable[Cells], now: datetime) -> None:
    for cells in names:
        place = place_named(cells["place"]) if cells["place"] else None
        _enter(house, session, cells, place, now)


def _enter(house: House, session: ClassSession, cells: Cells, place: Place | None, now: datetime) -> None:
    person = house.people[cells["person"]]
    if cells["then"] == "kept":
        hold(house.by, session, person, now, now + KEPT_FOR, place)
        return
    sign_up(house.by, session, person, now, place)
    if cells["then"] == "gave up":
        give_up(house.by, session, person, now)
