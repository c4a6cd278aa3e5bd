from __future__ import annotations

import json
from dataclasses import replace

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse
from jsonschema import Draft202012Validator

from club.base.quantities.length import LengthStyle, parse_length
from club.base.roles import Role
from club.home.demonstration import load_demonstration
from projects.library.domain.json_form import to_json
from projects.library.models import Course, Edition, Project
from tests.projects.library.documents import changed
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.rows import draft, kept, next_draft
from tests.projects.library.shelves import DRAFT, KEPT, brought_in, file_of, here, library, taken_away
from tests.projects.library.test_exchange import COURSE, SECOND, UNFIT

pytestmark = pytest.mark.django_db
BRING_IN = "/projects/bring-in/"
# Half of a sign, as JSON can write one.
LONE = json.dumps(library() | {"\ud800": "\ud800"})
HOSTILE = ["\x00", LONE, "\u202e{}", "{" * 100_000, "<script>alert(1)</script>", "x" * 100_000]


@pytest.fixture
def as_instructor(sign_in_as):
    return sign_in_as(Role.INSTRUCTOR)


def upload(data: bytes) -> SimpleUploadedFile:
    return SimpleUploadedFile("library.json", data, "application/json")


def look_over(client: Client, data: bytes) -> str:
    """The page's mark after looking this over."""
    plan = client.post(BRING_IN, {"file": upload(data)}).context["plan"]
    assert plan.may_come_in, plan.all_problems
    return plan.mark  # type: ignore[no-any-return]


class TestBringingIn:
    def test_looks_over_first_and_writes_nothing(self, as_instructor):
        answer = as_instructor.post(BRING_IN, {"file": upload(file_of(library((KNOB, KEPT))))})

        page = answer.content.decode()
        assert answer.status_code == 200
        assert "1 edition comes in" in page
        assert f'value="{answer.context["plan"].mark}"' in page
        assert not Edition.objects.exists()

    def test_carries_the_text_of_the_file_so_that_one_press_brings_it_in(self, as_instructor):
        data = file_of(library((KNOB, KEPT)))
        looked = as_instructor.post(BRING_IN, {"file": upload(data)})

        sent = {"text": looked.context["form"]["text"].value(), "looked_over": looked.context["plan"].mark}
        answer = as_instructor.post(BRING_IN, sent, follow=True)

        assert here() == [(KNOB.key, 1, "kept")]
        assert "1 edition is in, and 0 courses." in answer.content.decode()
        assert Edition.objects.get().recipe.title == KNOB.title

    def test_asks_for_a_long_file_once_more(self, as_instructor):
        data = file_of(library((KNOB, KEPT))) + b" " * 2_000_000
        looked = as_instructor.post(BRING_IN, {"file": upload(data)})

        answer = as_instructor.post(
            BRING_IN, {"file": upload(data), "looked_over": looked.context["plan"].mark}
        )

        assert "choose it again, then bring it in" in looked.content.decode()
        assert looked.context["form"]["text"].value() == ""
        assert answer.status_code == 302
        assert Edition.objects.count() == 1

    def test_says_in_words_what_differs_and_what_the_checks_found(self, as_instructor):
        kept(KNOB)
        spoiled = replace(SECOND, grits=(80, 240))

        answer = as_instructor.post(BRING_IN, {"text": json.dumps(to_json(spoiled))})

        page = answer.content.decode()
        assert "became “A knob, said better.”" in page
        assert "From P80 to P240 the grain gets" in page

    def test_writes_nothing_when_the_library_changed_since(self, as_instructor):
        data = file_of(library((KNOB, KEPT)))
        mark = look_over(as_instructor, data)
        draft(KNOB)

        answer = as_instructor.post(BRING_IN, {"text": data.decode(), "looked_over": mark})

        assert answer.status_code == 422
        assert here() == [(KNOB.key, 1, "draft")]

    def test_writes_nothing_when_the_text_changed_since(self, as_instructor):
        mark = look_over(as_instructor, file_of(library((KNOB, KEPT))))

        text = file_of(library((BOWL, KEPT))).decode()
        answer = as_instructor.post(BRING_IN, {"text": text, "looked_over": mark})

        assert answer.status_code == 422
        assert "so nothing was written. Look it over again." in answer.content.decode()
        assert not Project.objects.exists()

    @pytest.mark.parametrize(
        ("data", "words"),
        [
            (b"{", "This is no whole JSON"),
            (b"\xff\xfe", "This is no text in UTF-8"),
            (file_of({"format": "shelf"}), "no project and no library of Handwheel"),
            (file_of(changed(("version",), 2)), "A newer Handwheel wrote this file"),
            (file_of(changed(("owner",), "club")), "There is no field “owner” here"),
            (b" " * 10_000_001, "The file is over 10\u00a0MB"),
            (file_of(library((KNOB, KEPT), (UNFIT, KEPT))), "It is marked as kept, but this stops it"),
        ],
    )
    def test_refuses_a_bad_file_with_one_sentence(self, as_instructor, data, words):
        answer = as_instructor.post(BRING_IN, {"file": upload(data)})

        page = answer.content.decode()
        assert answer.status_code == 422
        assert page.count(words) >= 1
        assert 'name="looked_over"' not in page
        assert not Project.objects.exists()

    @pytest.mark.parametrize("text", HOSTILE, ids=ascii)
    def test_survives_hostile_text_and_keeps_it(self, as_instructor, text):
        answer = as_instructor.post(BRING_IN, {"text": text})

        assert answer.status_code == 422
        assert "<script>alert" not in answer.content.decode("utf-8", "replace")

    def test_shows_hostile_words_of_a_recipe_as_text(self, as_instructor):
        shouting = replace(KNOB, title="<script>alert(1)</script>")

        answer = as_instructor.post(BRING_IN, {"text": json.dumps(to_json(shouting))})

        page = answer.content.decode()
        assert answer.status_code == 200
        assert "<script>alert" not in page
        assert "&lt;script&gt;alert" in page

    def test_asks_for_something_when_nothing_is_given(self, as_instructor):
        answer = as_instructor.post(BRING_IN, {})

        assert answer.status_code == 422
        assert "Choose a file, or put its text below." in answer.content.decode()

    @pytest.mark.parametrize("role", [Role.HELPER, Role.SAFETY_OFFICER, Role.STUDENT])
    def test_is_not_for_those_who_do_not_write(self, sign_in_as, role):
        answer = sign_in_as(role).post(BRING_IN, {"text": json.dumps(library((KNOB, KEPT)))})

        assert answer.status_code == 403
        assert not Project.objects.exists()


