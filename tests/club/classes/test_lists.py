"""A class's list in rows: what each change writes, what it refuses, and that nothing is done half-way."""

from __future__ import annotations

from datetime import timedelta

import pytest

from club.base.changes import changes_of
from club.classes.actions.classes import cancel_class, mend_class
from club.classes.actions.lists import accept, give_up, hold, move, offer_next, sign_up, swap
from club.classes.book import book_of
from club.classes.domain.errors import ClassError
from club.classes.domain.places import Place
from club.classes.models import ClassSession, SignUp
from club.lathes.models import Lathe
from tests.club.classes.rows import NOW, lathes_of, people, planned, room

pytestmark = pytest.mark.django_db

LATER = NOW + timedelta(days=1)


def fresh(session: ClassSession) -> ClassSession:
    return ClassSession.objects.whole().get(pk=session.pk)


def reads(session: ClassSession) -> list[tuple[str, str, str | None, int | None]]:
    """Each line of the list: person, state, place, kit."""
    rows = SignUp.objects.filter(class_session=session).select_related("person", "lathe").order_by("number")
    return [(row.person.name, row.state, row.place.name if row.place else None, row.kit) for row in rows]


def test_a_class_has_as_many_places_as_lathes_in_service_times_sittings():
    workshop = room(4)
    Lathe.objects.filter(number=4).update(condition="out", condition_reason="quill")

    session = planned(workshop, sittings=2, demonstration_lathe=lathes_of(workshop)[0])

    assert session.places == 4
    assert [place.name for place in book_of(fresh(session), NOW).free] == ["2a", "3a", "2b", "3b"]


def test_whoever_signs_up_is_in_with_place_and_kit_until_all_are_taken_then_waits():
    session = planned(room(2))
    one, two, three = people(3)

    sign_up(None, session, one, NOW, Place(2, 1))
    sign_up(None, session, two, NOW)
    sign_up(None, session, three, NOW, Place(1, 1))

    assert reads(session) == [
        (one.name, "in", "2a", 1),
        (two.name, "in", None, 2),
        (three.name, "waiting", None, None),
    ]


def test_nobody_is_twice_on_a_list():
    session = planned()
    [one] = people(1)
    sign_up(None, session, one, NOW)

    with pytest.raises(ClassError) as refused:
        sign_up(None, session, one, NOW)

    assert refused.value.code == "twice"
    assert len(reads(session)) == 1


def test_two_people_change_places_and_keep_their_kits():
    session = planned()
    one, two = people(2)
    sign_up(None, session, one, NOW, Place(1, 1))
    sign_up(None, session, two, NOW, Place(2, 1))

    swap(None, session, one, two, NOW)

    assert reads(session) == [(one.name, "in", "2a", 1), (two.name, "in", "1a", 2)]


def test_a_taken_place_is_refused_and_nobody_moves():
    session = planned()
    one, two = people(2)
    sign_up(None, session, one, NOW, Place(1, 1))
    sign_up(None, session, two, NOW, Place(2, 1))

    with pytest.raises(ClassError) as refused:
        move(None, session, two, NOW, Place(1, 1))

    assert refused.value.code == "place_taken"
    assert reads(session) == [(one.name, "in", "1a", 1), (two.name, "in", "2a", 2)]


def test_a_given_up_place_is_free_again_and_kept_for_the_next_in_line():
    session = planned(room(1))
    one, two, three = people(3)
    for person in (one, two):
        sign_up(None, session, person, NOW, Place(1, 1))

    give_up(None, session, one, NOW)
    sign_up(None, session, three, NOW, Place(1, 1))
    offered = offer_next(None, session, NOW, LATER, Place(1, 1))

    assert offered == two
    assert [line[1:] for line in reads(session)] == [
        ("cancelled", None, None),
        ("offered", "1a", None),
        ("waiting", None, None),
    ]


def test_an_offer_that_nobody_took_lapses_by_itself_and_the_next_one_can_have_it():
    session = planned(room(1))
    one, two, three = people(3)
    for person in (one, two, three):
        sign_up(None, session, person, NOW)
    give_up(None, session, one, NOW)
    offer_next(None, session, NOW, LATER)

    offered = offer_next(None, session, LATER, LATER + timedelta(days=1))

    assert offered == three
    assert [line[1] for line in reads(session)] == ["cancelled", "lapsed", "offered"]


def test_whoever_accepts_an_offer_is_in_with_a_kit():
    session = planned()
    [one] = people(1)
    hold(None, session, one, NOW, LATER, Place(3, 1))

    accept(None, session, one, NOW)

    assert reads(session) == [(one.name, "in", "3a", 1)]


def test_a_place_is_not_kept_until_a_time_that_is_gone():
    session = planned()
    [one] = people(1)

    with pytest.raises(ClassError) as refused:
        hold(None, session, one, NOW, NOW)

    assert refused.value.code == "past"
    assert reads(session) == []


def test_a_lathe_that_goes_out_drops_nobody_and_the_class_is_over():
    session = planned(room(2))
    one, two = people(2)
    sign_up(None, session, one, NOW, Place(1, 1))
    sign_up(None, session, two, NOW, Place(2, 1))

    Lathe.objects.filter(number=2).update(condition="out", condition_reason="quill")

    book = book_of(fresh(session), NOW)
    assert (book.places, book.over) == (1, 1)
    assert [line.person for line in book.misplaced] == [two.pk]
    assert [line[1:] for line in reads(session)] == [("in", "1a", 1), ("in", "2a", 2)]


def test_a_class_whose_places_come_back_never_takes_more_than_were_stored():
    session = planned(room(3), lowered_to=2)
    one, two, three = people(3)

    for person in (one, two, three):
        sign_up(None, session, person, NOW)

    assert [line[1] for line in reads(session)] == ["in", "in", "waiting"]


def test_mending_a_class_moves_nobody():
    workshop = room(3)
    session = planned(workshop)
    [one] = people(1)
    sign_up(None, session, one, NOW, Place(3, 1))

    changed = fresh(session)
    changed.sittings = 2
    mend_class(None, changed, 1, lathes_of(workshop)[:2])

    assert fresh(session).places == 4
    assert reads(session) == [(one.name, "in", "3a", 1)]


def test_a_cancelled_class_takes_nobody_and_keeps_its_list():
    session = planned()
    one, two = people(2)
    sign_up(None, session, one, NOW, Place(1, 1))
    cancel_class(None, session, 1)

    with pytest.raises(ClassError) as refused:
        sign_up(None, session, two, NOW)

    assert refused.value.code == "class_cancelled"
    assert reads(session) == [(one.name, "in", "1a", 1)]


def test_the_change_log_says_who_went_where():
    session = planned()
    [one] = people(1)
    sign_up(None, session, one, NOW, Place(1, 1))

    move(None, session, one, NOW, Place(2, 1))

    latest = changes_of(session)[0]
    assert latest.lines == [[f"{one.name}, no. 1", "in, 1a, kit 1", "in, 2a, kit 1"]]


def test_a_list_is_read_and_written_in_as_few_questions_however_long_it_is(django_assert_max_num_queries):
    session = planned(room(30))
    for person in people(12):
        sign_up(None, session, person, NOW)
    [last] = people(1)

    with django_assert_max_num_queries(18):
        sign_up(None, session, last, NOW, Place(30, 1))

    assert reads(session)[-1][1:] == ("in", "30a", 13)
