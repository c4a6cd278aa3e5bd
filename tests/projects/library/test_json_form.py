"""A recipe goes out as JSON and comes back the same; anything else is refused with the place."""

from __future__ import annotations

import copy
import json
from collections.abc import Callable
from contextlib import suppress
from dataclasses import fields, is_dataclass, replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from club.base.quantities.length import Length, parse_length
from projects.library.domain.blank import SquareBlank
from projects.library.domain.errors import RecipeError
from projects.library.domain.json_form import from_file, from_json, from_own, to_json
from projects.library.domain.recipe import Recipe
from projects.library.domain.schema import project_schema
from tests.projects.library.documents import changed, without
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.strategies import recipes

OFTEN = settings(max_examples=300, deadline=None, suppress_health_check=list(HealthCheck))
SLOW = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))


def with_side(side: Length) -> Recipe:
    return replace(KNOB, blank=SquareBlank("maple_sugar", side, parse_length("2 in")))


def typed_texts(value: object) -> list[tuple[int, str]]:
    """Every length in a recipe with the text it was typed as, which comparing two lengths passes over."""
    if isinstance(value, Length):
        return [(value.nm, value.typed)]
    if isinstance(value, tuple):
        return [found for entry in value for found in typed_texts(entry)]
    if is_dataclass(value):
        return [found for field in fields(value) for found in typed_texts(getattr(value, field.name))]
    return []


class TestTheRoundTrip:
    @SLOW
    @given(recipes())
    def test_through_json_text_gives_the_same_recipe(self, recipe):
        data = to_json(recipe)

        back = from_json(json.loads(json.dumps(data)))

        assert back == recipe
        assert to_json(back) == data

    @SLOW
    @given(recipes())
    def test_gives_what_the_schema_lets_in(self, recipe):
        assert list(Draft202012Validator(project_schema()).iter_errors(to_json(recipe))) == []

    @pytest.mark.parametrize("recipe", [KNOB, BOWL], ids=lambda recipe: recipe.key)
    def test_keeps_what_was_typed(self, recipe):
        back = from_json(to_json(recipe))

        assert typed_texts(back) == typed_texts(recipe)
        assert (38_100_000, "1 1/2 in") in typed_texts(from_json(to_json(KNOB)))

    def test_keeps_a_length_that_was_worked_out_in_whole_nanometres(self):
        recipe = with_side(Length(38_100_001))

        back = from_json(to_json(recipe))

        assert typed_texts(back.blank) == [(38_100_001, ""), (50_800_000, "2 in")]

    def test_drops_text_that_no_longer_says_its_length(self):
        recipe = with_side(Length(5, "1 in"))

        assert to_json(recipe)["blank"]["side"] == 5  # type: ignore[index,call-overload]

    @OFTEN
    @given(recipes())
    def test_of_an_own_document_needs_no_checking(self, recipe):
        stored = json.loads(json.dumps(to_json(recipe)))

        assert from_own(stored) == from_json(stored)

    def test_reads_the_bytes_of_a_file(self):
        text = json.dumps(to_json(BOWL), ensure_ascii=False)

        assert from_file(text.encode()) == from_file(b"\xef\xbb\xbf" + text.encode()) == BOWL

    def test_takes_a_number_with_a_point_and_nothing_behind_it_for_whole(self):
        """Which is a whole number to JSON Schema as well."""
        recipe = from_json(changed(("time", "briefing"), 10.0))

        assert recipe.time.briefing == 10
        assert type(recipe.time.briefing) is int

    def test_may_leave_out_what_has_a_usual_value(self):
        assert from_json(without("food_ware")).food_ware is False
        assert from_json(without("mountings", 0, "steps", 0, "watch")) == KNOB


class TestMutations:
    """Whatever is done to a document, it is a recipe still or refused as none."""

    @OFTEN
    @given(st.data())
    def test_never_raise_anything_else(self, data):
        document: Any = copy.deepcopy(to_json(data.draw(st.sampled_from([KNOB, BOWL]))))
        for _change in range(data.draw(st.integers(1, 3))):
            mutate(document, data.draw)

        with suppress(RecipeError):
            assert isinstance(from_json(document), Recipe)

    @OFTEN
    @given(st.data())
    def test_of_the_bytes_never_raise_anything_else(self, data):
        document = bytearray(json.dumps(to_json(KNOB)).encode())
        for _change in range(data.draw(st.integers(1, 4))):
            place = data.draw(st.integers(0, len(document) - 1))
            document[place : place + data.draw(st.integers(0, 3))] = data.draw(st.binary(max_size=3))

        with suppress(RecipeError):
            assert isinstance(from_file(bytes(document)), Recipe)

    @given(st.binary(max_size=200))
    def test_are_not_even_needed(self, data):
        with pytest.raises(RecipeError):
            from_file(data)


JSON_VALUES = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=50)
    | st.sampled_from(["1 in", "rough", "kind", "straight", "MT2", "unknown"]),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=6,
)


def mutate(document: Any, draw: Callable[[st.SearchStrategy[Any]], Any]) -> None:
    """Put something in, take something out or swap two things, somewhere."""
    place = draw(st.sampled_from(containers(document)))
    keys = list(place) if isinstance(place, dict) else list(range(len(place)))
    if not keys:
        return
    key, other = draw(st.sampled_from(keys)), draw(st.sampled_from(keys))
    action = draw(st.sampled_from(["put", "take", "swap", "add"]))
    if action == "put":
        place[key] = draw(JSON_VALUES)
    elif action == "take":
        del place[key]
    elif action == "swap":
        place[key], place[other] = place[other], place[key]
    elif isinstance(place, dict):
        place[draw(st.text(max_size=8))] = draw(JSON_VALUES)
    else:
        place.append(draw(JSON_VALUES))


def containers(value: Any) -> list[Any]:
    if not isinstance(value, (dict, list)):
        return []
    inner = value.values() if isinstance(value, dict) else value
    return [value, *(found for entry in inner for found in containers(entry))]
