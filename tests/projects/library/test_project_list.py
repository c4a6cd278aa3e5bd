from __future__ import annotations

from dataclasses import replace

import pytest
from django.urls import reverse

from club.base.access import Role
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.rows import draft, kept, next_draft

pytestmark = pytest.mark.django_db
LIST = reverse("projects:list")


def found(client, **asked):
    return [row.edition.title for row in client.get(LIST, asked).context["rows"]]


def test_a_project_stands_once_by_its_last_kept_edition(as_coordinator):
    edition = kept()
    next_draft(edition, title="Tall knob")
    draft(BOWL)

    assert found(as_coordinator) == ["Drawer knob", "Small bowl"]
    assert as_coordinator.get(LIST).context["counts"] == {"total": 2, "kept": 1, "drafts": 2}


def test_it_is_narrowed_by_words_holding_wood_and_state(as_coordinator):
    kept()
    draft(BOWL)

    assert found(as_coordinator, q="DOWEL") == ["Drawer knob"]
    assert found(as_coordinator, holding="faceplate") == ["Small bowl"]
    assert found(as_coordinator, wood="maple_sugar") == ["Drawer knob"]
    assert found(as_coordinator, state="draft") == ["Small bowl"]
    assert found(as_coordinator, holding="faceplate", wood="maple_sugar") == []
    assert len(found(as_coordinator, holding="a rope", wood="\x00", state="gone", page="zz")) == 2


def test_a_draft_beside_a_kept_edition_is_found_and_led_to(as_coordinator):
    edition = kept()
    written = next_draft(edition, title="Tall knob")
    kept(BOWL)

    drafts = found(as_coordinator, state="draft")
    page = as_coordinator.get(LIST).content.decode()

    assert drafts == ["Drawer knob"]
    assert found(as_coordinator, state="kept") == ["Drawer knob", "Small bowl"]
    assert page.count(f'href="{written.get_absolute_url()}"') == 1
    assert "draft of 2" in page


def test_a_project_that_is_nothing_but_a_draft_is_named_once(as_coordinator):
    draft()

    page = as_coordinator.get(LIST).content.decode()

    assert page.count("draft of 1") == 1


def test_only_ways_and_woods_that_are_used_are_offered(as_coordinator):
    kept()
    kept(BOWL)

    form = as_coordinator.get(LIST).context["form"]

    assert [key for key, _word in form.fields["holding"].choices] == [
        "",
        "collet_drawbar",
        "faceplate",
        "scroll_chuck",
    ]
    assert [key for key, _word in form.fields["wood"].choices] == ["", "cherry_black", "maple_sugar"]


def test_the_queries_do_not_grow_with_the_projects(as_coordinator, django_assert_max_num_queries):
    for number in range(24):
        kept(replace(KNOB, key=f"knob-{number}", title=f"Knob {number}"))

    with django_assert_max_num_queries(9):
        page = as_coordinator.get(LIST).context["page"]

    assert (len(page.object_list), page.paginator.count) == (20, 24)


def test_htmx_gets_only_the_projects(as_coordinator):
    kept()

    answer = as_coordinator.get(LIST, headers={"HX-Request": "true"})

    assert "<!doctype" not in answer.content.decode()
    assert "Drawer knob" in answer.content.decode()
    assert "HX-Request" in answer["Vary"]


def test_an_empty_library_tells_who_may_write_how_to_begin(as_coordinator, sign_in_as):
    assert "Begin a project" in as_coordinator.get(LIST).content.decode()

    helper = sign_in_as(Role.HELPER).get(LIST).content.decode()
    assert "No project is in the library yet" in helper
    assert "Begin a project" not in helper


def test_a_course_is_offered_once_there_are_projects_for_it(as_coordinator):
    new = reverse("projects:course_new")

    assert "Put a course together" not in as_coordinator.get(LIST).content.decode()
    assert "none is in the library yet" in as_coordinator.get(new).content.decode()

    kept()

    assert "Put a course together" in as_coordinator.get(LIST).content.decode()
    assert "none is in the library yet" not in as_coordinator.get(new).content.decode()
