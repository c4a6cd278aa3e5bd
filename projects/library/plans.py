"""What a library from a file would do here, edition by edition and course by course. Nothing is written."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from hashlib import sha256

from club.base.quantities.length import LengthStyle
from projects.library.domain.frozen_values import with_table_values
from projects.library.domain.json_form import to_json
from projects.library.domain.json_values import Json
from projects.library.domain.library_form import Library, LibraryCourse, LibraryEdition
from projects.library.domain.library_form import to_json as library_to_json
from projects.library.domain.recipe import Recipe
from projects.library.looked_over import LookedOver, looked_over
from projects.library.models import Course, Edition, Project
from projects.library.sentences.difference import difference_sentences
from projects.library.sentences.exchange import NOTHING, TYPED, course_change, course_problem, edition_problem
from projects.library.tables import finishes, woods

# Addresses beside those of courses; see the room's urls.
PAGES_OF_COURSES = frozenset({"new", "draft", "next-edition"})


@dataclass(frozen=True)
class Shelf:
    """What is here of all that a library speaks of."""

    projects: Mapping[str, Project]
    editions: tuple[Edition, ...]
    courses: tuple[Course, ...]

    @property
    def mark(self) -> str:
        """Changes when any of it changes."""
        editions = [(each.pk, each.number, each.state, each.revision) for each in self.editions]
        courses = [(each.pk, each.revision) for each in self.courses]
        return repr((sorted(self.projects), editions, courses))


@dataclass(frozen=True)
class EditionLine:
    """What an edition of the file would be: of a new project, the next one, one that is here, or none.

    `number` is the edition it would be or is; `differs` says in words what is new in it against the edition
    before it.
    """

    place: int
    edition: LibraryEdition
    kind: str
    number: int = 0
    problem: str = ""
    differs: tuple[str, ...] = ()
    look: LookedOver = field(default=LookedOver((), ()))

    @property
    def title(self) -> str:
        return self.edition.recipe.title

    @property
    def comes_in(self) -> bool:
        return self.kind in {"new", "next"}


@dataclass(frozen=True)
class CourseLine:
    place: int
    course: LibraryCourse
    kind: str
    problem: str = ""
    differs: tuple[str, ...] = ()

    @property
    def comes_in(self) -> bool:
        return self.kind in {"new", "changed"}


@dataclass(frozen=True)
class LibraryPlan:
    library: Library = field(default=Library(()))
    editions: tuple[EditionLine, ...] = ()
    courses: tuple[CourseLine, ...] = ()
    problems: tuple[str, ...] = ()
    shelf_mark: str = ""

    @property
    def _lines(self) -> tuple[EditionLine | CourseLine, ...]:
        return (*self.editions, *self.courses)

    @property
    def all_problems(self) -> tuple[str, ...]:
        return (*self.problems, *(line.problem for line in self._lines if line.problem))

    @property
    def is_good(self) -> bool:
        return not self.all_problems

    @property
    def has_changes(self) -> bool:
        return any(line.comes_in for line in self._lines)

    @property
    def may_come_in(self) -> bool:
        return self.is_good and self.has_changes

    @property
    def told(self) -> tuple[EditionLine, ...]:
        """The editions of which more is to be said than that they are here."""
        return tuple(line for line in self.editions if line.kind != "same")

    @property
    def same(self) -> tuple[EditionLine, ...]:
        return tuple(line for line in self.editions if line.kind == "same")

    @property
    def new_count(self) -> int:
        return sum(line.comes_in for line in self.editions)

    @property
    def course_count(self) -> int:
        return sum(line.comes_in for line in self.courses)

    @cached_property
    def mark(self) -> str:
        """Changes when the file or what it touches changes: what was looked over is what is written."""
        given = json.dumps(library_to_json(self.library), sort_keys=True)
        return sha256(f"{self.shelf_mark} {given}".encode("utf-8", "surrogatepass")).hexdigest()


@dataclass
class _Standing:
    """An edition that is here, or that an earlier line of the file would make."""

    number: int
    kept: bool
    title: str
    edition: Edition | None = None
    given: Recipe | None = None
    matched: bool = False

    @property
    def recipe(self) -> Recipe:
        if self.edition is not None:
            return self.edition.recipe
        assert self.given is not None
        return self.given

    def is_free_and(self, documents: list[dict[str, Json]]) -> bool:
        return self.edition is not None and not self.matched and self.edition.recipe_json in documents


class Planner:
    """Goes through a library in the order of its file, with what stands after each line."""

    def __init__(self, library: Library, shelf: Shelf, lengths: LengthStyle) -> None:
        self.library, self.shelf, self.lengths = library, shelf, lengths
        keys = {project.pk: key for key, project in shelf.projects.items()}
        self.standing: dict[str, list[_Standing]] = {key: [] for key in shelf.projects}
        for each in shelf.editions:
            standing = _Standing(each.number, not each.is_draft, each.title, each)
            self.standing[keys[each.project_id]].append(standing)

    def plan(self) -> LibraryPlan:
        nothing = not self.library.editions and not self.library.courses
        editions = tuple(self._edition(*each) for each in enumerate(self.library.editions, 1))
        return LibraryPlan(
            self.library,
            editions,
            tuple(self._course(*each) for each in enumerate(self.library.courses, 1)),
            (str(NOTHING),) if nothing else (),
            self.shelf.mark,
        )

    def _edition(self, place: int, edition: LibraryEdition) -> EditionLine:
        recipe = edition.recipe
        filled = with_table_values(recipe, woods(), finishes())
        before = self.standing.setdefault(recipe.key, [])
        if here := _same(edition, [to_json(recipe), to_json(filled)], before):
            here.matched = True
            return EditionLine(place, edition, "same", here.number)
        look = looked_over(recipe)
        if problem := _problem(place, edition, before, look):
            return EditionLine(place, edition, "problem", problem=problem, look=look)
        last = before[-1] if before else None
        number = last.number + 1 if last else 1
        becomes = filled if edition.kept else recipe
        before.append(_Standing(number, edition.kept, recipe.title, given=becomes))
        differs = differences(last.recipe, becomes, self.lengths) if last else ()
        return EditionLine(place, edition, "next" if last else "new", number, "", differs, look)

    def _course(self, place: int, course: LibraryCourse) -> CourseLine:
        if problem := self._course_problem(place, course):
            return CourseLine(place, course, "problem", problem)
        here = next((each for each in self.shelf.courses if each.key == course.key), None)
        if here is None:
            return CourseLine(place, course, "new")
        differs = tuple(self._course_changes(given_as(here), course))
        return CourseLine(place, course, "changed" if differs else "same", "", differs)

    def _course_problem(self, place: int, course: LibraryCourse) -> str:
        earlier = {each.key for each in self.library.courses[: place - 1]}
        if course.key in earlier:
            return course_problem("course_twice", place, course.title, key=course.key)
        if course.key in PAGES_OF_COURSES:
            return course_problem("key_of_a_page", place, course.title, key=course.key)
        unknown = next((key for key in course.lessons if not self.standing.get(key)), None)
        if unknown is not None:
            return course_problem("no_project", place, course.title, key=unknown)
        return ""

    def _course_changes(self, old: LibraryCourse, new: LibraryCourse) -> list[str]:
        pairs = [("title", old.title, new.title), ("summary", old.summary, new.summary)]
        said = [course_change(name, was, now) for name, was, now in pairs if was != now]
        if old.lessons != new.lessons:
            said.append(course_change("lessons", self._titles(old.lessons), self._titles(new.lessons)))
        return said

    def _titles(self, keys: tuple[str, ...]) -> str:
        return ", ".join(self.standing[key][-1].title if self.standing.get(key) else key for key in keys)


def _same(
    edition: LibraryEdition, documents: list[dict[str, Json]], before: list[_Standing]
) -> _Standing | None:
    """The edition here that is this very one, to the last typed letter; each is found once.

    What the tables fill in when an edition is kept may be left open in the file.
    """
    free = [each for each in before if each.is_free_and(documents)]
    return next((each for each in free if each.kept is edition.kept), free[0] if free else None)


def _problem(place: int, edition: LibraryEdition, before: list[_Standing], look: LookedOver) -> str:
    title = edition.recipe.title
    draft = next((each for each in before if not each.kept), None)
    if draft is not None:
        return edition_problem("draft_here" if draft.edition else "draft_before", place, title)
    if edition.kept and look.refused:
        return edition_problem("not_good", place, title, why=look.refused[0].sentence)
    return ""


def differences(old: Recipe, new: Recipe, lengths: LengthStyle) -> tuple[str, ...]:
    """What differs in words, and be it only how something was typed; nothing for the very same."""
    said = difference_sentences(old, new, lengths)
    return said or ((str(TYPED),) if to_json(old) != to_json(new) else ())


def given_as(course: Course) -> LibraryCourse:
    """A course as a library writes it."""
    lessons = tuple(lesson.project.key for lesson in course.lessons.all())
    return LibraryCourse(course.key, course.title, course.summary, lessons)
