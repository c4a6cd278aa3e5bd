"""A class's own page: who stands where in words, its time, what is left to do and to print."""

from __future__ import annotations

import re
from datetime import UTC, datetime, time, timedelta
from html import unescape

import pytest
import time_machine
from django.urls import reverse
from django.utils import timezone

from club.base.access import Role
from club.classes.actions.classes import cancel_class
from club.classes.actions.lists import hold, sign_up
from club.classes.domain.places import Place
from club.classes.models import ClassSession, PreparationDone
from club.lathes.models import Lathe
from tests.club.classes.rows import NOW, lathes_of, people, planned, room

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def still_clock():
    with time_machine.travel(NOW, tick=False):
        yield


def words(page) -> str:
    """What stands on the page, blanks as a reader sees them."""
    text = re.sub(r"<(svg|script|template).*?</\1>", " ", page.content.decode(), flags=re.DOTALL)
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", text)).replace("\u00a0", " ").split())


def shown(client, session: ClassSession) -> str:
    return words(client.get(session.get_absolute_url()))


def test_it_says_when_where_who_and_what_limits_its_places(as_coordinator):
    """10 + 20 + 2 x (45 + 5) + 15 = 145 of 150 minutes; three lathes in two sittings are six places."""
    page = shown(as_coordinator, planned(room(3, name="Mill"), sittings=2))

    for said in (
        "Thursday 7 March 2030 18:30 to 21:00",
        "Where Mill",
        "Taught by Tove Teach",
        "0 of 6 taken",
        "6 places: 3 lathes, 2 sittings; 145 of 150 min",
        "Waiting nobody",
    ):
        assert said in page


def test_places_lowered_by_hand_say_so(as_coordinator):
    page = shown(as_coordinator, planned(room(3), lowered_to=2))

    assert "2 places, lowered by hand from 3: 3 lathes, 1 sitting; 95 of 150 min" in page


def test_a_lathe_that_came_back_gives_places_the_class_was_not_saved_with(as_coordinator):
    workshop = room(3)
    Lathe.objects.filter(number=3).update(condition="out", condition_reason="quill")
    session = planned(workshop)
    Lathe.objects.filter(number=3).update(condition="in_service", condition_reason="")

    assert "2 places, as the class was saved; its 3 lathes" in shown(as_coordinator, session)


def test_everybody_stands_by_place_with_lathe_kit_and_state(as_coordinator):
    session = planned(room(2))
    one, two = people(2)
    sign_up(None, session, one, NOW, Place(2, 1))
    hold(None, session, two, NOW, NOW + timedelta(days=1), Place(1, 1))

    page = shown(as_coordinator, session)

    assert f"2a {one} lathe 2, kit 1, in" in page
    assert f"1a {two} lathe 1, kept until Saturday 2 March, 13:00" in page


def test_a_free_place_leads_to_signing_up_for_it(as_coordinator):
    session = planned(room(2))
    sign_up(None, session, people(1)[0], NOW, Place(2, 1))

    html = as_coordinator.get(session.get_absolute_url()).content.decode()

    address = reverse("classes:sign_up", args=[session.pk])
    assert re.findall(rf'{address}\?place=(\w+)"', html) == ["1a"]


def test_a_free_place_is_offered_not_given_while_somebody_waits(as_coordinator):
    session = planned(room(1))
    first, second = people(2)
    hold(None, session, first, NOW, NOW + timedelta(hours=1))
    sign_up(None, session, second, NOW)

    with time_machine.travel(NOW + timedelta(hours=2), tick=False):
        html = as_coordinator.get(session.get_absolute_url()).content.decode()

    assert "?place=" not in html
    assert reverse("classes:offer", args=[session.pk]) in html


def test_a_lathe_out_of_service_is_named_and_whoever_stood_there_has_no_place(as_coordinator):
    session = planned(room(2))
    one, two = people(2)
    sign_up(None, session, one, NOW, Place(1, 1))
    sign_up(None, session, two, NOW, Place(2, 1))
    Lathe.objects.filter(number=2).update(condition="out", condition_reason="quill does not lock")

    page = shown(as_coordinator, session)

    assert "out of service Lathe 2 : quill does not lock" in page
    assert f"Without a place {two} kit 2, in, had 2a, which isn't there for this class now" in page
    assert "Over by 1" in page


def test_whoever_waits_is_told_how_many_are_before_them_whatever_number_they_were_given(as_coordinator):
    session = planned(room(1))
    _, second, third = everybody = people(3)
    for person in everybody:
        sign_up(None, session, person, NOW)

    page = shown(as_coordinator, session)

    assert f"{second} next in line" in page
    assert f"{third} number 2 in line" in page


def test_its_time_goes_by_the_clock_on_the_wall(as_coordinator):
    page = shown(as_coordinator, planned(sittings=2))

    for said in (
        "18:30 Briefing 10 min",
        "19:00 At the lathes, first sitting 45 min",
        "19:45 Change-over, first sitting 5 min",
        "19:50 At the lathes, second sitting 45 min",
        "20:55 Done 5 min to spare",
    ):
        assert said in page


