"""The demonstration club holds its classes on whatever day it is made."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import pytest
from django.db import transaction

from club.classes.domain.clashes import Planned, clashes
from club.classes.domain.preparation import jobs_of, preparation
from club.classes.domain.time_plan import time_plan
from club.classes.models import ClassSession
from club.home.demonstration import ZONE, load_calendar, load_house
from club.lathes.domain.opening_hours import parse_openings

# Each weekday; days with a change of clocks among their classes; Christmas, a year's end, a leap day.
ANY_DAY = [
    *(date(2026, 6, 1) + timedelta(each) for each in range(7)),
    *(date(2027, 3, 18), date(2027, 3, 28), date(2027, 10, 21), date(2027, 10, 31)),
    *(date(2027, 12, 15), date(2027, 12, 31), date(2028, 2, 29)),
]

# Of those who sell something for the next class.
SLOWEST_DELIVERY = timedelta(days=3)

pytestmark = pytest.mark.django_db


@pytest.fixture(scope="module")
def house(django_db_setup, django_db_blocker):
    """All but the classes, loaded once; each test's classes are taken back after it."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield load_house()
        transaction.set_rollback(True)


@pytest.mark.parametrize("today", ANY_DAY, ids=str)
def test_classes_of_any_day_neither_clash_nor_run_over(house, today):
    load_calendar(house, today)
    sessions = list(ClassSession.objects.whole())
    planned = [_planned(session) for session in sessions]

    assert [clashes(each, planned) for each in planned] == [()] * 19
    assert [session for session in sessions if _plan(session).over] == []


@pytest.mark.parametrize("today", ANY_DAY[:3], ids=str)
def test_six_classes_are_to_come_on_any_day(house, today):
    load_calendar(house, today)
    now = datetime.combine(today, datetime.max.time(), UTC)

    assert ClassSession.objects.coming(now).planned().count() == 6
    assert ClassSession.objects.past(now).count() == 12


@pytest.mark.parametrize("today", ANY_DAY[:7], ids=str)
def test_there_is_time_to_prepare_the_next_class_and_not_too_much(house, today):
    load_calendar(house, today)
    now = datetime.combine(today, datetime.max.time(), UTC)
    session = ClassSession.objects.coming(now).planned().whole()[0]
    jobs = jobs_of(session.edition.recipe, 13)
    openings = parse_openings(session.workshop.opening)

    first = preparation(jobs, session.begins, ZONE, openings).jobs[0]

    assert now + SLOWEST_DELIVERY < first.start_by < now + timedelta(days=9)


def _planned(session):
    people = {session.instructor_id, *(person.pk for person in session.helpers.all())}
    students = {row.person_id for row in session.sign_ups.all()}
    return Planned(session.pk, session.workshop_id, session.hours, frozenset(people | students))


def _plan(session):
    return time_plan(session.edition.recipe.time, session.sittings, session.minutes)
