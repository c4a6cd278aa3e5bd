"""The table of marks: what it draws, keeps and refuses, with script and without."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from django.test import Client
from hypothesis import given

from club.base.changes import changes_of
from projects.geometry.profile import ShapeKind
from projects.library.actions import save_draft
from projects.library.domain.drawn import DrawnProfile
from projects.library.forms.marks import MarksForm
from projects.library.forms.typed_marks import typed_in, typed_of
from projects.library.models import Edition
from tests.projects.library.examples import KNOB, outline
from tests.projects.library.posting import address, filled, posted, sent_by, sent_by_form, text_of
from tests.projects.library.rows import draft
from tests.projects.library.strategies import profiles

HTMX = {"HX-Request": "true"}
WAY = address("draft_marks")
BEAD = {"outside-1-kind": "bead", "outside-1-measure": "1 in"}


@given(profiles())
def test_a_table_that_is_sent_back_untouched_is_the_same_drawing(drawn: DrawnProfile):
    page = MarksForm(typed_of(drawn), 1, bound=False)
    rows = {f"{run}-rows": [str(len(rows))] for run, rows in page.typed.runs()}

    form = MarksForm(typed_in(posted(rows | sent_by_form(page))), 1, bound=True)

    assert form.is_valid(), form.errors
    assert form.cleaned_data["drawn"] == drawn


@pytest.mark.django_db
def test_what_was_typed_is_drawn_and_nothing_is_written_yet(as_instructor: Client):
    draft()

    answer = as_instructor.post(WAY, filled(as_instructor, WAY, **BEAD, act="show"))

    page = text_of(answer)
    assert answer.status_code == 200
    assert 'value="1 in"' in page
    assert "bead" in page
    assert Edition.objects.get().revision == 1


@pytest.mark.django_db
def test_the_drawing_is_saved_as_it_was_typed(as_instructor: Client):
    edition = draft()

    answer = as_instructor.post(WAY, filled(as_instructor, WAY, **BEAD, act="save"))

    drawn = Edition.objects.get().recipe.profile
    assert answer.status_code == 302
    assert (drawn.shapes[1].kind, drawn.shapes[1].radius.typed) == (ShapeKind.BEAD, "1 in")
    assert drawn.marks == KNOB.profile.marks
    assert any("profile, shapes 2, radius" in line for line in changes_of(edition)[0].lines)


@pytest.mark.django_db
def test_a_script_gets_the_drawing_and_what_is_wrong_and_no_page(as_instructor: Client):
    draft()
    page = filled(as_instructor, WAY)

    right = as_instructor.post(WAY, page | BEAD, headers=HTMX)
    wrong = as_instructor.post(WAY, page | BEAD | {"outside-1-measure": "1 mm"}, headers=HTMX)

    assert [answer.status_code for answer in (right, wrong)] == [200, 422]
    assert not any("<html" in text_of(answer) or "<form" in text_of(answer) for answer in (right, wrong))
    assert 'id="why-outside-1" data-hx-swap-oob="true"' in text_of(wrong)
    assert "id_outside-1-measure_error" in text_of(wrong)
    assert "id_outside-1-measure_error" not in text_of(right)


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("changes", "cell"),
    [
        ({"outside-2-at": "1/4 in"}, "outside-2-at"),
        ({"outside-0-measure": "3 mm"}, "outside-0-measure"),
        ({"outside-1-kind": "cove", "outside-1-measure": "3 mm"}, "outside-1-measure"),
        ({"outside-1-kind": "v_cut"}, "outside-1-measure"),
        ({"outside-1-diameter": "0 mm"}, "outside-1-diameter"),
        ({"outside-1-diameter": "wide"}, "outside-1-diameter"),
        ({"outside-3-at": "1 1/2"}, "outside-3-at"),
        ({"outside-1-kind": "hexagon"}, "outside-1-kind"),
        ({"outside-0-at": ""}, "outside-0-at"),
    ],
)
def test_what_is_wrong_stands_beside_the_row_it_is_in(
    changes: dict[str, str], cell: str, as_instructor: Client
):
    draft()

    answer = as_instructor.post(WAY, filled(as_instructor, WAY, **changes, act="save"))

    page = text_of(answer)
    assert answer.status_code == 422
    assert page.count(f'id="id_{cell}_error"') == 1
    assert page.count('_error">') == 1
    assert Edition.objects.get().revision == 1


@pytest.mark.django_db
def test_a_row_comes_in_under_the_chosen_one_and_everything_typed_stays(as_instructor: Client):
    draft()
    typed = {"outside-0-diameter": "not yet", "row": "outside-1", "act": "under"}

    answer = as_instructor.post(WAY, filled(as_instructor, WAY, **typed))

    page = filled_from(answer)
    assert answer.status_code == 200
    assert page["outside-rows"] == ["5"]
    assert page["outside-0-diameter"] == ["not yet"]
    assert [page[f"outside-{at}-at"] for at in range(5)] == [
        ["0 in"],
        ["1/2 in"],
        [""],
        ["1 in"],
        ["1 1/2 in"],
    ]
    assert page["row"] == ["outside-2"]
    assert "_error" not in text_of(answer)


@pytest.mark.django_db
def test_the_chosen_row_is_taken_out(as_instructor: Client):
    draft()

    answer = as_instructor.post(WAY, filled(as_instructor, WAY, row="outside-1", act="out"))

    page = filled_from(answer)
    assert [page[f"outside-{at}-at"] for at in range(3)] == [["0 in"], ["1 in"], ["1 1/2 in"]]


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("row", "act", "said"),
    [
        ("nowhere", "under", "Choose a row first"),
        ("outside-9", "out", "Choose a row first"),
        ("bore-0", "out", "Choose a row first"),
        ("\0", "under", "Choose a row first"),
    ],
)
def test_without_a_row_nothing_changes_and_it_is_said_why(
    row: str, act: str, said: str, as_instructor: Client
):
    draft()

    answer = as_instructor.post(WAY, filled(as_instructor, WAY, row=row, act=act))

    assert said in text_of(answer)
    assert filled_from(answer)["outside-rows"] == ["4"]


@pytest.mark.django_db
def test_two_ends_stay(as_instructor: Client):
    draft(replace(KNOB, profile=outline(("0", "1"), ("1", "1"))))

    answer = as_instructor.post(WAY, filled(as_instructor, WAY, row="outside-0", act="out"))

    assert "two marks at least" in text_of(answer)


@pytest.mark.django_db
def test_a_bore_is_written_and_taken_away_again(as_instructor: Client):
    draft()
    asked = as_instructor.post(WAY, filled(as_instructor, WAY, act="bore"))
    bore = {"bore-0-at": "0 mm", "bore-0-diameter": "8 mm", "bore-1-at": "20 mm", "bore-1-diameter": "8 mm"}

    as_instructor.post(WAY, filled_from(asked) | bore | {"act": "save"})
    with_bore = Edition.objects.get().recipe.profile.bore
    without = as_instructor.post(WAY, filled(as_instructor, WAY, act="no_bore"))
    as_instructor.post(WAY, filled_from(without) | {"act": "save"})

    assert [mark.at.typed for mark in with_bore.marks] == ["0 mm", "20 mm"]
    assert Edition.objects.get().recipe.profile.bore is None


@pytest.mark.django_db
def test_a_bore_wider_than_the_wood_is_refused_at_its_own_row(as_instructor: Client):
    draft()
    asked = as_instructor.post(WAY, filled(as_instructor, WAY, act="bore"))
    bore = {"bore-0-at": "0 mm", "bore-0-diameter": "1 in", "bore-1-at": "20 mm", "bore-1-diameter": "1 in"}

    answer = as_instructor.post(WAY, filled_from(asked) | bore | {"act": "save"})

    assert answer.status_code == 422
    assert 'id="id_bore-' in text_of(answer).partition('_error">')[0].rpartition("<div ")[2]


@pytest.mark.django_db
@pytest.mark.parametrize("count", ["", "-1", "0", "1", "61", "99999999999", "\u0664", "four"])
@pytest.mark.parametrize("act", ["show", "save", "under", "out", "bore", "no_bore", "\0"])
def test_a_foreign_count_of_rows_breaks_nothing(count: str, act: str, as_instructor: Client):
    draft()

    answer = as_instructor.post(WAY, {"outside-rows": count, "bore-rows": count, "act": act, "revision": "x"})

    assert answer.status_code in {200, 422}
    assert Edition.objects.get().revision == 1


@pytest.mark.django_db
@pytest.mark.parametrize("text", ["\0", "\u202e1 in", "9" * 100_000, "<script>alert(1)</script>"])
def test_hostile_cells_are_refused_and_stay_text(text: str, as_instructor: Client):
    draft()
    cells = {name: text for name in filled(as_instructor, WAY) if name.startswith("outside-0-")}

    answer = as_instructor.post(WAY, filled(as_instructor, WAY, **cells, act="save"))

    assert answer.status_code == 422
    assert "<script>alert" not in answer.content.decode()


@pytest.mark.django_db
def test_whoever_saves_a_drawing_second_overwrites_nothing(as_instructor: Client):
    edition = draft()
    page = filled(as_instructor, WAY, **BEAD, act="save")
    other = replace(KNOB, title="Long knob")
    save_draft(None, edition, other, 1)

    answer = as_instructor.post(WAY, page)

    assert answer.status_code == 422
    assert 'value="1 in"' in text_of(answer)
    assert Edition.objects.get().recipe == other


@pytest.mark.django_db
def test_a_variant_gets_a_drawing_that_starts_as_the_piece(as_instructor: Client):
    draft()
    way = address("draft_marks", at="easier.profile")

    as_instructor.post(way, filled(as_instructor, way, act="save", **{"outside-3-diameter": "3/4 in"}))

    recipe = Edition.objects.get().recipe
    assert recipe.easier.profile.marks[3].diameter.typed == "3/4 in"
    assert recipe.profile == KNOB.profile


@pytest.mark.django_db
@pytest.mark.parametrize("at", ["harder.profile", "blank", "", "easier", "profile.bore", "__class__"])
def test_there_are_no_other_drawings(at: str, as_instructor: Client):
    draft()

    assert as_instructor.get(address("draft_marks", at=at)).status_code == 404


def filled_from(answer: Any) -> dict[str, Any]:
    """What the page that came would send in its turn."""
    return sent_by(answer.content.decode())
