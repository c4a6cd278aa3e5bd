"""Signing up, moving, swapping, offering and giving up, as staff do it on the pages."""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from django.test import Client
from django.utils import timezone
from django.utils.html import escape

from club.base.access import Role
from club.classes.actions.lists import hold, sign_up
from club.classes.domain.places import Place
from club.classes.models import ClassSession, SignUp
from club.lathes.models import Lathe
from tests.at_once import at_once
from tests.club.classes.rows import people, planned, room
from tests.conftest import SignInAs

pytestmark = pytest.mark.django_db
BERLIN = ZoneInfo("Europe/Berlin")


def coming(lathes: int = 3, **facts: Any) -> ClassSession:
    """A class in ten days, so that places can be offered in time."""
    return planned(room(lathes), day=date.today() + timedelta(days=10), **facts)


def text_of(answer: Any) -> str:
    return str(answer.content.decode())


def address(session: ClassSession, *rest: object) -> str:
    return "/".join(("", "classes", str(session.pk), *map(str, rest), ""))


def states() -> list[tuple[str, str | None, int | None]]:
    rows = SignUp.objects.select_related("lathe").order_by("number")
    return [(row.state, row.place.name if row.place else None, row.kit) for row in rows]


def filled_class(session: ClassSession, count: int) -> list[Any]:
    """So many people in, at 1a, 2a, 3a ..."""
    found = people(count)
    for number, person in enumerate(found, start=1):
        sign_up(None, session, person, timezone.now(), Place(number, 1))
    return found


def test_somebody_is_signed_up_for_a_place(as_instructor: Client):
    session, [person] = coming(), people(1)

    answer = as_instructor.post(address(session, "sign-up"), {"person": person.pk, "place": "2a"})

    assert answer.headers["Location"] == session.get_absolute_url()
    assert states() == [("in", "2a", 1)]


def test_the_place_one_came_from_is_chosen_already(as_instructor: Client):
    session = coming()

    page = text_of(as_instructor.get(f"{address(session, 'sign-up')}?place=2a"))

    assert '<option value="2a" selected>' in page


def test_whoever_is_signed_up_for_a_full_class_waits(as_instructor: Client):
    session = coming(1)
    filled_class(session, 1)
    [person] = people(1)

    page = text_of(as_instructor.get(address(session, "sign-up")))
    as_instructor.post(address(session, "sign-up"), {"person": person.pk})

    assert "Every place is taken: whoever is signed up now waits." in page
    assert states() == [("in", "1a", 1), ("waiting", None, None)]


def test_a_place_that_was_taken_meanwhile_is_refused_beside_its_field(as_instructor: Client):
    session = coming()
    filled_class(session, 1)
    [person] = people(1)

    answer = as_instructor.post(address(session, "sign-up"), {"person": person.pk, "place": "1a"})

    assert answer.status_code == 422
    assert escape("That place isn't free any more. Choose another.") in text_of(answer)
    assert f'<option value="{person.pk}" selected>' in text_of(answer)
    assert len(states()) == 1


def test_somebody_who_is_on_the_list_is_no_choice(as_instructor: Client):
    session = coming()
    [person] = filled_class(session, 1)

    answer = as_instructor.post(address(session, "sign-up"), {"person": person.pk})

    assert escape("This person is on the list already. Choose another.") in text_of(answer)
    assert len(states()) == 1


def test_somebody_with_another_class_at_that_time_is_shown_before_it_is_saved(as_instructor: Client):
    session = coming()
    other = planned(room(2), day=session.day, at=time(19, 0))
    [person] = filled_class(other, 1)

    shown = as_instructor.post(address(session, "sign-up"), {"person": person.pk})
    mark = shown.context["form"].clash_mark
    before = SignUp.objects.filter(class_session=session).count()
    kept = as_instructor.post(address(session, "sign-up"), {"person": person.pk, "anyway": mark})

    assert f"{person} is wanted at {other.edition.title}" in text_of(shown)
    assert (shown.status_code, before, kept.status_code) == (422, 0, 302)
    assert SignUp.objects.filter(class_session=session).count() == 1


def test_a_place_is_kept_until_a_time_by_the_workshops_clock(as_instructor: Client):
    session, [person] = coming(), people(1)
    until = f"{session.day}T12:00"

    as_instructor.post(address(session, "sign-up"), {"person": person.pk, "place": "1a", "until": until})

    row = SignUp.objects.get()
    assert (row.state, row.kit) == ("held", None)
    assert row.until == datetime.combine(session.day, time(12), BERLIN)


@pytest.mark.parametrize("until", ["tomorrow", "2020-01-01 12:00", "2027-02-30T12:00", "<b>", "9" * 400])
def test_a_time_that_is_gone_or_unreadable_keeps_no_place(until: str, as_instructor: Client):
    session, [person] = coming(), people(1)

    answer = as_instructor.post(address(session, "sign-up"), {"person": person.pk, "until": until})

    assert answer.status_code == 422
    assert "until" in answer.context["form"].errors
    assert states() == []


def test_a_person_moves_to_a_free_place(as_instructor: Client):
    session = coming()
    filled_class(session, 1)

    as_instructor.post(address(session, "people", 1), {"deed": "move", "place": "3a"})

    assert states() == [("in", "3a", 1)]


