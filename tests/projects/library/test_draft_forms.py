"""The one form for every record: what it holds comes back, and what it refuses."""

from __future__ import annotations

from collections.abc import Iterator

from hypothesis import given, settings

from projects.library.domain.places import Place, get, part_at, write_place
from projects.library.domain.recipe import Recipe
from projects.library.domain.structure import ChoicePart, ListPart, RecordPart, members
from projects.library.forms.record import RecordForm
from projects.library.forms.spots import Spot, spot_at
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
