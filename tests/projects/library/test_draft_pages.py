"""The page of a draft and the pages of its parts: what they write, and what they refuse."""

from __future__ import annotations

from urllib.parse import urlencode

import pytest
from django.test import Client
from django.urls import reverse

from club.base.changes import changes_of
from club.base.roles import Role
from projects.library.actions import save_draft
from projects.library.models import Edition
from tests.conftest import SignInAs
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.posting import sent_by
from tests.projects.library.rows import draft, kept, next_draft

pytestmark = pytest.mark.django_db


def address(name: str, key: str = "drawer-knob", **query: str) -> str:
    way = reverse(f"projects:{name}", args=[key])
    return f"{way}?{urlencode(query)}" if query else way


def text_of(answer) -> str:
    return answer.content.decode()


def filled(client: Client, way: str, **changes: object) -> dict[str, object]:
    """What the page's form sends, with these fields changed."""
    page = client.get(way)
    assert page.status_code == 200
    return {**sent_by(text_of(page)), **changes}


@pytest.fixture
def as_instructor(sign_in_as: SignInAs) -> Client:
    return sign_in_as(Role.INSTRUCTOR)


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
    from tests.projects.library.examples import with_step

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
    assert answer.url == f"{address('draft')}#mountings-0-steps-1"
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
    assert "<script>alert" not in text_of(answer)
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
    save_draft(None, edition, BOWL_AS_KNOB, 1)

    answer = as_instructor.post(way, late)

    assert answer.status_code in {404, 422}
    assert Edition.objects.get().recipe == BOWL_AS_KNOB


BOWL_AS_KNOB = __import__("dataclasses").replace(BOWL, key="drawer-knob")
