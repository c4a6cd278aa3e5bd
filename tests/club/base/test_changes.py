from __future__ import annotations

import datetime

import pytest
import time_machine
from django.template.loader import render_to_string

from club.base.changes import changes_of, record_change, snapshot
from club.base.models import Change
from club.base.quantities.length import parse_length
from club.people.models import Person
from tests.factories import AccountFactory, LatheFactory, PersonFactory

pytestmark = pytest.mark.django_db


def test_a_snapshot_reads_as_people_read_it() -> None:
    person = PersonFactory(name="Ilse Brandt", age_band=Person.AgeBand.SIXTEEN)

    assert snapshot(person) == {"name": "Ilse Brandt", "e-mail": "", "phone": "", "age": "16 or 17"}


def test_a_snapshot_keeps_a_length_as_it_was_typed() -> None:
    lathe = LatheFactory(
        through_bore=parse_length("9/16 in"), reverse=True, spindle_lock=False, low_stand=None
    )

    taken = snapshot(lathe)

    assert taken["through bore"] == "9/16\N{NO-BREAK SPACE}in"
    assert (taken["runs in reverse"], taken["spindle lock"], taken["low stand"]) == ("yes", "no", "")


def test_a_change_says_who_what_when_and_how_it_was_before() -> None:
    by = AccountFactory(person__name="Ilse Brandt")
    person = PersonFactory(name="Odo Falk", phone="12 34")
    before = snapshot(person)
    person.phone = "56 78"

    with time_machine.travel("2026-03-04 05:06:07Z", tick=False):
        record_change(by, person, before, snapshot(person))

    change = changes_of(person).get()
    assert (change.by, change.by_name, change.thing_name) == (by, "Ilse Brandt", "Odo Falk")
    assert change.at == datetime.datetime(2026, 3, 4, 5, 6, 7, tzinfo=datetime.UTC)
    assert change.deed == Change.Deed.MENDED
    assert change.lines == [["phone", "12 34", "56 78"]]


def test_nothing_is_kept_when_nothing_differs() -> None:
    person = PersonFactory()

    assert record_change(None, person, snapshot(person), snapshot(person)) is None
    assert not Change.objects.exists()


def test_a_thing_made_and_a_thing_taken_away_are_kept_whole() -> None:
    person = PersonFactory(name="Odo Falk")

    made = record_change(None, person, None, snapshot(person))
    gone = record_change(None, person, snapshot(person), None)

    assert made is not None
    assert gone is not None
    assert (made.deed, made.lines) == ("made", [["name", "", "Odo Falk"], ["age", "", "adult"]])
    assert (gone.deed, gone.lines) == ("gone", [["name", "Odo Falk", ""], ["age", "adult", ""]])


def test_a_change_outlives_the_thing_and_whoever_changed_it() -> None:
    by = AccountFactory(person__name="Ilse Brandt")
    person = PersonFactory(name="Odo Falk")
    record_change(by, person, snapshot(person), None)

    person.delete()
    by.delete()

    change = Change.objects.get()
    assert (change.by, change.by_name, change.thing_name) == (None, "Ilse Brandt", "Odo Falk")


def test_the_changes_of_a_thing_are_its_own_latest_first() -> None:
    person, other = PersonFactory(), PersonFactory()
    for phone in ("1", "2"):
        record_change(None, person, {"phone": ""}, {"phone": phone})
    record_change(None, other, {"phone": ""}, {"phone": "3"})

    assert [change.lines[0][2] for change in changes_of(person)] == ["2", "1"]


def test_a_very_long_name_is_cut_rather_than_refused() -> None:
    lathe = LatheFactory()
    by = AccountFactory(person__name="I" * 120)

    change = record_change(by, lathe, {}, {"reason": "x"})

    assert change is not None
    assert change.by_name == "I" * 120


def test_the_fragment_writes_the_day_the_name_and_both_values_and_escapes_them() -> None:
    person = PersonFactory()
    by = AccountFactory(person__name="<b>Ilse</b>")
    with time_machine.travel("2026-03-04 05:06:07Z", tick=False):
        record_change(by, person, {"phone": "<i>1</i>"}, {"phone": "2"})

    shown = render_to_string("club/base/_changes.html", {"changes": changes_of(person)})

    assert "Wednesday 4 March 2026, 05:06" in shown
    assert "mended by &lt;b&gt;Ilse&lt;/b&gt;" in " ".join(shown.split())
    assert "Phone: &lt;i&gt;1&lt;/i&gt;, now 2" in shown


def test_the_fragment_shows_thirty_and_says_that_there_are_more() -> None:
    person = PersonFactory()
    for number in range(31):
        record_change(None, person, {"phone": ""}, {"phone": f"no. {number}"})

    shown = render_to_string("club/base/_changes.html", {"changes": changes_of(person)})

    assert shown.count("no. ") == 30
    assert "earlier ones are kept" in shown