class TestTakingAway:
    def test_gives_the_whole_library_as_a_file(self, sign_in_as):
        brought_in((KNOB, KEPT), (SECOND, DRAFT), (BOWL, KEPT), courses=(COURSE,))

        answer = sign_in_as(Role.HELPER).get(reverse("projects:take_away"))

        assert answer.headers["Content-Disposition"] == 'attachment; filename="library.json"'
        assert answer.content.decode() == taken_away()

    def test_asks_the_database_a_few_times_however_many_there_are(
        self, as_instructor, django_assert_max_num_queries
    ):
        brought_in(*((replace(KNOB, key=f"knob-{number}"), KEPT) for number in range(12)))

        with django_assert_max_num_queries(9):
            as_instructor.get(reverse("projects:take_away"))

    def test_gives_one_edition_as_a_file(self, sign_in_as):
        edition = kept(KNOB)

        answer = sign_in_as(Role.HELPER).get(reverse("projects:edition_json", args=[KNOB.key, 1]))

        assert answer.headers["Content-Disposition"] == f'attachment; filename="{KNOB.key}-1.json"'
        assert json.loads(answer.content) == to_json(edition.recipe)

    @pytest.mark.parametrize("form", ["project", "library"])
    def test_gives_the_schemas(self, sign_in_as, form):
        answer = sign_in_as(Role.HELPER).get(reverse("projects:schema", args=[form]))

        assert answer.headers["Content-Type"] == "application/schema+json"
        Draft202012Validator.check_schema(json.loads(answer.content))

    def test_knows_no_other_schema(self, as_instructor):
        assert as_instructor.get(reverse("projects:schema", args=["lathe"])).status_code == 404


class TestTheDifference:
    def test_is_told_between_two_editions(self, sign_in_as):
        first = kept(KNOB)
        next_draft(first, title="Round <b>knob</b>")

        answer = sign_in_as(Role.HELPER).get(reverse("projects:difference", args=[KNOB.key, 1, 2]))

        assert f"Title: “{KNOB.title}” became “Round &lt;b&gt;knob&lt;/b&gt;”." in answer.content.decode()

    def test_is_in_the_readers_lengths(self, sign_in_as):
        first = kept(KNOB)
        next_draft(first, mountings=(replace(KNOB.mountings[0], stands_out=parse_length("3 in")),))
        client = sign_in_as(Role.HELPER)
        client.account.lengths = LengthStyle.MILLIMETRES
        client.account.save()

        answer = client.get(reverse("projects:difference", args=[KNOB.key, 1, 2]))

        assert "became 76.2\u00a0mm." in answer.content.decode()

    def test_says_so_when_there_is_none(self, as_instructor):
        next_draft(kept(KNOB))

        answer = as_instructor.get(reverse("projects:difference", args=[KNOB.key, 1, 2]))

        assert "The two say the same, to the last letter." in answer.content.decode()

    def test_of_an_edition_that_is_not_there_is_nowhere(self, as_instructor):
        kept(KNOB)

        assert as_instructor.get(reverse("projects:difference", args=[KNOB.key, 1, 7])).status_code == 404


def test_the_demonstration_library_comes_in_whole():
    load_demonstration()

    assert Project.objects.count() == 8
    assert Edition.objects.kept().values("project").distinct().count() == 8
    assert Course.objects.get().lessons.count() == 6
