"""Entries of a draft: added, moved, taken out, of another kind."""

from __future__ import annotations

from dataclasses import replace

import pytest
from django.test import Client

from club.base.writing import STALE
from projects.library.actions import save_draft
from projects.library.models import Edition
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.posting import address, filled, text_of
from tests.projects.library.rows import draft

pytestmark = pytest.mark.django_db


def test_a_step_is_added_with_a_key_of_its_own(as_instructor: Client):
    draft()
    way = address("draft_add", at="mountings.0.steps.6")
    fields = {"text": "Sand again.", "operation": "sanding", "spindle": "stopped", "minutes": "2"}

    as_instructor.post(way, filled(as_instructor, way, **fields))
    as_instructor.post(way, filled(as_instructor, way, **fields))

    steps = Edition.objects.get().recipe.mountings[0].steps
    assert [step.key for step in steps][-2:] == ["sand-again-2", "sand-again"]
    assert steps[-1].text == "Sand again."


def test_a_mounting_is_added_once_it_is_said_how_the_work_is_held(as_instructor: Client):
    draft()
    asked = as_instructor.get(address("draft_add", at="mountings.1"))
    way = address("draft_add", at="mountings.1", kind="jam_chuck")
    fields = {"title": "Jam chuck", "stands_out": "1 in", "minutes": "2"}
    held = {"holding-held_in": "scroll_chuck", "holding-diameter": "1 1/4 in"}

    answer = as_instructor.post(way, filled(as_instructor, way, **fields, **held))

    mounting = Edition.objects.get().recipe.mountings[1]
    assert "In a jam chuck" in text_of(asked)
    assert answer.status_code == 302
    assert (mounting.key, mounting.holding.kind, mounting.tailstock) == ("jam-chuck", "jam_chuck", None)
    assert [step.text for step in mounting.steps] == ["Mount the work."]


def test_another_way_of_holding_keeps_what_both_have(as_instructor: Client):
    draft(BOWL)
    way = address("draft_mend", "small-bowl", at="mountings.1.holding", kind="faceplate")
    page = filled(as_instructor, way)

    as_instructor.post(way, page | {"screws": "4", "screw_length": "20 mm"})

    holding = Edition.objects.get().recipe.mountings[1].holding
    assert page["diameter"] == ["2 1/2 in"]
    assert (holding.kind, holding.diameter.typed, holding.screws) == ("faceplate", "2 1/2 in", 4)


def test_an_entry_moves_and_the_page_comes_back_to_it(as_instructor: Client):
    draft()

    answer = as_instructor.post(address("draft_move"), {"down": "mountings.0.steps.1", "revision": "1"})

    keys = [step.key for step in Edition.objects.get().recipe.steps()]
    assert keys[:3] == ["mount", "bead", "rough"]
    assert answer.headers["Location"] == f"{address('draft')}?at=mountings.0.steps.2&by=1"


def test_the_page_one_comes_back_to_has_the_keyboard_on_what_moved(as_instructor: Client):
    draft()

    page = text_of(as_instructor.get(f"{address('draft')}?at=mountings.0.steps.2&by=1"))

    assert page.count(" autofocus") == 1
    assert 'name="down" value="mountings.0.steps.2" autofocus' in page


def test_a_script_gets_what_changed_with_the_keyboard_on_what_moved(as_instructor: Client):
    draft()

    answer = as_instructor.post(
        address("draft_move"), {"up": "mountings.0.steps.1", "revision": "1"}, headers={"HX-Request": "true"}
    )

    page = text_of(answer)
    assert "<html" not in page
    assert 'name="revision" value="2"' in page
    assert 'name="down" value="mountings.0.steps.0" autofocus' in page


@pytest.mark.parametrize("entry", [{"up": "mountings.0.steps.0"}, {"down": "grits.9"}, {"up": "title"}, {}])
def test_what_cannot_move_is_not_found(entry: dict[str, str], as_instructor: Client):
    draft()

    answer = as_instructor.post(address("draft_move"), entry | {"revision": "1"})

    assert answer.status_code == 404
    assert Edition.objects.get().revision == 1


@pytest.mark.parametrize("headers", [{}, {"HX-Request": "true"}])
def test_a_move_on_a_page_out_of_date_moves_nothing_and_says_so(
    headers: dict[str, str], as_instructor: Client
):
    edition = draft()
    save_draft(None, edition, replace(KNOB, title="Long knob"), 1)

    as_instructor.post(
        address("draft_move"), {"down": "mountings.0.steps.1", "revision": "1"}, headers=headers
    )

    assert [step.key for step in Edition.objects.get().recipe.steps()][:2] == ["mount", "rough"]
    assert str(STALE) in text_of(as_instructor.get(address("draft")))


