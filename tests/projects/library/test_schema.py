"""The JSON Schema that is made from the dataclasses."""

from __future__ import annotations

import json
from dataclasses import dataclass, fields
from typing import Annotated, Any

import pytest
from jsonschema import Draft202012Validator

from projects.library.domain import blank, holding, materials, mountings, preparation, recipe
from projects.library.domain.bounds import Key, Text
from projects.library.domain.recipe import Recipe
from projects.library.domain.schema import project_schema
from projects.library.domain.structure import Member, TextPart, members, part_of
from projects.library.domain.words import Tool

EVERY = [
    *(blank.SquareBlank, blank.RoundBlank, blank.SlabBlank, preparation.GlueUp, preparation.Task),
    *(holding.BetweenCentres, holding.Collet, holding.Mandrel, holding.TaperOnly, holding.Tailstock),
    *(holding.ScrollChuck, holding.ScrewChuck, holding.Faceplate, holding.JamChuck),
    *(materials.LengthNeed, materials.BlankNeed, materials.PieceNeed, materials.SheetNeed),
    *(materials.LiquidNeed, materials.AdhesiveNeed, materials.ConsumedNeed),
    *(materials.SpareCount, materials.SparePercent, mountings.Mounting, mountings.Step, mountings.DrillHole),
    *(recipe.End, recipe.ClassTime, recipe.Caution, recipe.Variant),
]


def definitions() -> dict[str, Any]:
    return json.loads(json.dumps(project_schema()["$defs"]))  # type: ignore[no-any-return]


def test_is_one_after_its_own_schema():
    """JSON Schema draft 2020-12, by the library's copy of the dialect."""
    Draft202012Validator.check_schema(project_schema())


@pytest.mark.parametrize("record", EVERY, ids=lambda record: record.__name__)
def test_a_record_has_every_field_of_its_dataclass_and_no_other(record):
    schema = definitions()[record.__name__]

    names = {field.name for field in fields(record)}
    tag = {"kind"} if hasattr(record, "kind") else set()
    assert set(schema["properties"]) == names | tag
    assert set(schema["required"]) == {name for name in names if not has_default(record, name)} | tag
    assert schema["additionalProperties"] is False


def has_default(record: Any, name: str) -> bool:
    return name in {field.name for field in fields(record) if field.name in vars(record)}


def test_the_document_has_the_fields_of_a_recipe_and_its_head():
    schema = project_schema()
    properties = schema["properties"]

    assert isinstance(properties, dict)
    assert list(properties) == ["format", "version", *(field.name for field in fields(Recipe))]


def test_words_are_those_of_the_enumeration():
    assert definitions()["Step"]["properties"]["tool"]["enum"] == [tool.value for tool in Tool]


def test_every_list_and_text_has_an_end():
    """So that no file within its size can be made into something that no page shows."""
    waiting: list[Any] = [project_schema()]
    while waiting:
        schema = waiting.pop()
        if isinstance(schema, dict):
            if schema.get("type") == "array":
                assert "maxItems" in schema
            if schema.get("type") == "string":
                assert "maxLength" in schema or "enum" in schema
            waiting.extend(schema.values())


def test_it_can_be_written_out_as_text():
    text = json.dumps(project_schema(), ensure_ascii=False).encode("utf-8")

    assert json.loads(text) == project_schema()


@dataclass(frozen=True)
class Sample:
    key: Key
    plain: str
    note: Annotated[str, Text(5, least=0)] | None = None


@dataclass(frozen=True)
class Undecided:
    width: int | None = 5


def test_a_field_that_may_be_none_need_not_be_there():
    assert [(member.name, member.required) for member in members(Sample)] == [
        ("key", True),
        ("plain", True),
        ("note", False),
    ]
    assert members(Sample)[2] == Member("note", TextPart(Text(5, least=0)), required=False)


def test_none_for_what_has_another_usual_value_is_refused():
    """Left out, nobody could tell which of the two is meant."""
    with pytest.raises(TypeError):
        members(Undecided)


@pytest.mark.parametrize("hint", [float, bytes, list[int], dict[str, int]])
def test_what_json_would_not_bring_back_is_refused(hint):
    with pytest.raises(TypeError):
        part_of(hint)
