from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.length import Length, parse_length
from projects.geometry import marks as geometry_marks
from projects.geometry.profile import ProfileError, ShapeKind, check
from projects.library.domain import errors as recipe_errors
from projects.library.domain.drawn import DrawnMark, DrawnProfile, DrawnShape
from projects.library.domain.errors import RecipeError
from projects.library.domain.json_form import from_json
from projects.library.sentences.drawings import DRAWING
from projects.library.sentences.errors import PLACE, WHOLE, error_sentence, profile_sentence
from tests.projects.library.documents import changed, without

ROOMS = [Path(geometry_marks.__file__).parent, Path(recipe_errors.__file__).parent]


def codes_raised(error: str) -> set[str]:
    """Every code that the source gives this error where it raises it."""
    text = "\n".join(path.read_text() for room in ROOMS for path in room.rglob("*.py"))
    return set(re.findall(rf'{error}\(\s*"([a-z_]+)"', text))


def told(data: object) -> str:
    with pytest.raises(RecipeError) as caught:
        from_json(data)  # type: ignore[arg-type]
    return error_sentence(caught.value)


def test_every_code_of_a_recipe_has_its_sentence():
    readings = {"unknown_field", "missing_field", "wrong_type", "unknown_word", "unreadable_text"}
    readings |= {"short_text", "long_text", "too_small", "too_large", "too_few", "too_many"}
    with_reasons = {"bad_profile", "unreadable_quantity"}

    assert codes_raised("RecipeError") | readings == (set(WHOLE) | set(PLACE) | with_reasons)


def test_every_code_of_a_drawing_has_its_sentence():
    through_axis = {f"{kind}_through_axis" for kind in ("bead", "cove")}

    assert codes_raised("ProfileError") | through_axis == set(DRAWING)


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (changed(("mountings", 0, "steps", 1, "tool"), "adze"), "Mounting 1, step 2, tool: This word isn't"),
        (changed(("title",), ""), "Title: Nothing stands here yet."),
        (changed(("mountings", 0, "minutes"), "six"), "Mounting 1, minutes: This has to be a whole number."),
        (changed(("mountings", 0, "minutes"), 1000), "Mounting 1, minutes: This has to be at most 600."),
        (changed(("blank", "length"), 1.5), "Blank, length: This has to be a size with its unit, as"),
        (
            changed(("blank", "length"), "3"),
            "Blank, length: “3” could be inches or millimetres. Write 3\u00a0in",
        ),
        (changed(("blank", "lenght"), "3 in"), "Blank: There is no field “lenght” here."),
        (without("time", "hands_on"), "Time: The field “hands_on” is missing."),
        (changed(("version",), 10**30), "A newer Handwheel wrote this file."),
        ({"format": "something"}, "This is JSON, but no project and no library of Handwheel."),
    ],
)
def test_a_sentence_says_where_and_what_would_be_accepted(data, sentence):
    assert told(data).startswith(sentence)


def test_a_mark_that_cannot_be_is_named_with_its_drawing():
    data = changed(("profile", "marks", 1, "at"), "30 in")

    sentence = told(data)

    assert sentence.startswith("Drawing, mark 3: It lies at ")
    assert "mm" in sentence


@given(st.integers(10**6, 10**8), st.integers(0, 10**8), st.integers(1, 10**8))
def test_the_least_radius_that_is_offered_is_accepted(width, rise, radius):
    ends = (DrawnMark(Length(0), Length(10**9)), DrawnMark(Length(width), Length(10**9 + 2 * rise)))
    drawn = DrawnProfile(ends, (DrawnShape(ShapeKind.BEAD, radius=Length(radius)),))

    try:
        check(drawn.profile())
    except ProfileError as error:
        offered = re.search(r"at least (.*)\.$", profile_sentence(error))
        assert offered is not None
        mended = parse_length(offered[1].replace("\u00a0mm", "").replace("\u00a0", "") + "\u00a0mm")
        check(replace(drawn, shapes=(DrawnShape(ShapeKind.BEAD, radius=mended),)).profile())


def test_a_fault_of_the_bore_says_so():
    error = ProfileError("bore_outside", mark=2, inside=True)

    assert profile_sentence(error).startswith("Mark 2 of the bore: It lies beyond the ends")