def test_two_people_change_places(as_instructor: Client):
    session = coming()
    filled_class(session, 2)
    other = SignUp.objects.get(number=2)

    as_instructor.post(address(session, "people", 1), {"deed": "swap", "other": other.pk})

    assert states() == [("in", "2a", 1), ("in", "1a", 2)]


def test_nobody_changes_places_with_somebody_whose_lathe_is_out_of_service(as_instructor: Client):
    session = coming()
    filled_class(session, 2)
    one, two = SignUp.objects.order_by("number")
    Lathe.objects.filter(number=2).update(condition="out", condition_reason="belt torn")

    answer = as_instructor.post(address(session, "people", 1), {"deed": "swap", "other": two.pk})
    page = text_of(as_instructor.get(address(session, "people", 2)))

    assert answer.status_code == 422
    assert states() == [("in", "1a", 1), ("in", "2a", 2)]
    assert escape("had 2a, which isn't there for this class now") in page
    assert 'value="swap"' not in page
    assert str(one.person) not in page


def test_an_offer_that_has_lapsed_reads_so_on_its_page_and_in_the_list_of_classes(as_instructor: Client):
    session = coming()
    [person] = people(1)
    hold(None, session, person, timezone.now(), timezone.now() + timedelta(hours=1), Place(1, 1))
    taken = text_of(as_instructor.get("/classes/"))
    SignUp.objects.update(until=timezone.now() - timedelta(minutes=1))

    page = text_of(as_instructor.get(address(session, "people", 1)))

    assert "<dd>lapsed</dd>" in page
    assert 'name="deed"' not in page
    assert "1 of 3" in taken
    assert "0 of 3" in text_of(as_instructor.get("/classes/"))


def test_whoever_gives_up_leaves_place_and_kit_and_the_next_one_is_offered_them(as_instructor: Client):
    session = coming(1)
    filled_class(session, 1)
    [waiting] = people(1)
    sign_up(None, session, waiting, timezone.now())

    as_instructor.post(address(session, "people", 1), {"deed": "give_up"})
    page = text_of(as_instructor.get(address(session, "offer")))
    as_instructor.post(
        address(session, "offer"), {"place": "1a", "until": f"{session.day - timedelta(days=5)}T12:00"}
    )
    offered = states()
    as_instructor.post(address(session, "people", 2), {"deed": "accept"})

    assert f"Offer a place to {waiting}" in page
    assert offered == [("cancelled", None, None), ("offered", "1a", None)]
    assert states() == [("cancelled", None, None), ("in", "1a", 1)]


@pytest.mark.parametrize(
    ("form", "status"),
    [
        ({"deed": "move"}, 422),
        ({"deed": "move", "place": "9z"}, 422),
        ({"deed": "swap", "other": "99999"}, 422),
        ({"deed": "accept"}, 422),
        ({"deed": "stand"}, 404),
        ({}, 404),
    ],
)
def test_what_cannot_be_done_changes_nothing(form: dict[str, str], status: int, as_instructor: Client):
    session = coming()
    filled_class(session, 2)
    before = states()

    answer = as_instructor.post(address(session, "people", 1), form)

    assert answer.status_code == status
    assert states() == before


def test_a_number_that_is_not_on_the_list_is_not_found(as_instructor: Client):
    assert as_instructor.get(address(coming(), "people", 7)).status_code == 404


def test_whoever_gave_up_has_nothing_to_press_and_a_second_press_changes_nothing(as_instructor: Client):
    session = coming()
    filled_class(session, 1)
    way = address(session, "people", 1)
    as_instructor.post(way, {"deed": "give_up"})

    again = as_instructor.post(way, {"deed": "give_up"})

    assert again.status_code == 422
    assert states() == [("cancelled", None, None)]
    assert 'name="deed"' not in text_of(as_instructor.get(way))


def test_a_helper_reads_and_signs_nobody_up(sign_in_as: SignInAs):
    session = coming()

    answer = sign_in_as(Role.HELPER).get(address(session, "sign-up"))

    assert answer.status_code == 403


@pytest.mark.django_db(transaction=True)
def test_thirty_who_are_signed_up_at_once_fill_every_place_once_and_queue_in_order(as_coordinator: Client):
    session = coming(4, sittings=2)
    forms = [{"person": str(person.pk)} for person in people(30)]

    answers = at_once(as_coordinator, address(session, "sign-up"), forms)

    rows = SignUp.objects.order_by("number")
    assert answers == {302: 30}
    assert [row.number for row in rows] == list(range(1, 31))
    assert [row.state for row in rows] == ["in"] * 8 + ["waiting"] * 22
    assert [row.kit for row in rows][:8] == list(range(1, 9))


@pytest.mark.django_db(transaction=True)
def test_one_person_sent_twelve_times_at_once_is_on_the_list_once(as_coordinator: Client):
    session, [person] = coming(), people(1)

    answers = at_once(
        as_coordinator, address(session, "sign-up"), [{"person": str(person.pk), "place": "1a"}] * 12
    )

    assert answers == {302: 1, 422: 11}
    assert states() == [("in", "1a", 1)]
