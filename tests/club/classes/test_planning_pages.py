"""Planning a class and mending it: what the pages keep, ask and refuse."""

from __future__ import annotations

from datetime import date, time
from typing import Any

import pytest
from django.test import Client
from django.utils.html import escape

from club.base.access import Role
from club.base.changes import changes_of
from club.classes.models import ClassSession
from club.classes.sentences import REFUSED
from tests.club.classes.rows import DAY, kept_edition, lathes_of, planned, room, teacher
from tests.conftest import SignInAs
from tests.factories import PersonFactory

pytestmark = pytest.mark.django_db


def text_of(answer: Any) -> str:
    return str(answer.content.decode())


def begun(edition: Any, workshop: Any) -> str:
    return f"/classes/new/?edition={edition.pk}&workshop={workshop.pk}"


def filled(session_room: Any, tove: Any, /, **typed: Any) -> dict[str, Any]:
    usual = {
        "edition": kept_edition().pk,
        "day": DAY.isoformat(),
        "at": "18:30",
        "minutes": "150",
        "sittings": "1",
        "instructor": tove.pk,
        "lathes": [lathe.pk for lathe in lathes_of(session_room)],
        "minimum": "1",
        "demonstrations": "1",
        "spares_rule": "recipe",
    }
    return {**usual, **typed}


def test_a_new_class_begins_with_what_and_where(as_instructor: Client):
    edition, workshop = kept_edition(), room()

    page = text_of(as_instructor.get("/classes/new/"))
    form = text_of(as_instructor.get(begun(edition, workshop)))

    assert f'<option value="{edition.pk}">' in page
    assert "Lathe 3" in form
    assert 'name="minutes" value="105"' in form


def test_a_project_taught_before_begins_as_it_was_the_last_time(as_instructor: Client):
    workshop = room(3)
    lathes = lathes_of(workshop)
    planned(workshop, lathes=lathes[1:], demonstration_lathe=lathes[0], sittings=2, minutes=160)

    page = text_of(as_instructor.get(begun(kept_edition(), workshop)))
    elsewhere = text_of(as_instructor.get(begun(kept_edition(), room(3))))

    assert 'name="minutes" value="160"' in page
    assert page.count('name="lathes"') == 3
    assert page.count(" checked") == 3  # two lathes and the spares of the recipe
    assert f'<option value="{lathes[0].pk}" selected>' in page
    assert "as they were on Thursday 7 March 2030" in page
    assert "as they were on" not in elsewhere


def test_a_class_is_planned_with_its_lathes_people_and_places(as_instructor: Client):
    workshop, tove, helper = room(3), teacher(), teacher("Hale Help")
    lathes = lathes_of(workshop)

    answer = as_instructor.post(
        begun(kept_edition(), workshop),
        filled(workshop, tove, sittings="2", demonstration_lathe=lathes[0].pk, helpers=[helper.pk]),
    )

    session = ClassSession.objects.get()
    assert answer.headers["Location"] == session.get_absolute_url()
    assert (session.day, session.at, session.places) == (date(2030, 3, 7), time(18, 30), 4)
    assert session.begins.isoformat() == "2030-03-07T17:30:00+00:00"
    assert list(session.helpers.all()) == [helper]
    assert changes_of(session).count() == 1


@pytest.mark.parametrize(
    ("typed", "field", "said"),
    [
        ({"day": "soon"}, "day", "Write the day as year, month, day: 2027-03-04."),
        ({"at": "26:00"}, "at", "Write the time as 18:30."),
        ({"minutes": "0"}, "minutes", "Write a whole number from 1 to 720."),
        ({"sittings": "many"}, "sittings", "Write a whole number from 1 to 6."),
        ({"lowered_to": "4"}, "lowered_to", "The lathes give 3 places"),
        ({"lathes": []}, "lathes", "Tick at least one lathe."),
        ({"minimum": "4"}, "minimum", "There are 3 places, so fewer people than that are the least."),
        ({"spares_rule": "count"}, "spares_number", "Say how many, or keep the spares of the recipe."),
        ({"instructor": ""}, "instructor", "Choose who teaches."),
        ({"note": "x" * 601}, "note", "That is more than 600 characters. Shorten it."),
    ],
)
def test_what_is_wrong_is_said_beside_its_field_and_nothing_is_kept(
    typed: dict[str, Any], field: str, said: str, as_instructor: Client
):
    workshop = room(3)

    answer = as_instructor.post(begun(kept_edition(), workshop), filled(workshop, teacher(), **typed))

    assert answer.status_code == 422
    assert escape(said) in text_of(answer)
    assert field in answer.context["form"].errors
    assert not ClassSession.objects.exists()


def test_a_sitting_that_does_not_fit_the_minutes_is_refused_with_the_sum(as_instructor: Client):
    """10 + 20 + 3 x (45 + 5) + 15 = 195 of 150 minutes."""
    workshop = room(3)

    answer = as_instructor.post(begun(kept_edition(), workshop), filled(workshop, teacher(), sittings="3"))

    assert "clean-up need 195 of 150 min. Give it more time, or fewer sittings." in text_of(answer)
    assert not ClassSession.objects.exists()


def test_a_time_that_clocks_skip_is_refused_with_those_around_it(as_instructor: Client):
    """Central European clocks go from 2:00 to 3:00 on 31 March 2030 (Directive 2000/84/EC)."""
    workshop = room(3)

    answer = as_instructor.post(
        begun(kept_edition(), workshop), filled(workshop, teacher(), day="2030-03-31", at="02:30")
    )

    assert str(REFUSED["no_such_time"] % {"left_at": "02:00", "goes_on_at": "03:00"}) in text_of(answer)
    assert not ClassSession.objects.exists()