def test_what_is_not_there_any_more_on_a_page_out_of_date_is_no_dead_end(as_instructor: Client):
    edition = draft()
    save_draft(None, edition, replace(KNOB, cautions=()), 1)

    answer = as_instructor.post(address("draft_move"), {"up": "cautions.0", "revision": "1"})

    assert answer.headers["Location"] == address("draft")
    assert str(STALE) in text_of(as_instructor.get(address("draft")))


def test_an_entry_is_taken_out_after_asking(as_instructor: Client):
    draft()
    way = address("draft_take_out", at="mountings.0.steps.4")

    page = text_of(as_instructor.get(way))
    as_instructor.post(way, {"revision": "1"})

    assert "Wipe the oil on." in page
    assert "oil" not in [step.key for step in Edition.objects.get().recipe.steps()]


@pytest.mark.parametrize(
    ("at", "who"),
    [
        ("mountings.0.steps.5", "Tailstock of mounting 1 names it"),
        ("materials.2", "Glue-up 1 names it"),
        ("preparation.1", "Glue-up 1 names it"),
        ("mountings.0.steps.2", "Easier variant names it"),
    ],
)
def test_what_something_else_names_stays_and_it_is_said_what(at: str, who: str, as_instructor: Client):
    draft()
    way = address("draft_take_out", at=at)

    asked, answer = as_instructor.get(way), as_instructor.post(way, {"revision": "1"})

    assert who in text_of(asked)
    assert "Take it out" not in text_of(asked)
    assert (answer.status_code, who in text_of(answer)) == (422, True)
    assert Edition.objects.get().recipe == KNOB


def test_a_neighbour_that_names_it_is_called_by_the_number_on_the_page(as_instructor: Client):
    (glue_up,) = KNOB.glue_ups
    draft(replace(KNOB, glue_ups=(glue_up, replace(glue_up, key="second", after=(glue_up.key,)))))

    page = text_of(as_instructor.get(address("draft_take_out", at="glue_ups.0")))

    assert "Glue-up 2 names it" in page
    assert "at=glue_ups.1#id_after" in page


def test_the_last_mounting_stays(as_instructor: Client):
    draft()

    assert (
        as_instructor.post(address("draft_take_out", at="mountings.0"), {"revision": "1"}).status_code == 422
    )
    assert len(Edition.objects.get().recipe.mountings) == 1


def test_nobody_takes_out_on_a_page_out_of_date(as_instructor: Client):
    edition = draft()
    save_draft(None, edition, replace(KNOB, title="Long knob"), 1)

    answer = as_instructor.post(address("draft_take_out", at="easier"), {"revision": "1"})

    assert answer.status_code == 422
    assert Edition.objects.get().recipe.easier is not None


def test_what_no_field_is_to_blame_for_stands_on_top(as_instructor: Client):
    """A mounting has room for sixty steps."""
    many = tuple(replace(KNOB.mountings[0].steps[0], key=f"s{at}") for at in range(59))
    full = replace(KNOB.mountings[0], steps=(*many, KNOB.mountings[0].steps[5]))
    draft(replace(KNOB, mountings=(full,), easier=None))
    way = address("draft_add", at="mountings.0.steps.60")
    fields = {"text": "One more.", "operation": "marking", "spindle": "stopped", "minutes": "1"}

    answer = as_instructor.post(way, filled(as_instructor, way, **fields))

    assert answer.status_code == 422
    assert "One more." in text_of(answer)


def test_what_was_typed_for_a_step_that_somebody_took_out_is_handed_back(as_instructor: Client):
    edition = draft(BOWL)
    way = address("draft_mend", "small-bowl", at="mountings.1.steps.1")
    page = filled(as_instructor, way, watch="Mind the rim.")
    short = replace(BOWL.mountings[1], steps=BOWL.mountings[1].steps[:1])
    save_draft(None, edition, replace(BOWL, mountings=(BOWL.mountings[0], short)), 1)

    answer = as_instructor.post(way, page)

    assert answer.status_code == 422
    assert "Mind the rim." in text_of(answer)
    assert as_instructor.post(way, page | {"revision": "2"}).status_code == 404
