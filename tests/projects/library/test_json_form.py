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

from club.base.quantities.errors import QuantityError
from club.base.quantities.length import Length, parse_length
from projects.geometry.profile import ProfileError
from projects.library.domain.blank import SquareBlank
from projects.library.domain.errors import RecipeError
from projects.library.domain.json_form import from_file, from_json, to_json
from projects.library.domain.json_values import DEEPEST, MOST_BYTES
from projects.library.domain.recipe import Recipe
from projects.library.domain.schema import project_schema
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.strategies import recipes

OFTEN = settings(max_examples=300, deadline=None, suppress_health_check=list(HealthCheck))
SLOW = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
Path = tuple[str | int, ...]


def refusal(data: Any) -> RecipeError:
    with pytest.raises(RecipeError) as refused:
        from_json(data)
    return refused.value


def changed(path: Path, value: object) -> dict[str, Any]:
    """The knob's document with this value put in somewhere."""
    data: dict[str, Any] = to_json(KNOB)
    place: Any = data
    for step in path[:-1]:
        place = place[step]
    place[path[-1]] = value
    return data


def without(*path: str | int) -> dict[str, Any]:
    data: dict[str, Any] = to_json(KNOB)
    place: Any = data
    for step in path[:-1]:
        place = place[step]
    del place[path[-1]]
    return data


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


class TestAFileThatIsNoneOfOurs:
    """One code each, and no place in it."""

    @pytest.mark.parametrize(
        ("data", "code"),
        [
            (b" " * (MOST_BYTES + 1), "huge"),
            (b"\xff\xfe{}", "not_text"),
            (b"", "broken"),
            (b"{", "broken"),
            (b'{"format": "handwheel-project", "format": "handwheel-project"}', "broken"),
            (b'{"version": NaN}', "broken"),
            (b'{"version": ' + b"9" * 10_000 + b"}", "broken"),
            (b"[" * 100_000, "too_deep"),
            (b"[" * (DEEPEST + 1) + b"]" * (DEEPEST + 1), "too_deep"),
            (b"[" * DEEPEST + b"]" * DEEPEST, "foreign"),
            (b"[]", "foreign"),
            (b"7", "foreign"),
            (b"{}", "foreign"),
            (b'{"format": "something-else", "version": 1}', "foreign"),
            (b'{"format": "handwheel-project"}', "foreign"),
            (b'{"format": "handwheel-project", "version": "1"}', "foreign"),
            (b'{"format": "handwheel-project", "version": true}', "foreign"),
            (b'{"format": "handwheel-project", "version": 0}', "foreign"),
            (b'{"format": "handwheel-project", "version": 2}', "newer_version"),
        ],
        ids=lambda value: value if isinstance(value, str) else repr(value[:24]),
    )
    def test_is_refused_as_a_whole(self, data, code):
        with pytest.raises(RecipeError) as refused:
            from_file(data)

        assert (refused.value.code, refused.value.path) == (code, "")

    def test_of_a_later_time_says_which_version_it_is(self):
        error = refusal({**to_json(KNOB), "version": 7, "invented_later": []})

        assert error.values == {"found": 7, "known": 1}

    def test_that_is_deep_is_refused_also_when_it_was_read_elsewhere(self):
        deep: Any = []
        for _level in range(50_000):
            deep = [deep]

        assert refusal({**to_json(KNOB), "title": deep}).code == "too_deep"


