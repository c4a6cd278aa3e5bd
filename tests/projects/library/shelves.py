"""Libraries for tests: as text of a file, brought in, and taken away again."""

from __future__ import annotations

import json
from typing import Any

from projects.library.domain.library_form import Library, LibraryCourse, LibraryEdition, to_json
from projects.library.domain.recipe import Recipe
from projects.library.exchange import bring_in, plan_library, write_library
from projects.library.models import Course, Edition
from projects.library.plans import LibraryPlan

Given = tuple[Recipe, bool]
KEPT, DRAFT = True, False


def library(*editions: Given, courses: tuple[LibraryCourse, ...] = ()) -> dict[str, Any]:
    return to_json(Library(tuple(LibraryEdition(*given) for given in editions), courses))


def file_of(document: Any) -> bytes:
    return json.dumps(document).encode()


def planned(*editions: Given, courses: tuple[LibraryCourse, ...] = ()) -> LibraryPlan:
    return plan_library(file_of(library(*editions, courses=courses)))


def brought_in(*editions: Given, courses: tuple[LibraryCourse, ...] = ()) -> LibraryPlan:
    plan = planned(*editions, courses=courses)
    bring_in(None, plan, plan.mark)
    return plan


def taken_away() -> str:
    return write_library(Edition.objects.all(), Course.objects.all())


def here() -> list[tuple[str, int, str]]:
    """Every edition by its project, number and state."""
    found = Edition.objects.order_by("project__key", "number")
    return list(found.values_list("project__key", "number", "state"))
