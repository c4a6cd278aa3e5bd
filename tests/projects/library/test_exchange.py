from __future__ import annotations

import json
from dataclasses import replace

import pytest
from django.db.models import Model
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from hypothesis.extra.django import TestCase

from club.base.models import Change
from club.base.quantities.length import Length, LengthStyle, parse_length
from club.base.writing import StaleError
from projects.library.actions import add_edition, keep_draft, save_draft
from projects.library.domain.blank import SquareBlank
from projects.library.domain.json_form import to_json
from projects.library.domain.library_form import LibraryCourse
from projects.library.domain.recipe import Recipe
from projects.library.exchange import bring_in, plan_library, write_edition
from projects.library.models import Course, CourseLesson, Edition, EditionWord, Project
from tests.projects.library.documents import changed
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.rows import draft, kept
from tests.projects.library.shelves import (
    DRAFT,
    KEPT,
    brought_in,
    file_of,
    here,
    library,
    planned,
    taken_away,
)
from tests.projects.library.strategies import recipes

pytestmark = pytest.mark.django_db
COURSE = LibraryCourse("two-evenings", "Two evenings", "A knob, then a bowl.", (KNOB.key, BOWL.key))
SECOND = replace(KNOB, summary="A knob, said better.")
UNFIT = replace(KNOB, left_end=None, right_end=None, blank=replace(BOWL.blank, species="no_such_wood"))
ROWS: tuple[type[Model], ...] = (Project, Edition, EditionWord, Course, CourseLesson, Change)


def counts() -> list[int]:
    return [rows._default_manager.count() for rows in ROWS]


def dense(recipe: Recipe, density: int) -> Recipe:
    assert isinstance(recipe.blank, SquareBlank)
    return replace(recipe, blank=replace(recipe.blank, density_kg_per_m3=density))


class TestAPlan:
    def test_writes_nothing(self):
        planned((KNOB, KEPT), (BOWL, DRAFT), courses=(COURSE,))

        assert counts() == [0] * len(ROWS)

    def test_numbers_kept_editions_onward_and_lets_the_draft_follow(self):
        plan = planned((KNOB, KEPT), (SECOND, KEPT), (KNOB, DRAFT))

        assert [(line.kind, line.number) for line in plan.editions] == [("new", 1), ("next", 2), ("next", 3)]

    def test_leaves_an_edition_alone_that_is_here(self):
        kept(KNOB)

        plan = planned((kept_recipe(), KEPT), (SECOND, KEPT))

        assert [(line.kind, line.number) for line in plan.editions] == [("same", 1), ("next", 2)]

    def test_takes_what_the_tables_would_fill_in_for_the_same(self):
        kept(KNOB)

        (line,) = planned((KNOB, KEPT)).editions

        assert kept_recipe() != KNOB
        assert line.kind == "same"

    def test_never_takes_another_density_for_the_same(self):
        kept(dense(KNOB, 700))

        (line,) = planned((dense(KNOB, 701), KEPT)).editions

        assert line.kind == "next"
        assert line.differs == ("Blank, density in kg/m³: 700 became 701.",)

    def test_never_takes_another_way_of_typing_for_the_same(self):
        kept(KNOB)
        other = typed_otherwise(kept_recipe())

        (line,) = planned((other, KEPT)).editions

        assert other == kept_recipe()
        assert line.kind == "next"
        assert line.differs == ("Nothing but the way lengths are written.",)

    def test_says_in_words_what_differs_from_the_edition_before(self):
        kept(KNOB)

        (line,) = planned((replace(kept_recipe(), title="Round knob"), DRAFT)).editions

        assert line.differs == (f"Title: “{KNOB.title}” became “Round knob”.",)

    def test_finds_each_edition_here_once(self):
        """Somebody went back to what edition 1 said: that is an edition of its own."""
        brought_in((KNOB, KEPT), (SECOND, KEPT))

        plan = planned((KNOB, KEPT), (SECOND, KEPT), (KNOB, KEPT))

        assert [(line.kind, line.number) for line in plan.editions] == [("same", 1), ("same", 2), ("next", 3)]

    def test_refuses_a_draft_where_another_draft_is(self):
        draft(KNOB)

        plan = planned((SECOND, DRAFT))

        assert plan.all_problems == (
            f"Edition 1 of the file, {KNOB.title}: Another draft of it is here. "
            "Keep it or throw it away first.",
        )

    def test_leaves_the_same_draft_alone(self):
        draft(KNOB)

        (line,) = planned((KNOB, DRAFT)).editions

        assert (line.kind, line.number) == ("same", 1)

    def test_refuses_a_kept_edition_behind_a_draft(self):
        plan = planned((KNOB, DRAFT), (SECOND, KEPT))

        assert "A draft of it stands before it in the file." in plan.all_problems[0]

    def test_refuses_to_keep_what_the_checks_refuse_and_says_why(self):
        plan = planned((UNFIT, KEPT))

        assert len(plan.all_problems) == 1
        assert "It is marked as kept, but this stops it: Blank, wood: “no such wood”" in plan.all_problems[0]

    def test_lets_the_same_come_in_as_a_draft_and_shows_why_it_cannot_be_kept(self):
        (line,) = planned((UNFIT, DRAFT)).editions

        assert line.kind == "new"
        assert "blank.species" in [remark.path for remark in line.look.refused]

    def test_refuses_a_course_of_projects_that_are_nowhere(self):
        plan = planned((KNOB, KEPT), courses=(COURSE,))

        assert plan.all_problems == (
            f"Course 1 of the file, Two evenings: There is no project “{BOWL.key}” here or in this file. "
            "Bring it in as well, or take it out of the course.",
        )

    def test_tells_new_courses_from_changed_and_equal_ones(self):
        brought_in((KNOB, KEPT), (BOWL, KEPT), courses=(COURSE,))
        other = replace(COURSE, title="Two nights", lessons=(BOWL.key, KNOB.key))

        same, mended = planned(courses=(COURSE,)), planned(courses=(other,))

        assert [line.kind for line in same.courses] == ["same"]
        assert mended.courses[0].kind == "changed"
        assert mended.courses[0].differs == (
            "Title: Two evenings became Two nights.",
            f"Lessons: {KNOB.title}, {BOWL.title} became {BOWL.title}, {KNOB.title}.",
        )

    @pytest.mark.parametrize("key", ["new", "draft", "next-edition"])
    def test_refuses_a_course_by_the_name_of_a_page(self, key):
        plan = planned((KNOB, KEPT), (BOWL, KEPT), courses=(replace(COURSE, key=key),))

        assert "is the address of a page here" in plan.all_problems[0]

    def test_refuses_a_course_that_stands_twice(self):
        plan = planned((KNOB, KEPT), (BOWL, KEPT), courses=(COURSE, COURSE))

        assert "stands before it in the file" in plan.all_problems[0]

    @pytest.mark.parametrize("count", [1, 12])
    def test_asks_as_much_of_the_database_for_many_as_for_one(self, django_assert_max_num_queries, count):
        projects = [(replace(KNOB, key=f"knob-{number}"), KEPT) for number in range(count)]
        brought_in(*projects, courses=(replace(COURSE, lessons=("knob-0",)),))

        with django_assert_max_num_queries(5):
            planned(*projects, courses=(replace(COURSE, lessons=("knob-0",)),))


