from __future__ import annotations

from collections.abc import Iterator
from dataclasses import is_dataclass
from enum import Enum

import pytest

from projects.library.domain import words as trade
from projects.library.domain.finishes import FinishProperty
from projects.library.domain.holding import Collet, JamChuck, JamIn, ScrollChuck
from projects.library.domain.recipe import Recipe
from projects.library.domain.sourced import Confidence
from projects.library.domain.species import WoodGroup
from projects.library.domain.structure import (
    ChoicePart,
    ListPart,
    Part,
    RecordPart,
    WordPart,
    kind_of,
    members,
)
from projects.library.sentences.leads import NUMBERED, field_name, place_lead
from projects.library.sentences.words import holding_words, kind_label, word_for


def inside(part: Part) -> Iterator[type]:
    """The dataclasses and enumerations that may stand in a place."""
    match part:
        case ListPart(entry):
            yield from inside(entry)
        case RecordPart(record):
            yield record
        case ChoicePart(records):
            yield from records
        case WordPart(kind):
            yield kind


def inside_of(kind: type) -> Iterator[type]:
    """What may stand in the fields of a dataclass; an enumeration has none."""
    if is_dataclass(kind):
        for member in members(kind):
            yield from inside(member.part)


def met_in_a_recipe() -> list[type]:
    found: list[type] = [Recipe]
    for kind in found:
        found += [each for each in dict.fromkeys(inside_of(kind)) if each not in found]
    return found


MET = sorted(met_in_a_recipe(), key=lambda kind: kind.__name__)
ENUMS = [kind for kind in MET if issubclass(kind, Enum)]
RECORDS = [kind for kind in MET if not issubclass(kind, Enum)]


@pytest.mark.parametrize("kind", [*ENUMS, FinishProperty, Confidence, WoodGroup], ids=lambda it: it.__name__)
def test_every_value_has_a_word_of_its_own(kind):
    said = [word_for(value) for value in kind]

    assert len(set(said)) == len(kind)
    assert [word for word in said if not word or "_" in word] == []


def test_words_of_two_kinds_that_are_spelled_alike_are_told_apart():
    assert word_for(trade.Tool.DRILL) == "drill"
    assert word_for(trade.Moment.DRILLING) == word_for(trade.Operation.DRILLING) == "drilling"
    assert word_for(JamIn.COLLET) == "collet with draw bar"


def test_a_value_that_has_no_word_is_found():
    class Colour(Enum):
        RED = "red"

    with pytest.raises(KeyError):
        word_for(Colour.RED)


@pytest.mark.parametrize("record", RECORDS, ids=lambda it: it.__name__)
def test_every_field_has_a_name(record):
    for member in members(record):
        assert field_name(member.name)
        assert "_" not in field_name(member.name)


@pytest.mark.parametrize("record", RECORDS, ids=lambda it: it.__name__)
def test_every_list_has_a_word_for_one_of_its_entries(record):
    lists = [member.name for member in members(record) if isinstance(member.part, ListPart)]

    assert [name for name in lists if name not in NUMBERED] == []


@pytest.mark.parametrize("record", [kind for kind in RECORDS if kind_of(kind)], ids=lambda it: it.__name__)
def test_every_kind_of_thing_has_a_noun(record):
    assert kind_label(record)


def test_ways_of_holding_are_named_in_the_order_of_the_house():
    found = holding_words(["jam_chuck", "collet_drawbar"])

    assert list(found.items()) == [
        ("collet_drawbar", kind_label(Collet)),
        ("jam_chuck", kind_label(JamChuck)),
    ]
    assert kind_label(ScrollChuck) == "scroll chuck"


@pytest.mark.parametrize(
    ("path", "words"),
    [
        ("mountings[1].steps[3].tool", "Mounting 2, step 4, tool"),
        ("time.hands_on", "Time, hands-on minutes"),
        (
            "editions[2].recipe.mountings[0].holding.diameter",
            "Edition 3 of the file, mounting 1, holding, diameter",
        ),
        ("easier.profile.bore.marks[0].at", "Easier variant, drawing, bore, mark 1, place along the axis"),
        ("", ""),
    ],
)
def test_a_path_reads_as_a_place_counted_from_one(path, words):
    assert place_lead(path) == words
