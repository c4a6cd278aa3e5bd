"""The first page: what is left to do before the next class, for whoever has something to do with it."""

from __future__ import annotations

import re
from datetime import UTC, datetime, time, timedelta

import pytest
import time_machine
from django.test import Client
from django.urls import reverse

from club.base.access import Role
from club.classes.actions.classes import cancel_class
from club.classes.actions.lists import sign_up
from club.classes.domain.places import Place
from club.lathes.models import Lathe
from tests.club.classes.rows import DAY, NOW, kept_edition, people, planned, room
from tests.factories import AccountFactory
from tests.projects.library.demonstration import RECIPES

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def still_clock():
    with time_machine.travel(NOW, tick=False):
        yield


def start(client):
    return client.get(reverse("home:start"))


def heading(client, now: datetime = NOW) -> str:
    with time_machine.travel(now, tick=False):
        return str(start(client).context["heading"])


def test_strangers_go_to_the_sign_in_page():
    assert start(Client()).url == reverse("people:sign_in")


@pytest.mark.parametrize("role", [None, Role.STUDENT])
def test_people_without_a_staff_role_go_to_their_own_page(role, sign_in_as):
    client = Client()
    if role:
        client = sign_in_as(role)
    else:
        client.force_login(AccountFactory())

    assert start(client).url == reverse("people:me")


@pytest.mark.parametrize("role", sorted(set(Role) - {Role.STUDENT}))
def test_every_staff_role_sees_the_next_class(role, sign_in_as):
    session = planned()

    page = start(sign_in_as(role))

    assert page.status_code == 200
    assert page.context["session"] == session
    assert 'aria-current="page">Next class' in page.content.decode()


def test_the_next_class_is_the_first_that_is_held_and_not_over(as_coordinator):
    over = planned(day=DAY - timedelta(days=30))
    cancelled = planned(day=DAY - timedelta(days=3))
    cancel_class(None, cancelled, cancelled.revision)
    after, session = planned(day=DAY + timedelta(days=1)), planned()

    page = start(as_coordinator)

    assert page.context["session"] == session
    assert list(page.context["after"]) == [after]
    assert over.get_absolute_url() not in page.content.decode()


def test_classes_of_other_workshops_are_somebody_else_s(sign_in_as):
    planned(day=DAY - timedelta(days=1))
    session = planned()

    page = start(sign_in_as(Role.HELPER, session.workshop))

    assert page.context["session"] == session
    assert list(page.context["after"]) == []


@pytest.mark.parametrize(
    ("before", "words"),
    [
        (timedelta(days=9), "What is left before Thursday 7 March"),
        (timedelta(days=6), "What is left before Thursday"),
        (timedelta(days=1), "What is left before tomorrow"),
        (timedelta(hours=3), "What is left before 18:30"),
        (timedelta(hours=-1), "Drawer knob is on now"),
    ],
)
def test_it_is_headed_by_how_far_off_the_class_is(as_coordinator, before, words):
    session = planned()

    assert heading(as_coordinator, session.begins - before) == words


def test_the_day_is_the_workshop_s_own(as_coordinator):
    """On 7 March 18:30 in Auckland it is 05:30 UTC: at 12:00 UTC on 6 March it is the 7th there already."""
    planned(room(zone="Pacific/Auckland"))

    assert heading(as_coordinator, datetime(2030, 3, 6, 12, tzinfo=UTC)) == "What is left before 18:30"


def test_what_is_late_stands_there_in_days(as_coordinator):
    """24 h of cure before Thursday 18:30: order, cut, drill and glue fall on Wednesday; it is Thursday."""
    planned(kits_for=12)

    with time_machine.travel(datetime(2030, 3, 7, 11, tzinfo=UTC), tick=False):
        html = start(as_coordinator).content.decode()

    assert html.count('<span class="late">1 day late</span>') == 4
    assert "4 things" in html


def test_a_job_called_done_is_not_left_any_more(as_coordinator):
    session = planned()
    typed = {"key": "cut", "done": "yes", "back": "start"}

    page = as_coordinator.post(reverse("classes:done", args=[session.pk]), typed, follow=True)

    assert page.redirect_chain == [("/", 302)]
    assert "Cut the blanks" not in page.content.decode()
    assert "Drill the blanks" in page.content.decode()


def test_it_has_one_filled_action_and_it_is_the_first_thing_left(as_coordinator):
    session = planned(room(2))
    sign_up(None, session, people(1)[0], NOW)

    html = start(as_coordinator).content.decode()

    assert re.findall(r'<a class="do first" href="([^"]+)"', html) == [
        f"{session.get_absolute_url()}#without-place"
    ]


def test_places_are_listed_with_their_kits(as_coordinator):
    session = planned(room(2))
    person = people(1)[0]
    sign_up(None, session, person, NOW, Place(2, 1))

    html = " ".join(start(as_coordinator).content.decode().split())

    assert f'<span class="tally">2a</span><p>{person}<span class="cap">kit 1</span></p>' in html
    assert '<span class="tally">1a</span><p><span class="cap">free</span></p>' in html


def test_without_a_class_those_who_may_are_asked_to_plan_one(sign_in_as):
    pages = [start(sign_in_as(role)).content.decode() for role in (Role.INSTRUCTOR, Role.HELPER)]

    assert all("No class is planned" in page for page in pages)
    assert [reverse("classes:new") in page for page in pages] == [True, False]


@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: f"{recipe.key}, {recipe.time.hands_on}")
def test_every_project_of_the_demonstration_has_its_stick(as_coordinator, recipe):
    session = planned(edition=kept_edition(recipe), at=time(10))

    page = start(as_coordinator)

    keys = {todo.key for todo in page.context["preparing"].todos}
    own = {each.key for each in (*recipe.preparation, *recipe.glue_ups)}
    assert own <= keys
    assert "order" in keys
    assert sum("rder" in todo.title for todo in page.context["preparing"].todos) == 1
    assert page.context["session"] == session


def test_the_page_asks_no_more_questions_for_more_people(as_coordinator, django_assert_max_num_queries):
    session = planned(room(24))
    for person in people(24):
        sign_up(None, session, person, NOW)
    planned(day=DAY + timedelta(days=1))

    with django_assert_max_num_queries(20):
        start(as_coordinator)


def test_a_class_that_is_over_says_by_how_many(as_coordinator):
    session = planned(room(2))
    for number, person in enumerate(people(2), start=1):
        sign_up(None, session, person, NOW, Place(number, 1))
    Lathe.objects.filter(number=2).update(condition="out", condition_reason="quill")

    page = start(as_coordinator).content.decode()

    assert "2 of 1 places taken" in page
    assert "Over by 1." in page