@pytest.mark.parametrize(
    ("data", "code", "path", "values"),
    [
        (changed(("colour",), "red"), "unknown_field", "", {"field": "colour"}),
        (
            changed(("mountings", 0, "steps", 2, "col\udc00our" + "x" * 99), 1),
            "unknown_field",
            "mountings[0].steps[2]",
            {"field": "col\N{REPLACEMENT CHARACTER}our" + "x" * 53},
        ),
        (without("title"), "missing_field", "", {"field": "title"}),
        (
            without("mountings", 0, "holding", "size"),
            "missing_field",
            "mountings[0].holding",
            {"field": "size"},
        ),
        (changed(("title",), 5), "wrong_type", "title", {"wanted": "string"}),
        (changed(("title",), None), "wrong_type", "title", {"wanted": "string"}),
        (changed(("mountings",), {}), "wrong_type", "mountings", {"wanted": "array"}),
        (changed(("food_ware",), 1), "wrong_type", "food_ware", {"wanted": "boolean"}),
        (changed(("time", "briefing"), True), "wrong_type", "time.briefing", {"wanted": "integer"}),
        (changed(("time", "briefing"), 1.5), "wrong_type", "time.briefing", {"wanted": "integer"}),
        (changed(("time", "briefing"), 1e999), "wrong_type", "time.briefing", {"wanted": "integer"}),
        (changed(("blank",), "maple"), "wrong_type", "blank", {"wanted": "object"}),
        (changed(("time", "briefing"), 601), "too_large", "time.briefing", {"most": 600}),
        (changed(("time", "briefing"), -1), "too_small", "time.briefing", {"least": 0}),
        (changed(("title",), ""), "short_text", "title", {"least": 1}),
        (changed(("title",), "x" * 121), "long_text", "title", {"most": 120}),
        (changed(("title",), " Knob"), "unreadable_text", "title", {}),
        (changed(("title",), "Knob\n"), "unreadable_text", "title", {}),
        (changed(("title",), "Kn\u202eob"), "unreadable_text", "title", {}),
        (changed(("title",), "Kn\x00ob"), "unreadable_text", "title", {}),
        (changed(("title",), "Kn\ud800ob"), "unreadable_text", "title", {}),
        (changed(("key",), "Drawer Knob"), "unreadable_text", "key", {}),
        (changed(("key",), "knob\n"), "unreadable_text", "key", {}),
        (changed(("mountings",), []), "too_few", "mountings", {"least": 1}),
        (changed(("grits",), [120] * 13), "too_many", "grits", {"most": 12}),
        (
            changed(("blank", "kind"), "hexagon"),
            "unknown_word",
            "blank.kind",
            {"words": ["square", "round", "slab"]},
        ),
        (without("blank", "kind"), "missing_field", "blank", {"field": "kind"}),
        (
            changed(("mountings", 0, "holding", "taper"), "MT7"),
            "unreadable_text",
            "mountings[0].holding.taper",
            {},
        ),
        (
            changed(("mountings", 0, "steps", 1, "key"), "mount"),
            "twice",
            "mountings[0].steps[1].key",
            {"key": "mount"},
        ),
        (changed(("materials", 1, "key"), "blank"), "twice", "materials[1].key", {"key": "blank"}),
        (
            changed(("preparation", 0, "key"), "glue-dowel"),
            "twice",
            "preparation[0].key",
            {"key": "glue-dowel"},
        ),
        (
            changed(("mountings", 0, "tailstock", "away_from"), "fly"),
            "unknown_reference",
            "mountings[0].tailstock.away_from",
            {"key": "fly"},
        ),
        (
            changed(("easier", "leaves_out"), ["bead", "fly"]),
            "unknown_reference",
            "easier.leaves_out[1]",
            {"key": "fly"},
        ),
        (
            changed(("preparation", 1, "after"), ["fly"]),
            "unknown_reference",
            "preparation[1].after[0]",
            {"key": "fly"},
        ),
        (
            changed(("glue_ups", 0, "after"), ["fly"]),
            "unknown_reference",
            "glue_ups[0].after[0]",
            {"key": "fly"},
        ),
        (
            changed(("glue_ups", 0, "parts", 1), "fly"),
            "unknown_reference",
            "glue_ups[0].parts[1]",
            {"key": "fly"},
        ),
        (
            changed(("glue_ups", 0, "adhesive"), "dowel"),
            "unknown_reference",
            "glue_ups[0].adhesive",
            {"key": "dowel"},
        ),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_what_does_not_belong_is_refused_with_its_place(data, code, path, values):
    error = refusal(data)

    assert (error.code, error.path, error.values) == (code, path, values)


def test_a_tool_nobody_knows_is_named_by_mounting_and_step():
    error = refusal(changed(("mountings", 0, "steps", 3, "tool"), "laser"))

    assert (error.code, error.path) == ("unknown_word", "mountings[0].steps[3].tool")
    assert "spindle_gouge" in error.values["words"]  # type: ignore[operator]


@pytest.mark.parametrize(
    ("side", "code", "reason"),
    [
        ("38.1", "unreadable_quantity", "no_unit"),
        ("1 1/2 lb", "unreadable_quantity", "other_kind"),
        ("0 in", "unreadable_quantity", "nought"),
        ("200 m", "unreadable_quantity", "too_much"),
        (0, "too_small", ""),
        (-5, "too_small", ""),
        (10**12, "too_large", ""),
        ("x" * 41, "long_text", ""),
        ("", "short_text", ""),
        ([], "wrong_type", ""),
    ],
)
def test_a_length_that_is_none_is_refused_with_the_reason_of_lengths(side, code, reason):
    error = refusal(changed(("blank", "side"), side))
    found = error.values.get("reason")

    assert (error.code, error.path) == (code, "blank.side")
    assert (found.code if isinstance(found, QuantityError) else "") == reason


@pytest.mark.parametrize(
    ("data", "path", "reason"),
    [
        (changed(("profile", "marks", 2, "at"), "1/4 in"), "profile.marks[2]", "not_in_order"),
        (changed(("profile", "shapes"), [{"kind": "straight"}]), "profile.marks[2]", "shapes_miscounted"),
        (
            changed(("profile", "shapes", 0), {"kind": "cove", "radius": "1 mm"}),
            "profile.marks[1]",
            "radius_too_short",
        ),
        (
            changed(
                ("easier", "profile"),
                {
                    "marks": [{"at": 0, "diameter": 10**7}, {"at": 10**7, "diameter": 10**7}],
                    "shapes": [{"kind": "straight"}],
                    "bore": {
                        "marks": [{"at": 0, "diameter": 10**6}, {"at": 10**8, "diameter": 10**6}],
                        "shapes": [{"kind": "straight"}],
                    },
                },
            ),
            "easier.profile.bore.marks[1]",
            "bore_outside",
        ),
    ],
)
def test_a_drawing_that_no_wood_can_have_is_refused_at_its_mark(data, path, reason):
    error = refusal(data)

    assert (error.code, error.path) == ("bad_profile", path)
    assert isinstance(error.values["reason"], ProfileError)
    assert error.values["reason"].code == reason


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
