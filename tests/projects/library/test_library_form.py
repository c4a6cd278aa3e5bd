"""A library goes out as one JSON document and comes back the same; all else is refused with its place."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from projects.library.domain import json_form
from projects.library.domain.errors import RecipeError
from projects.library.domain.library_form import (
    MOST_BYTES,
    Library,
    LibraryCourse,
    LibraryEdition,
    from_file,
    from_json,
    library_schema,
    to_json,
)
from projects.library.sentences.errors import error_sentence
from tests.projects.library.documents import changed
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.strategies import recipes

SLOW = settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
COURSE = LibraryCourse("two-evenings", "Two evenings", "A knob, then a bowl.", (KNOB.key, BOWL.key))
LIBRARY = Library((LibraryEdition(KNOB, True), LibraryEdition(BOWL, False)), (COURSE,))
WITHOUT_LESSONS = {"key": "none", "title": "None", "summary": "Nothing yet.", "lessons": []}


def document(**changes: object) -> dict[str, Any]:
    return {**to_json(LIBRARY), **changes}


def with_recipe(recipe: object) -> dict[str, Any]:
    return document(editions=[{"kept": True, "recipe": recipe}])


def refused(data: Any) -> RecipeError:
    with pytest.raises(RecipeError) as caught:
        from_file(json.dumps(data).encode())
    return caught.value


@SLOW
@given(st.lists(st.builds(LibraryEdition, recipes(), st.booleans()), max_size=2))
def test_a_library_comes_back_as_it_went_out(editions):
    library = Library(tuple(editions), (COURSE,))

    data = json.loads(json.dumps(to_json(library)))

    assert from_json(data) == library
    assert to_json(from_json(data)) == data
    assert list(Draft202012Validator(library_schema()).iter_errors(data)) == []


def test_the_schema_is_one_after_its_own_dialect():
    """JSON Schema draft 2020-12, by the library's copy of the dialect."""
    Draft202012Validator.check_schema(library_schema())


def test_the_schema_refuses_what_reading_refuses():
    spoiled = with_recipe(changed(("mountings", 0, "steps", 1, "tool"), "adze"))

    errors = list(Draft202012Validator(library_schema()).iter_errors(spoiled))

    assert len(errors) == 1
    assert refused(spoiled).code == "unknown_word"


def test_one_edition_alone_is_a_library_of_one_draft():
    data = json.dumps(json_form.to_json(KNOB)).encode()

    assert from_file(data) == Library((LibraryEdition(KNOB, kept=False),))


@pytest.mark.parametrize(
    ("data", "code", "path"),
    [
        ([], "foreign", ""),
        ({"format": "shelf"}, "foreign", ""),
        (document(version=2), "newer_version", ""),
        (document(version="1"), "foreign", ""),
        (document(owner="somebody"), "unknown_field", ""),
        (document(editions="all"), "wrong_type", "editions"),
        (
            document(courses=[WITHOUT_LESSONS]),
            "too_few",
            "courses[0].lessons",
        ),
        (document(editions=[{"kept": "yes", "recipe": {}}]), "wrong_type", "editions[0].kept"),
        (with_recipe({}), "foreign", "editions[0].recipe"),
        (with_recipe(changed(("version",), 9)), "newer_version", "editions[0].recipe"),
        (with_recipe(changed(("blank", "lenght"), 1)), "unknown_field", "editions[0].recipe.blank"),
        (
            with_recipe(changed(("mountings", 0, "steps", 0, "key"), "A B")),
            "unreadable_text",
            "editions[0].recipe.mountings[0].steps[0].key",
        ),
    ],
)
def test_what_is_no_library_is_refused_with_its_place(data, code, path):
    error = refused(data)

    assert (error.code, error.path) == (code, path)
    assert error_sentence(error)


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"", "broken"),
        (b"{", "broken"),
        (b"\xff\xfe{", "not_text"),
        (b'{"format": NaN}', "broken"),
        (b'{"a": 1, "a": 2}', "broken"),
        (b"[" * 100 + b"]" * 100, "too_deep"),
        (b"[" * 200_000, "too_deep"),
        (b" " * (MOST_BYTES + 1), "huge"),
    ],
)
def test_what_is_no_json_is_refused_whole(data, code):
    with pytest.raises(RecipeError) as caught:
        from_file(data)

    assert caught.value.code == code
    assert error_sentence(caught.value)


def test_a_fault_inside_an_edition_is_told_with_the_edition():
    sentence = error_sentence(refused(with_recipe(changed(("blank", "length"), "3"))))

    assert sentence.startswith("Edition 1 of the file, blank, length: “3” could be inches or millimetres.")
