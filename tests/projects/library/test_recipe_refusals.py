"""What is no recipe is refused with one code and its place."""

from __future__ import annotations

from typing import Any

import pytest

from club.base.quantities.errors import QuantityError
from projects.geometry.profile import ProfileError
from projects.library.domain.errors import RecipeError
from projects.library.domain.json_form import from_file, from_json, to_json
from projects.library.domain.json_values import DEEPEST, MOST_BYTES
from tests.projects.library.documents import changed, without
from tests.projects.library.examples import KNOB


def refusal(data: Any) -> RecipeError:
    with pytest.raises(RecipeError) as refused:
        from_json(data)
    return refused.value


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