def test_a_clash_of_room_and_people_is_shown_before_anything_is_saved(as_instructor: Client):
    workshop, tove = room(3), teacher()
    other = planned(workshop, instructor=tove, at=time(20, 0))

    answer = as_instructor.post(begun(kept_edition(), workshop), filled(workshop, tove))

    page = text_of(answer)
    assert answer.status_code == 422
    assert f"{workshop} is taken by {other.edition.title}" in page
    assert "both want it for 60 minutes" in page
    assert "Tove Teach is wanted at" in page
    assert ClassSession.objects.count() == 1


def test_a_clash_that_was_ticked_as_it_reads_is_let_through_and_no_other(as_instructor: Client):
    workshop, tove = room(3), teacher()
    planned(workshop, at=time(20, 0))
    address = begun(kept_edition(), workshop)
    shown = as_instructor.post(address, filled(workshop, tove))
    mark = shown.context["form"].clash_mark

    later = as_instructor.post(address, filled(workshop, tove, anyway=mark, at="19:00"))
    same = as_instructor.post(address, filled(workshop, tove, anyway=mark))

    assert (later.status_code, same.status_code) == (422, 302)


def test_a_class_that_was_cancelled_is_in_nobodys_way(as_instructor: Client):
    workshop, tove = room(3), teacher()
    other = planned(workshop, instructor=tove)
    as_instructor.post(f"/classes/{other.pk}/cancel/", {"revision": "1"})

    answer = as_instructor.post(begun(kept_edition(), workshop), filled(workshop, tove))

    assert answer.status_code == 302


def test_mending_keeps_what_was_typed_and_counts_the_places_anew(as_instructor: Client):
    workshop = room(3)
    session = planned(workshop)

    answer = as_instructor.post(
        f"/classes/{session.pk}/mend/",
        filled(
            workshop, session.instructor, lathes=[lathes_of(workshop)[0].pk], revision="1", note="Bring tea"
        ),
    )

    session.refresh_from_db()
    assert answer.status_code == 302
    assert (session.places, session.note, session.revision) == (1, "Bring tea", 2)


def test_a_class_that_somebody_else_mended_meanwhile_is_not_overwritten(as_instructor: Client):
    workshop = room(3)
    session = planned(workshop)
    address, form = f"/classes/{session.pk}/mend/", filled(workshop, session.instructor, revision="1")
    as_instructor.post(address, form | {"note": "first"})

    answer = as_instructor.post(address, form | {"note": "second"})

    session.refresh_from_db()
    assert answer.status_code == 422
    assert "Somebody else changed this" in text_of(answer)
    assert session.note == "first"
    assert "second" in text_of(answer)


def test_a_class_moves_to_another_workshop_and_its_lathes(as_instructor: Client):
    session = planned(room(3))
    hall = room(2, name="Long Hall")

    answer = as_instructor.post(
        f"/classes/{session.pk}/mend/?workshop={hall.pk}", filled(hall, session.instructor, revision="1")
    )

    session.refresh_from_db()
    assert answer.status_code == 302
    assert (session.workshop, session.places) == (hall, 2)


def test_a_class_is_cancelled_and_planned_again(as_instructor: Client):
    session = planned()
    address = f"/classes/{session.pk}/cancel/"

    as_instructor.post(address, {"revision": "1"})
    cancelled = ClassSession.objects.get().state
    as_instructor.post(address, {"revision": "2"})

    assert (cancelled, ClassSession.objects.get().state) == ("cancelled", "planned")


def test_an_instructor_of_one_workshop_plans_for_no_other(sign_in_as: SignInAs):
    here, elsewhere = room(2, name="Here"), room(2, name="Elsewhere")
    client = sign_in_as(Role.INSTRUCTOR, here)
    session = planned(elsewhere)

    began = client.get(begun(kept_edition(), elsewhere))
    mended = client.get(f"/classes/{session.pk}/mend/")
    moved = client.get(f"/classes/{planned(here, day=date(2030, 4, 1)).pk}/mend/?workshop={elsewhere.pk}")

    assert (began.status_code, mended.status_code) == (422, 404)
    assert moved.context["workshop"] == here


@pytest.mark.parametrize("hostile", ["<script>alert(1)</script>", "\x00", "\u202e" * 40, "9" * 5000])
def test_hostile_text_in_any_field_is_answered_with_the_form(hostile: str, as_instructor: Client):
    workshop = room(3)
    names = (
        "edition",
        "day",
        "at",
        "minutes",
        "instructor",
        "helpers",
        "lathes",
        "spares_number",
        "kits_for",
    )
    form = filled(workshop, teacher(), spares_rule="count") | dict.fromkeys(names, hostile)

    answer = as_instructor.post(begun(kept_edition(), workshop), form)

    assert answer.status_code == 422
    assert "<script>alert" not in text_of(answer)


def test_the_list_asks_as_many_questions_for_forty_classes_as_for_one(
    as_instructor: Client, django_assert_max_num_queries: Any
):
    workshop, tove = room(1), teacher()
    for day in range(1, 29):
        planned(workshop, instructor=tove, day=date(2030, 5, day))

    with django_assert_max_num_queries(9):
        page = text_of(as_instructor.get("/classes/"))

    assert page.count("0 of 1") == 28


def test_a_list_without_classes_says_so(as_instructor: Client):
    assert "No class is planned." in text_of(as_instructor.get("/classes/"))


def test_people_who_may_not_teach_are_no_choice(as_instructor: Client):
    stranger = PersonFactory(name="Stray Student")

    page = text_of(as_instructor.get(begun(kept_edition(), room())))

    assert stranger.name not in page