def kept_recipe() -> Recipe:
    return Edition.objects.kept().latest("pk").recipe


def typed_otherwise(recipe: Recipe) -> Recipe:
    """The same size, written in millimetres where somebody typed inches."""
    assert isinstance(recipe.blank, SquareBlank)
    side = recipe.blank.side
    assert side.typed
    return replace(recipe, blank=replace(recipe.blank, side=Length(side.nm)))


class TestBringingIn:
    def test_brings_in_all_with_words_and_change_rows(self):
        brought_in((KNOB, KEPT), (SECOND, DRAFT), (BOWL, KEPT), courses=(COURSE,))

        assert here() == [(KNOB.key, 1, "kept"), (KNOB.key, 2, "draft"), (BOWL.key, 1, "kept")]
        assert [lesson.project.key for lesson in Course.objects.get().lessons.all()] == [KNOB.key, BOWL.key]
        assert EditionWord.objects.filter(kind="holding").exists()
        assert Change.objects.count() == 4

    def test_changes_nothing_when_it_comes_in_again(self):
        brought_in((KNOB, KEPT), (SECOND, DRAFT), (BOWL, KEPT), courses=(COURSE,))
        before = counts()

        plan = brought_in((KNOB, KEPT), (SECOND, DRAFT), (BOWL, KEPT), courses=(COURSE,))

        assert not plan.has_changes
        assert counts() == before

    def test_mends_a_course(self):
        brought_in((KNOB, KEPT), (BOWL, KEPT), courses=(COURSE,))

        brought_in(courses=(replace(COURSE, summary="A bowl alone.", lessons=(BOWL.key,)),))

        course = Course.objects.get()
        assert (course.summary, course.revision) == ("A bowl alone.", 2)
        assert [lesson.project.key for lesson in course.lessons.all()] == [BOWL.key]

    def test_brings_one_edition_in_as_the_draft_of_the_next(self):
        kept(KNOB)
        plan = plan_library(file_of(to_json(SECOND)))

        bring_in(None, plan, plan.mark)

        assert here() == [(KNOB.key, 1, "kept"), (KNOB.key, 2, "draft")]

    def test_refuses_another_mark(self):
        with pytest.raises(StaleError):
            bring_in(None, planned((KNOB, KEPT)), planned((KNOB, DRAFT)).mark)

        assert counts() == [0] * len(ROWS)

    def test_refuses_a_plan_with_problems(self):
        plan = planned((KNOB, KEPT), (UNFIT, KEPT))

        with pytest.raises(StaleError):
            bring_in(None, plan, plan.mark)

        assert counts() == [0] * len(ROWS)

    @pytest.mark.parametrize("deed", ["kept another", "wrote on the draft", "kept the draft"])
    def test_writes_nothing_when_the_library_changed_since(self, deed):
        first = kept(BOWL)
        written = draft(KNOB)
        plan = planned((replace(BOWL, title="Another"), DRAFT), (KNOB, DRAFT))
        if deed == "kept another":
            add_edition(None, first.project, first.recipe, kept=True)
        elif deed == "wrote on the draft":
            save_draft(None, written, SECOND, written.revision)
        else:
            keep_draft(None, written, written.revision)
        before = counts()

        with pytest.raises(StaleError):
            bring_in(None, plan, plan.mark)

        assert counts() == before


