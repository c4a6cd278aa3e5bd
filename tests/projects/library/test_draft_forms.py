"""The one form for every record: what it holds comes back, and what it refuses."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings

from projects.library.domain.places import Place, get, part_at, write_place
from projects.library.domain.recipe import Recipe
from projects.library.domain.structure import ChoicePart, ListPart, RecordPart, members
from projects.library.forms.record import RecordForm
from projects.library.forms.spots import Spot, spot_at
from tests.projects.library.examples import KNOB
from tests.projects.library.posting import posted, sent_by_form
from tests.projects.library.strategies import recipes


def pages_of(recipe: Recipe) -> Iterator[str]:
    """The address of every page on which a record of this recipe is written."""
    yield from ("", "grits", "skills")
    yield from _records_at(recipe, ())


def _records_at(recipe: Recipe, place: Place) -> Iterator[str]:
    value = get(recipe, place)
    if value is None or "profile" in place:
        return
    match part_at(recipe, place):
        case ListPart(RecordPart() | ChoicePart()):
            for at in range(len(value)):
                yield from _records_at(recipe, (*place, at))
        case RecordPart() | ChoicePart():
            if place:
                yield write_place(place)
            of: type = type(value)
            for member in members(of):
                yield from _records_at(recipe, (*place, member.name))


def sent_back(spot: Spot) -> RecordForm:
    untouched = RecordForm(None, spot.group, spot.offers, 1)
    return RecordForm(posted(sent_by_form(untouched)), spot.group, spot.offers, 1)


@settings(max_examples=60)
@given(recipes())
def test_every_page_that_is_sent_back_untouched_leaves_the_recipe_as_it_was(recipe: Recipe):
    for at in pages_of(recipe):
        spot = spot_at(recipe, at, None, adding=False)
        form = sent_back(spot)

        assert form.is_valid(), (at, form.errors)
        assert spot.recipe_with(form.record(spot.new_values(form.cleaned_data))) == recipe, at


def form_at(at: str, typed: dict[str, Any], recipe: Recipe = KNOB) -> RecordForm:
    """The form of this page, sent with these fields changed."""
    spot = spot_at(recipe, at, None, adding=False)
    page = sent_by_form(RecordForm(None, spot.group, spot.offers, 1))
    return RecordForm(posted(page | typed), spot.group, spot.offers, 1)


def test_lines_of_a_passage_become_one_paragraph():
    form = form_at("mountings.0.steps.1", {"text": "  Rough it round. \r\n\r\n Light cuts.\t"})

    assert form.is_valid()
    assert form.cleaned_data["text"] == "Rough it round. Light cuts."


def test_grits_are_read_with_their_letter_or_without():
    form = form_at("grits", {"grits": "P120, p180 ,240,"})

    assert form.is_valid()
    assert form.cleaned_data["grits"] == (120, 180, 240)


@pytest.mark.parametrize(
    ("at", "field", "text", "said"),
    [
        ("grits", "grits", "120; 180", "Write whole numbers with commas between, as 120, 180, 240."),
        ("grits", "grits", "0", "Write whole numbers with commas between, as 120, 180, 240."),
        ("grits", "grits", "80," * 13, "No more than 12 have room here."),
        ("skills", "skills", "beads, !", "Write each skill in plain letters"),
        ("mountings.0.steps.2", "skill", "!", "Write each skill in plain letters"),
        ("", "title", "", "Nothing stands here yet: write it in a few words."),
        ("", "title", "x" * 121, "That is more than 120 characters: say it in fewer."),
        ("", "title", "soft\u00adhyphen", "There are marks in this that can't be seen"),
        ("time", "briefing", "601", "Write a whole number from 0 to 600."),
        ("time", "briefing", "\u0665", "Write a whole number from 0 to 600."),
        ("time", "briefing", "", "Write a whole number from 0 to 600."),
        ("blank", "species", "oakum", "Choose one of those that are offered."),
        ("blank", "side", "0 in", "This can't be 0."),
        ("materials.2", "area", "2 in", "is a length"),
        ("glue_ups.0", "parts", "blank", "At least 2 are needed here."),
        ("glue_ups.0", "after", "glue-dowel", "Choose one of those that are offered."),
    ],
)
def test_each_kind_of_field_says_what_it_would_take(at: str, field: str, text: str, said: str):
    form = form_at(at, {field: text})

    assert not form.is_valid()
    assert list(form.errors) == [field]
    assert said in form.errors[field][0]


def test_what_the_tables_no_longer_have_stays_until_something_else_is_chosen():
    old = replace(KNOB, blank=replace(KNOB.blank, species="elm_of_old"))

    form = form_at("blank", {"side": "2 in"}, old)

    assert form.is_valid()
    assert form.record({}).species == "elm_of_old"


def test_ticks_come_in_the_order_of_the_recipe_when_some_are_changed():
    form = form_at("glue_ups.0", {"parts": ["towel", "dowel"]})

    assert form.is_valid()
    assert form.cleaned_data["parts"] == ("dowel", "towel")


def test_where_nothing_can_be_chosen_yet_it_is_said():
    spot = spot_at(replace(KNOB, glue_ups=(), preparation=()), "preparation.0", None, adding=True)

    form = RecordForm(None, spot.group, spot.offers, 1)

    assert form.fields["after"].help_text == "Nothing is written yet that could be chosen here."
