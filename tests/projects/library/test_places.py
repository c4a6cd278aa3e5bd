from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from projects.library.domain.mountings import Step
from projects.library.domain.places import (
    PlaceError,
    get,
    insert,
    move,
    part_at,
    place_of,
    put,
    read_place,
    still_there,
    take_out,
    write_place,
)
from projects.library.domain.recipe import Recipe
from projects.library.domain.structure import ChoicePart, ListPart, QuantityPart, RecordPart, TextPart
from tests.projects.library.examples import BEAD, BOWL, KNOB, ROUGH, inches
from tests.projects.library.strategies import recipes

FIRST_STEP = ("mountings", 0, "steps", 0)


def test_a_place_is_read_as_it_is_written():
    place = ("mountings", 1, "steps", 13, "hole")

    assert write_place(place) == "mountings.1.steps.13.hole"
    assert read_place("mountings.1.steps.13.hole") == place
    assert read_place("") == ()


@pytest.mark.parametrize(
    "text",
    [
        *("mountings.", ".mountings", "mountings..0", "mountings.-1", "mountings.01", "mountings.1000"),
        *("mountings[0]", "Mountings", "mountings 0", "mountings.0\n", "mountings.\u0661", "\u212a", "a\0"),
        *("mountings.0" * 20, "../..", "m\u0131"),
    ],
)
def test_text_that_no_address_of_ours_has_is_no_place(text):
    with pytest.raises(PlaceError):
        read_place(text)


def test_the_path_of_an_error_is_the_same_place():
    assert place_of("mountings[1].steps[3].tool") == ("mountings", 1, "steps", 3, "tool")


def test_get_finds_what_stands_there():
    assert get(KNOB, ()) is KNOB
    assert get(KNOB, ("mountings", 0, "steps", 1)) is ROUGH
    assert get(KNOB, ("harder",)) is None


@pytest.mark.parametrize(
    "place",
    [
        ("mountings", 1),
        ("mountings", "steps"),
        ("mountings", 0, 0),
        ("nothing",),
        ("title", "upper"),
        ("harder", "title"),
        ("steps",),
        ("__class__",),
        (0,),
    ],
)
def test_a_place_that_this_recipe_has_not_is_refused(place):
    with pytest.raises(PlaceError):
        get(KNOB, place)


@pytest.mark.parametrize(
    ("place", "part"),
    [
        ((), RecordPart),
        (("blank",), ChoicePart),
        (("blank", "side"), QuantityPart),
        (("grits",), ListPart),
        (("harder",), RecordPart),
        (("mountings", 0, "steps", 6), RecordPart),
        (("materials", 0), ChoicePart),
        (("skills", 1), TextPart),
    ],
)
def test_what_may_stand_in_a_place_is_known_also_where_nothing_stands_yet(place, part):
    assert isinstance(part_at(KNOB, place), part)


def test_behind_the_end_of_a_list_is_one_place_and_no_more():
    with pytest.raises(PlaceError):
        part_at(KNOB, ("mountings", 0, "steps", 7))


def test_put_changes_that_place_and_nothing_else():
    longer = put(KNOB, ("mountings", 0, "stands_out"), inches("3"))

    assert get(longer, ("mountings", 0, "stands_out")) == inches("3")
    assert put(longer, ("mountings", 0, "stands_out"), inches("2")) == KNOB


def test_an_entry_goes_in_before_what_stood_there():
    more = insert(KNOB, FIRST_STEP, replace(ROUGH, key="again"))

    assert [step.key for step in more.steps()] == ["again", *(step.key for step in KNOB.steps())]


def test_an_entry_goes_in_at_the_end():
    more = insert(KNOB, ("grits", 3), 320)

    assert more.grits == (120, 180, 240, 320)


def test_beyond_the_end_nothing_goes_in():
    with pytest.raises(PlaceError):
        insert(KNOB, ("grits", 4), 320)


def test_an_entry_is_taken_out():
    less = take_out(KNOB, ("mountings", 0, "steps", 2))

    assert BEAD not in less.steps()
    assert insert(less, ("mountings", 0, "steps", 2), BEAD) == KNOB


def test_what_may_be_missing_is_taken_out():
    assert take_out(KNOB, ("easier",)) == replace(KNOB, easier=None)


@pytest.mark.parametrize(
    "place", [("harder",), ("blank",), ("title",), ("food_ware",), ("grits",), ("grits", 3), ()]
)
def test_what_has_to_be_there_and_what_is_not_there_cannot_be_taken_out(place):
    with pytest.raises(PlaceError):
        take_out(KNOB, place)


def test_an_entry_moves_past_its_neighbour():
    moved = move(BOWL, ("mountings", 0), 1)

    assert [mounting.key for mounting in moved.mountings] == ["inside", "outside"]
    assert move(moved, ("mountings", 1), -1) == BOWL


@pytest.mark.parametrize(("place", "by"), [(("mountings", 0), -1), (("mountings", 1), 1), (("blank",), 1)])
def test_nothing_moves_out_of_its_list(place, by):
    with pytest.raises(PlaceError):
        move(BOWL, place, by)


@pytest.mark.parametrize(
    ("place", "was"),
    [
        (("glue_ups", 0, "after", 0), ("glue_ups", 0, "after", 0)),
        (("glue_ups", 1, "after", 0), ("glue_ups", 2, "after", 0)),
        (("preparation", 1), ("preparation", 1)),
        (("easier", "leaves_out", 1), ("easier", "leaves_out", 1)),
        ((), ()),
    ],
)
def test_behind_what_was_taken_out_everything_stood_one_place_further_on(place, was):
    assert still_there(("glue_ups", 1), place) == was


@given(recipes(), st.data())
def test_what_is_taken_out_and_put_back_leaves_the_recipe_as_it_was(recipe: Recipe, data):
    at = data.draw(st.integers(0, len(recipe.mountings) - 1))
    place = ("mountings", at, "steps", data.draw(st.integers(0, len(recipe.mountings[at].steps) - 1)))
    step = get(recipe, place)

    back = insert(take_out(recipe, place), place, step)

    assert isinstance(step, Step)
    assert back == recipe
