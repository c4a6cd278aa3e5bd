from __future__ import annotations

import pytest
from django.test import Client
from django.urls import reverse

from club.base.changes import changes_of
from club.base.roles import Role
from projects.library.domain.structure import kind_of
from projects.library.forms.new import BLANKS, HOLDINGS
from projects.library.models import Edition, Project
from tests.conftest import SignInAs
from tests.projects.library.posting import sent_by, text_of
from tests.projects.library.rows import draft

pytestmark = pytest.mark.django_db

WAY = reverse("projects:new")
CENTRES = f"{WAY}?blank=square&held=between_centres"
KNOB = {
    "title": "Drawer knob",
    "summary": "A knob.",
    "blank-species": "maple_sugar",
    "blank-side": "40 mm",
    "blank-length": "60 mm",
    "piece_length": "38 mm",
    "piece_diameter": "1 1/2 in",
    "holding-drive": "ring",
    "stands_out": "60 mm",
}


def test_first_it_is_asked_what_wood_and_how_it_is_held(as_instructor: Client):
    page = text_of(as_instructor.get(WAY))

    assert "Between centres" in page
    assert 'name="title"' not in page


def test_going_on_without_an_answer_says_what_is_missing(as_instructor: Client):
    page = text_of(as_instructor.get(WAY))
    (button,) = (line for line in page.splitlines() if "Go on" in line)

    answer = as_instructor.get(WAY, {"asked": "yes"})

    assert 'name="asked" value="yes"' in button
    assert answer.status_code == 422
    assert set(answer.context["form"].errors) == {"blank", "held"}


def test_half_an_answer_is_asked_again(as_instructor: Client):
    answer = as_instructor.get(WAY, {"blank": "square"})

    assert answer.status_code == 422
    assert 'name="held"' in text_of(answer)


def test_a_project_is_begun_as_a_draft(as_instructor: Client):
    answer = as_instructor.post(CENTRES, KNOB)

    edition = Edition.objects.get()
    recipe = edition.recipe
    assert answer.headers["Location"] == reverse("projects:draft", args=["drawer-knob"])
    assert (edition.state, edition.number, edition.title) == ("draft", 1, "Drawer knob")
    assert [mark.diameter.typed for mark in recipe.profile.marks] == ["1 1/2 in", "1 1/2 in"]
    assert (recipe.blank.side.typed, recipe.mountings[0].title) == ("40 mm", "Between centres")
    assert [step.operation for step in recipe.steps()] == ["mounting"]
    assert changes_of(edition).count() == 1
    assert as_instructor.get(answer.headers["Location"]).status_code == 200


@pytest.mark.parametrize("blank", [kind_of(kind) for kind in BLANKS])
@pytest.mark.parametrize("held", [kind_of(kind) for kind in HOLDINGS])
def test_every_wood_and_way_of_holding_can_be_begun_with(blank: str, held: str, as_instructor: Client):
    """Each field gets the first thing that it takes: an offered word, else a length or a number."""
    way = f"{WAY}?blank={blank}&held={held}"
    page = sent_by(as_instructor.get(way).content.decode())
    choices = as_instructor.get(way).context["form"].fields
    given = {name: _something(choices[name]) for name in choices}

    answer = as_instructor.post(way, page | given)

    assert answer.status_code == 302, answer.context["form"].errors
    assert Edition.objects.get().recipe.mountings[0].holding.kind == held


def _something(field) -> str:
    if hasattr(field, "choices"):
        return next(str(word) for word, _label in field.choices if word)
    if not field.required:
        return ""
    return {"WholeField": "4", "QuantityField": "10 mm"}.get(type(field).__name__, "something")


def test_what_was_typed_stays_when_a_field_is_wrong(as_instructor: Client):
    answer = as_instructor.post(CENTRES, KNOB | {"piece_length": "long", "blank-species": "oakum"})

    page = text_of(answer)
    assert answer.status_code == 422
    assert 'value="long"' in page
    assert 'value="Drawer knob"' in page
    assert not Project.objects.exists()


def test_a_name_that_is_taken_is_refused_beside_the_title(as_instructor: Client):
    draft()

    answer = as_instructor.post(CENTRES, KNOB | {"title": "Drawer  Knob!"})

    assert answer.status_code == 422
    assert 'id="id_title_error"' in text_of(answer)
    assert Project.objects.count() == 1


@pytest.mark.parametrize("text", ["\0", "\u202e", "a" * 100_000, "<script>alert(1)</script>"])
def test_hostile_text_is_refused_or_kept_as_text(text: str, as_instructor: Client):
    answer = as_instructor.post(CENTRES, dict.fromkeys(KNOB, text))
    asked = as_instructor.get(WAY, {"blank": text, "held": text})

    assert (answer.status_code, asked.status_code) == (422, 422)
    assert "<script>alert" not in answer.content.decode() + asked.content.decode()


@pytest.mark.parametrize("role", [Role.HELPER, Role.SAFETY_OFFICER, Role.TREASURER, Role.STUDENT])
def test_others_begin_nothing(role: Role, sign_in_as: SignInAs):
    assert sign_in_as(role).post(CENTRES, KNOB).status_code == 403
    assert not Project.objects.exists()
