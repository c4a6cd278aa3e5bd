"""The page of a draft and the pages of its parts: what they write, and what they refuse."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from django.test import Client

from club.base.changes import changes_of
from club.base.roles import Role
from club.base.writing import STALE
from projects.library.actions import save_draft
from projects.library.models import Edition, EditionWord
from tests.conftest import SignInAs
from tests.projects.library.examples import KNOB, with_step
from tests.projects.library.posting import address, filled, text_of
from tests.projects.library.rows import draft, kept, next_draft

pytestmark = pytest.mark.django_db


PAGES = ["draft", "draft_marks", "draft_mend"]


@pytest.mark.parametrize("name", PAGES)
@pytest.mark.parametrize("role", [Role.COORDINATOR, Role.INSTRUCTOR])
def test_whoever_writes_projects_opens_it(name: str, role: Role, sign_in_as: SignInAs):
    draft()

    assert sign_in_as(role).get(address(name)).status_code == 200


@pytest.mark.parametrize("name", [*PAGES, "draft_add", "draft_take_out"])
@pytest.mark.parametrize("role", [Role.HELPER, Role.SAFETY_OFFICER, Role.TREASURER, Role.STUDENT])
def test_others_may_not(name: str, role: Role, sign_in_as: SignInAs):
    draft()

    assert sign_in_as(role).get(address(name)).status_code == 403


@pytest.mark.parametrize("name", [*PAGES, "draft_add", "draft_take_out"])
def test_an_edition_that_is_kept_is_not_written_on(name: str, as_instructor: Client):
    kept()

    assert as_instructor.get(address(name, at="blank")).status_code == 404
    assert as_instructor.get(address(name, "no-such-project", at="blank")).status_code == 404


def test_the_draft_of_the_next_edition_is_written_while_the_last_stays(as_instructor: Client):
    first = kept()
    next_draft(first)
    way = address("draft_mend")

    as_instructor.post(way, filled(as_instructor, way, title="Long knob"))

    first.refresh_from_db()
    assert (first.title, Edition.objects.drafts().get().title) == ("Drawer knob", "Long knob")


def test_a_move_is_no_link(as_instructor: Client):
    draft()

    assert as_instructor.get(address("draft_move")).status_code == 405


def test_the_page_shows_everything_that_is_in_the_recipe(as_instructor: Client):
    draft()

    page = text_of(as_instructor.get(address("draft")))

    for words in (
        *(
            "Drawer knob",
            "A knob on a dowel",
            "Dowel in the collet",
            "Go through the grits.",
            "P120, P180, P240",
        ),
        *("Wood glue", "Glue the dowel in", "Drill the blanks", "Try by hand whether the dowel slips."),
        *("parting tool", "Plain knob"),
    ):
        assert words in page, words


def test_what_has_to_be_looked_at_leads_to_the_page_that_mends_it(as_instructor: Client):
    draft(with_step(KNOB, "rough", stage=None))

    page = text_of(as_instructor.get(address("draft")))

    assert "at=mountings.0.steps.1#id_stage" in page


def test_a_step_is_mended_and_the_change_is_recorded(as_instructor: Client):
    edition = draft()
    way = address("draft_mend", at="mountings.0.steps.1")

    answer = as_instructor.post(way, filled(as_instructor, way, minutes="9", rest_gap="3 mm"))

    edition = Edition.objects.get(pk=edition.pk)
    step = edition.recipe.mountings[0].steps[1]
    assert answer.status_code == 302
    assert answer.headers["Location"] == f"{address('draft')}#mountings-0-steps-1"
    assert (step.minutes, step.rest_gap.typed, step.key) == (9, "3 mm", "rough")
    assert edition.revision == 2
    lines = changes_of(edition)[0].lines
    assert ["mountings 1, steps 2, minutes", "8", "9"] in lines


def test_what_was_typed_stays_and_nothing_is_written_when_a_field_is_wrong(as_instructor: Client):
    edition = draft()
    way = address("draft_mend", at="mountings.0.steps.1")

    answer = as_instructor.post(
        way, filled(as_instructor, way, text="Rough it round.", minutes="nine", rest_gap="3")
    )

    page = text_of(answer)
    assert answer.status_code == 422
    assert "Write a whole number from 0 to 600." in page
    assert "could be inches or millimetres" in page
    assert all(f'value="{typed}"' in page for typed in ("nine", "3"))
    assert "Rough it round." in page
    edition.refresh_from_db()
    assert edition.revision == 1


HOSTILE = [
    "\0",
    "\u202e",
    "a" * 100_000,
    "<script>alert(1)</script>",
    "\ud7ff\uffff",
    "' OR 1=1 --",
    "\u200b",
]


@pytest.mark.parametrize("text", HOSTILE)
@pytest.mark.parametrize("at", ["", "grits", "skills", "blank", "mountings.0", "mountings.0.steps.1", "time"])
def test_hostile_text_is_refused_or_kept_as_text(at: str, text: str, as_instructor: Client):
    draft()
    way = address("draft_mend", at=at)
    fields = {name: text for name in filled(as_instructor, way) if name != "revision"}

    answer = as_instructor.post(way, fields | {"revision": "1"})

    assert answer.status_code in {302, 422}
    assert "<script>alert" not in answer.content.decode()
    assert as_instructor.get(address("draft")).status_code == 200


@pytest.mark.parametrize(
    "at",
    [
        *("mountings.7", "mountings.0.steps.99", "nothing", "mountings", "title", "mountings.0.title"),
        *("profile", "profile.marks.0", "grits.0", "__class__", "\0", "a" * 500, "mountings.0.steps.-1"),
    ],
)
@pytest.mark.parametrize("name", ["draft_mend", "draft_add", "draft_take_out"])
def test_an_address_of_no_place_is_not_found(name: str, at: str, as_instructor: Client):
    draft()

    assert as_instructor.get(address(name, at=at)).status_code == 404


def test_whoever_saves_second_is_told_and_overwrites_nothing(as_instructor: Client):
    edition = draft()
    way = address("draft_mend", at="mountings.0.steps.1")
    late = filled(as_instructor, way, minutes="9")
    other = replace(KNOB, title="Long knob")
    save_draft(None, edition, other, 1)

    answer = as_instructor.post(way, late)

    assert answer.status_code == 422
    assert str(STALE) in text_of(answer)
    assert 'value="9"' in text_of(answer)
    assert Edition.objects.get().recipe == other


def test_another_wood_does_not_keep_the_density_of_the_last_one(as_instructor: Client):
    next_draft(kept())
    way = address("draft_mend", at="blank")
    page = filled(as_instructor, way)

    as_instructor.post(way, page | {"species": "cherry_black"})

    blank = Edition.objects.drafts().get().recipe.blank
    assert page["density_kg_per_m3"] != [""]
    assert (blank.species, blank.density_kg_per_m3) == ("cherry_black", None)


def test_the_words_by_which_an_edition_is_found_follow(as_instructor: Client):
    edition = draft()
    way = address("draft_mend", at="skills")

    as_instructor.post(way, filled(as_instructor, way, skills="Skew chisel,  beads"))

    words = EditionWord.objects.filter(edition=edition, kind=EditionWord.Kind.SKILL_NEEDED)
    assert set(words.values_list("word", flat=True)) == {"skew_chisel", "beads"}


def test_an_end_that_is_not_there_is_written_on_its_page(as_instructor: Client):
    draft()
    way = address("draft_mend", at="left_end")

    as_instructor.post(way, filled(as_instructor, way, kind="tenon", diameter="1 in", length="1/4 in"))

    assert Edition.objects.get().recipe.left_end.diameter.typed == "1 in"


def test_half_a_hole_is_no_hole(as_instructor: Client):
    draft()
    way = address("draft_mend", at="mountings.0.steps.1")

    answer = as_instructor.post(way, filled(as_instructor, way, **{"hole-diameter": "8 mm"}))

    assert answer.status_code == 422
    assert "id_hole-depth_error" in text_of(answer)


@pytest.mark.parametrize("name", ["draft", "draft_marks", "draft_mend"])
def test_a_page_asks_the_database_no_more_for_a_long_recipe(
    name: str, as_instructor: Client, django_assert_max_num_queries: Any
):
    draft()

    with django_assert_max_num_queries(6):
        as_instructor.get(address(name))
