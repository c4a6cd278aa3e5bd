from __future__ import annotations

from dataclasses import replace

import pytest
from django.urls import reverse

from club.base.models import Change
from club.base.roles import Role
from club.base.writing import StaleError, TakenError
from projects.library.course_actions import add_course, delete_course, mend_course
from projects.library.models import Course, Project
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.rows import draft, kept

pytestmark = pytest.mark.django_db
HOSTILE = ["\x00", "\u202eevil", "x" * 100_000, "   "]


@pytest.fixture
def as_instructor(sign_in_as):
    return sign_in_as(Role.INSTRUCTOR)


@pytest.fixture
def course():
    kept(KNOB)
    kept(BOWL)
    made = Course(key="two-evenings", title="Two evenings", summary="A knob, then a bowl.")
    return add_course(None, made, [KNOB.key, BOWL.key])


def lessons(course: Course) -> list[str]:
    return [lesson.project.key for lesson in course.lessons.all()]


def form(**changes: object) -> dict[str, object]:
    return {"title": "Two nights", "summary": "In short.", "lesson_1": KNOB.key} | changes


class TestThePage:
    def test_shows_the_lessons_in_order_with_ways_to_their_projects(self, sign_in_as, course):
        page = sign_in_as(Role.HELPER).get(course.get_absolute_url()).content.decode()

        assert page.index(f'href="/project/{KNOB.key}/"') < page.index(f'href="/project/{BOWL.key}/"')
        assert "A knob, then a bowl." in page
        assert "Mend the course" not in page

    def test_shows_a_lesson_that_is_only_a_draft(self, as_instructor):
        draft(KNOB)
        made = add_course(None, Course(key="one", title="One", summary="One."), [KNOB.key])

        assert "draft of 1" in as_instructor.get(made.get_absolute_url()).content.decode()

    def test_asks_the_database_as_often_for_many_lessons(
        self, as_instructor, course, django_assert_max_num_queries
    ):
        mend_course(None, course, course.revision, [KNOB.key, BOWL.key] * 10)

        with django_assert_max_num_queries(10):
            as_instructor.get(course.get_absolute_url())


class TestPuttingTogether:
    def test_keeps_the_order_of_the_rows_and_passes_over_empty_ones(self, as_instructor):
        kept(KNOB)
        kept(BOWL)

        answer = as_instructor.post(
            reverse("projects:course_new"), form(lesson_1=BOWL.key, lesson_2="", lesson_3=KNOB.key)
        )

        made = Course.objects.get()
        assert answer.headers["Location"] == "/projects/courses/two-nights/"
        assert lessons(made) == [BOWL.key, KNOB.key]
        assert Change.objects.filter(kind="projects.Course").count() == 1

    @pytest.mark.parametrize("title", ["New", "draft", "Next edition"])
    def test_gives_a_course_no_key_that_is_an_address(self, as_instructor, title):
        kept(KNOB)

        answer = as_instructor.post(reverse("projects:course_new"), form(title=title))

        assert as_instructor.get(answer.headers["Location"]).context["course"].title == title

    def test_wants_a_lesson_at_least(self, as_instructor):
        answer = as_instructor.post(reverse("projects:course_new"), form(lesson_1=""))

        assert answer.status_code == 422
        assert "Choose at least one lesson." in answer.content.decode()
        assert not Course.objects.exists()

    @pytest.mark.parametrize("text", HOSTILE, ids=ascii)
    @pytest.mark.parametrize("field", ["title", "summary", "lesson_1"])
    def test_survives_hostile_text_and_keeps_what_was_typed(self, as_instructor, field, text):
        kept(KNOB)

        answer = as_instructor.post(reverse("projects:course_new"), form() | {field: text})

        assert answer.status_code == 422
        assert answer.context["form"].errors.keys() == {field}
        assert not Course.objects.exists()

    def test_shows_script_as_text(self, as_instructor):
        kept(KNOB)

        answer = as_instructor.post(
            reverse("projects:course_new"), form(title="<script>alert(1)</script>"), follow=True
        )

        assert "<script>alert" not in answer.content.decode()


class TestMending:
    def test_rewrites_title_and_lessons_with_a_change_row(self, as_instructor, course):
        answer = as_instructor.post(
            reverse("projects:course_mend", args=[course.key]), form(lesson_1=BOWL.key, revision="1")
        )

        course.refresh_from_db()
        assert answer.status_code == 302
        assert (course.title, course.revision, lessons(course)) == ("Two nights", 2, [BOWL.key])
        assert [line[0] for line in Change.objects.latest("pk").lines] == ["title", "summary", "lessons"]

    def test_shows_what_stands_there_and_rows_for_more(self, as_instructor, course):
        shown = as_instructor.get(reverse("projects:course_mend", args=[course.key])).context["form"]

        assert [field.value() for field in shown.lesson_fields()][:3] == [KNOB.key, BOWL.key, None]

    def test_is_refused_when_somebody_else_was_faster(self, as_instructor, course):
        mend_course(None, course, 1, [KNOB.key])

        answer = as_instructor.post(
            reverse("projects:course_mend", args=[course.key]), form(revision="1", lesson_1=BOWL.key)
        )

        assert answer.status_code == 422
        assert lessons(Course.objects.get()) == [KNOB.key]


class TestDeleting:
    def test_asks_then_deletes_and_leaves_the_projects(self, as_instructor, course):
        address = reverse("projects:course_delete", args=[course.key])

        asked = as_instructor.get(address).content.decode()
        answer = as_instructor.post(address, {"revision": "1"})

        assert "Delete this course?" in asked
        assert answer.status_code == 302
        assert not Course.objects.exists()
        assert Project.objects.count() == 2

    def test_is_refused_when_it_was_mended_since(self, as_instructor, course):
        mend_course(None, course, 1, [KNOB.key])

        answer = as_instructor.post(reverse("projects:course_delete", args=[course.key]), {"revision": "1"})

        assert answer.status_code == 422
        assert Course.objects.exists()


class TestTheActions:
    def test_refuse_a_key_that_is_taken(self, course):
        with pytest.raises(TakenError):
            add_course(None, Course(key=course.key, title="Another", summary="."), [KNOB.key])

    def test_refuse_a_lesson_whose_project_is_gone(self, course):
        with pytest.raises(StaleError):
            mend_course(None, course, 1, [KNOB.key, "gone"])

        assert lessons(Course.objects.get()) == [KNOB.key, BOWL.key]

    def test_refuse_to_delete_what_is_gone(self, course):
        delete_course(None, course, 1)

        with pytest.raises(StaleError):
            delete_course(None, course, 1)


def test_a_project_called_courses_keeps_its_draft_page(as_instructor):
    draft(replace(KNOB, key="courses"))

    assert as_instructor.get("/projects/courses/draft/").context["key"] == "courses"