def test_a_class_that_ends_after_the_clocks_went_forward_says_what_they_show_then(as_coordinator):
    """On Sunday 31 March 2030 clocks in Berlin go from 02:00 to 03:00: 01:30 and 60 minutes is 03:30."""
    session = planned(day=datetime(2030, 3, 31, tzinfo=UTC).date(), at=time(1, 30), minutes=60)

    assert "Sunday 31 March 2030 01:30 to 03:30" in shown(as_coordinator, session)


def test_minutes_that_do_not_fit_are_told(as_coordinator):
    session = planned(sittings=2)
    ClassSession.objects.filter(pk=session.pk).update(minutes=130)

    page = shown(as_coordinator, session)

    assert "Over by 15 min" in page
    assert "The class needs 145 min and has 130" in page


def test_its_note_stands_there_as_text(as_coordinator):
    session = planned(note="<script>alert(1)</script>\nNo oil this time.")

    html = as_coordinator.get(session.get_absolute_url()).content.decode()

    assert "&lt;script&gt;alert(1)&lt;/script&gt;<br>No oil this time." in html


def test_lathe_cards_are_those_of_its_lathes(as_coordinator):
    workshop = room(3)
    chosen = lathes_of(workshop)[:2]

    html = as_coordinator.get(planned(workshop, lathes=chosen).get_absolute_url()).content.decode()

    asked = "&amp;".join(f"lathe={lathe.pk}" for lathe in chosen)
    assert f"{reverse('home:cards_pdf')}?{asked}&amp;paper=a4" in html


def test_a_cancelled_class_says_so_and_leaves_nothing_to_do(as_coordinator):
    session = planned()
    cancel_class(None, session, 1)

    html = as_coordinator.get(session.get_absolute_url()).content.decode()

    assert "This class is cancelled" in html
    for name in ("sign_up", "done", "offer", "mend", "kit", "order", "register"):
        assert f'"{reverse(f"classes:{name}", args=[session.pk])}' not in html


def test_a_class_that_was_held_asks_for_nothing_any_more(as_coordinator):
    session = planned()

    with time_machine.travel(session.ends, tick=False):
        page = shown(as_coordinator, session)

    assert "Beforehand" not in page
    assert "Sign somebody up" not in page
    assert "Class list" in page


def test_too_few_people_are_told(as_coordinator):
    assert "0 of 3 taken to be held with 3 or more" in shown(as_coordinator, planned(minimum=3))


def test_a_helper_reads_it_and_ticks_but_signs_nobody_up(sign_in_as):
    session = planned()
    helper = sign_in_as(Role.HELPER, session.workshop)

    html = helper.get(session.get_absolute_url()).content.decode()

    assert reverse("classes:done", args=[session.pk]) in html
    assert reverse("classes:sign_up", args=[session.pk]) not in html


def test_another_workshop_s_class_is_not_found(sign_in_as):
    session, other = planned(), planned()
    client = sign_in_as(Role.INSTRUCTOR, other.workshop)

    pages = [client.get(session.get_absolute_url()), client.post(reverse("classes:done", args=[session.pk]))]

    assert [page.status_code for page in pages] == [404, 404]


class TestATick:
    def pressed(self, client, session, **typed):
        return client.post(reverse("classes:done", args=[session.pk]), typed)

    def test_goes_back_to_the_class(self, as_coordinator):
        session = planned()

        answer = self.pressed(as_coordinator, session, key="cut", done="yes", back="class")

        assert answer.url == f"{session.get_absolute_url()}#preparation"
        assert PreparationDone.objects.get().by_name == str(as_coordinator.account)
        assert "Not after all" in shown(as_coordinator, session)

    def test_goes_back_to_the_first_page_and_nowhere_else(self, as_coordinator):
        session = planned()

        backs = ["start", "https://elsewhere.example/"]
        answers = [self.pressed(as_coordinator, session, key="cut", done="yes", back=back) for back in backs]

        assert [answer.url for answer in answers] == ["/", f"{session.get_absolute_url()}#preparation"]

    def test_for_what_is_no_job_is_not_found(self, as_coordinator):
        answer = self.pressed(as_coordinator, planned(), key="<script>", done="yes")

        assert answer.status_code == 404
        assert not PreparationDone.objects.exists()


def test_the_page_asks_no_more_questions_for_more_people(as_coordinator, django_assert_max_num_queries):
    session = planned(room(24))
    for person in people(24):
        sign_up(None, session, person, timezone.now())

    with django_assert_max_num_queries(20):
        as_coordinator.get(session.get_absolute_url())


def test_a_place_that_a_lowered_class_never_fills_is_not_called_free(as_coordinator):
    session = planned(room(2), lowered_to=1)
    [one] = people(1)
    before = shown(as_coordinator, session)
    sign_up(None, session, one, NOW, Place(1, 1))

    after = shown(as_coordinator, session)

    assert "2a free" in before
    assert "2a not used" in after
