"""Libraries in from a file and out to one: a plan first, then all of it or nothing."""

from __future__ import annotations

import json

from django.db import transaction
from django.db.models import QuerySet

from club.base.quantities.length import LengthStyle
from club.base.writing import StaleError
from projects.library.actions import By, add_edition, add_project
from projects.library.course_actions import add_course, mend_course
from projects.library.domain import json_form, library_form
from projects.library.domain.errors import RecipeError
from projects.library.domain.json_values import Json
from projects.library.domain.library_form import Library, LibraryCourse, LibraryEdition
from projects.library.models import Course, Edition, Project
from projects.library.plans import EditionLine, LibraryPlan, Planner, Shelf, given_as
from projects.library.sentences.errors import error_sentence


def plan_library(data: bytes, lengths: LengthStyle = LengthStyle.AS_TYPED) -> LibraryPlan:
    """What a file would do here, edition by edition; nothing is written.

    At most five queries, whatever is in the file. `lengths` is how its reader likes them.
    """
    try:
        library = library_form.from_file(data)
    except RecipeError as error:
        return LibraryPlan(problems=(error_sentence(error),))
    return Planner(library, _shelf(library), lengths).plan()


def _shelf(library: Library, *, lock: bool = False) -> Shelf:
    """What is here of all that the library speaks of, locked until the transaction ends where `lock` says.

    Courses are locked before projects, as when one is mended.
    """
    keys = {edition.recipe.key for edition in library.editions}
    keys |= {key for course in library.courses for key in course.lessons}
    courses = Course.objects.filter(key__in={course.key for course in library.courses}).order_by("key")
    projects = Project.objects.filter(key__in=keys).order_by("key")
    if lock:
        courses, projects = courses.select_for_update(), projects.select_for_update()
    found = tuple(courses.whole())
    here = {project.key: project for project in projects}
    editions = Edition.objects.filter(project__in=here.values()).order_by("number")
    return Shelf(here, tuple(editions), found)


@transaction.atomic
def bring_in(by: By, plan: LibraryPlan, mark: str) -> None:
    """Write the whole plan or nothing.

    Raises StaleError when the plan isn't the one with this mark, or when what is here changed since;
    TakenError when somebody else brought the same project in at this moment.
    """
    if not plan.is_good or plan.mark != mark:
        raise StaleError
    shelf = _shelf(plan.library, lock=True)
    if shelf.mark != plan.shelf_mark:
        raise StaleError
    projects = dict(shelf.projects)
    for line in plan.editions:
        if line.comes_in:
            _add(by, line, projects)
    courses = {course.key: course for course in shelf.courses}
    for given in (line.course for line in plan.courses if line.comes_in):
        _write_course(by, given, courses.get(given.key))


def _add(by: By, line: EditionLine, projects: dict[str, Project]) -> None:
    recipe, kept = line.edition.recipe, line.edition.kept
    if recipe.key in projects:
        add_edition(by, projects[recipe.key], recipe, kept=kept)
    else:
        projects[recipe.key] = add_project(by, recipe, kept=kept).project


def _write_course(by: By, given: LibraryCourse, here: Course | None) -> None:
    if here is None:
        add_course(by, Course(key=given.key, title=given.title, summary=given.summary), given.lessons)
        return
    here.title, here.summary = given.title, given.summary
    mend_course(by, here, here.revision, given.lessons)


def write_edition(edition: Edition) -> str:
    """One edition as JSON text, which `plan_library` reads back as that very edition."""
    return _text(json_form.to_json(edition.recipe))


def write_library(editions: QuerySet[Edition], courses: QuerySet[Course]) -> str:
    """The library as JSON text, which `plan_library` reads back as no change at all.

    In an order that doesn't depend on when anything came in.
    """
    library = Library(
        tuple(
            LibraryEdition(edition.recipe, not edition.is_draft)
            for edition in editions.order_by("project__key", "number")
        ),
        tuple(given_as(course) for course in courses.order_by("key")),
    )
    return _text(library_form.to_json(library))


def _text(document: dict[str, Json]) -> str:
    return json.dumps(document, ensure_ascii=False, indent=2) + "\n"
