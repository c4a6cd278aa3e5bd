"""A whole library as one JSON document and back: every edition of every project, and the courses.

`{"format": "handwheel-library", "version": 1, "editions": [{"kept": true, "recipe": {...}}], "courses": []}`;
each recipe is the document of `json_form`, which is also what a single edition is taken away as. Editions of
one project stand in their order, the draft last; a number isn't written, since the next free one is given.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from typing import Annotated, cast

from projects.library.domain import json_form, schema
from projects.library.domain.bounds import Key, Line, Many, Passage
from projects.library.domain.errors import RecipeError
from projects.library.domain.json_values import Json, check_depth, read_json
from projects.library.domain.recipe import Recipe
from projects.library.domain.schema import part_schema, project_schema
from projects.library.domain.structure import members
from projects.library.domain.validation import check_schema

FORMAT = "handwheel-library"
VERSION = 1
# An edition is about 20 KB, so this is some five hundred of them.
MOST_BYTES = 10_000_000
MOST_EDITIONS = 1_000
MOST_COURSES = 200


@dataclass(frozen=True)
class LibraryEdition:
    """An edition; `kept` is false for a draft."""

    recipe: Recipe
    kept: bool


@dataclass(frozen=True)
class LibraryCourse:
    """A course; `lessons` are the keys of its projects, in their order."""

    key: Key
    title: Line
    summary: Passage
    lessons: Annotated[tuple[Key, ...], Many(60, least=1)]


@dataclass(frozen=True)
class Library:
    editions: tuple[LibraryEdition, ...]
    courses: tuple[LibraryCourse, ...] = ()


@cache
def library_schema() -> dict[str, Json]:
    """The JSON Schema (draft 2020-12) of the document, with that of a project inside it."""
    project = {name: value for name, value in project_schema().items() if name not in {"$schema", "$defs"}}
    return {
        "$schema": schema.DIALECT,
        "title": FORMAT,
        "$defs": {**cast("dict[str, Json]", project_schema()["$defs"]), "Project": project},
        **_object(
            format={"const": FORMAT},
            version={"const": VERSION},
            editions=_list(
                _object(kept={"type": "boolean"}, recipe={"$ref": "#/$defs/Project"}), MOST_EDITIONS
            ),
            courses=_list(_course_schema(), MOST_COURSES),
        ),
    }


@cache
def _frame_schema() -> dict[str, Json]:
    """The same without what is inside a recipe, which `json_form` holds against its own schema."""
    edition = _object(kept={"type": "boolean"}, recipe={"type": "object"})
    return _object(
        format={"const": FORMAT},
        version={"const": VERSION},
        editions=_list(edition, MOST_EDITIONS),
        courses=_list(_course_schema(), MOST_COURSES),
    )


def _course_schema() -> dict[str, Json]:
    return _object(**{member.name: part_schema(member.part) for member in members(LibraryCourse)})


def _object(**properties: dict[str, Json]) -> dict[str, Json]:
    """An object with all of these and nothing else."""
    fields: dict[str, Json] = {**properties}
    return {
        "type": "object",
        "additionalProperties": False,
        "required": [*properties],
        "properties": fields,
    }


def _list(entry: dict[str, Json], most: int) -> dict[str, Json]:
    return {"type": "array", "maxItems": most, "items": entry}


def to_json(library: Library) -> dict[str, Json]:
    """The document; the recipes in it are documents of their own."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "editions": [
            {"kept": edition.kept, "recipe": json_form.to_json(edition.recipe)}
            for edition in library.editions
        ],
        "courses": [
            {"key": it.key, "title": it.title, "summary": it.summary, "lessons": [*it.lessons]}
            for it in library.courses
        ],
    }


def from_file(data: bytes) -> Library:
    """The library in the bytes of a file; one edition alone is a library of one draft.

    At most 10 MB are read. Raises RecipeError; its path begins with the edition: `editions[2].recipe.title`.
    """
    document = read_json(data, MOST_BYTES)
    if isinstance(document, dict) and document.get("format") == schema.FORMAT:
        return Library((LibraryEdition(json_form.from_json(document), kept=False),))
    return from_json(document)


def from_json(data: Json) -> Library:
    """The library in a document; raises RecipeError."""
    check_depth(data)
    document = json_form.checked_head(data, FORMAT, VERSION)
    check_schema(document, _frame_schema)
    editions = cast("list[dict[str, Json]]", document["editions"])
    courses = cast("list[dict[str, Json]]", document["courses"])
    return Library(
        tuple(_edition(entry, number) for number, entry in enumerate(editions)),
        tuple(_course(entry) for entry in courses),
    )


def _edition(entry: dict[str, Json], number: int) -> LibraryEdition:
    at = f"editions[{number}].recipe"
    try:
        recipe = json_form.from_json(entry["recipe"])
    except RecipeError as error:
        path = f"{at}.{error.path}" if error.path else at
        raise RecipeError(error.code, path=path, **error.values) from error
    return LibraryEdition(recipe, entry["kept"] is True)


def _course(entry: dict[str, Json]) -> LibraryCourse:
    lessons = tuple(str(key) for key in cast("Iterable[Json]", entry["lessons"]))
    return LibraryCourse(str(entry["key"]), str(entry["title"]), str(entry["summary"]), lessons)