class TestTheRoundTrip:
    def test_of_a_whole_library_is_equal_to_the_byte(self):
        brought_in((KNOB, KEPT), (SECOND, KEPT), (KNOB, DRAFT), (BOWL, KEPT), courses=(COURSE,))
        first = taken_away()
        CourseLesson.objects.all().delete()
        for rows in (Course, Edition, Project):
            rows._default_manager.all().delete()

        plan = plan_library(first.encode())
        bring_in(None, plan, plan.mark)

        assert taken_away() == first

    def test_keeps_the_values_that_were_frozen(self):
        brought_in((dense(KNOB, 733), KEPT))
        first = json.loads(taken_away())

        assert first["editions"][0]["recipe"]["blank"]["density_kg_per_m3"] == 733
        assert not plan_library(file_of(first)).has_changes

    def test_of_one_edition_finds_it_here(self):
        edition = kept(KNOB)

        (line,) = plan_library(write_edition(edition).encode()).editions

        assert (line.kind, line.number) == ("same", 1)

    def test_reads_a_file_with_a_byte_order_mark_and_windows_line_ends(self):
        text = json.dumps(library((KNOB, KEPT)), indent=2).replace("\n", "\r\n")

        plan = plan_library(b"\xef\xbb\xbf" + text.encode())

        assert [line.kind for line in plan.editions] == ["new"]


class TestAnyRecipe(TestCase):
    @settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
    @given(recipes(), st.booleans())
    def test_goes_out_and_comes_in_as_a_draft_equal_to_the_byte(self, recipe, alone):
        brought_in((recipe, DRAFT))
        first = taken_away()
        single = write_edition(Edition.objects.get())
        Edition.objects.all().delete()
        Project.objects.all().delete()

        plan = plan_library((single if alone else first).encode())
        bring_in(None, plan, plan.mark)

        assert taken_away() == first


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "This is no whole JSON"),
        (b'{"format": "handwheel-library"', "This is no whole JSON"),
        (b"\xff\xfe\x00", "This is no text in UTF-8"),
        (b"[" * 99_999, "more than 30 deep"),
        (b" " * 10_000_001, "The file is over 10\u00a0MB"),
        (file_of({"format": "recipes"}), "no project and no library"),
        (file_of(library() | {"version": 2}), "A newer Handwheel wrote this file"),
        (file_of(library() | {"owner": "club"}), "There is no field “owner” here"),
        (file_of(changed(("blank", "length"), "wide")), "Blank, length: There is no number in digits here"),
        (file_of(library()), "There is no edition and no course in this file"),
    ],
)
def test_a_bad_file_gets_one_sentence_and_changes_nothing(data, words):
    plan = plan_library(data)

    assert len(plan.all_problems) == 1
    assert words in plan.all_problems[0]
    assert not plan.may_come_in
    assert counts() == [0] * len(ROWS)


def test_a_length_is_told_in_the_readers_style():
    kept(KNOB)
    assert isinstance(KNOB.blank, SquareBlank)
    longer = replace(KNOB, blank=replace(KNOB.blank, length=parse_length("3 in")))

    (line,) = plan_library(file_of(library((longer, KEPT))), LengthStyle.MILLIMETRES).editions

    assert line.differs == ("Blank, length: 50.8\u00a0mm became 76.2\u00a0mm.",)
