"""Woods after the Wood Handbook (FPL-GTR-282), and what they are reported to do to people."""

from __future__ import annotations

import dataclasses
from fractions import Fraction

import pytest

from projects.library.domain.sourced import Confidence
from projects.library.domain.species import WoodGroup
from projects.library.domain.wood_density import density, gravity_from_green, shrinkage
from projects.library.domain.wood_health import Listing
from projects.library.tables import woods
from tests.reference.tables import half_of_last_digit, rows

SPECIES = rows("05a_wood_species.csv")
NOTES = rows("05b_wood_health.csv")
FIGURES = {
    "gravity_dry": "specific_gravity_12pct",
    "gravity_green": "specific_gravity_green",
    "hardness_lbf": "side_hardness_12pct_lbf",
    "shrinkage_radial": "shrinkage_radial_pct",
    "shrinkage_tangential": "shrinkage_tangential_pct",
    "shrinkage_volumetric": "shrinkage_volumetric_pct",
}
WITH_NOTE = [
    (key, row["wood"]) for row in NOTES for key in (row["key"], *row["species_keys"].split(";")) if key
]


@pytest.mark.parametrize("row", SPECIES, ids=lambda row: row["key"])
def test_a_wood_has_what_the_handbook_prints_and_nothing_where_it_prints_nothing(row):
    wood = woods().species[row["key"]]

    for field, column in FIGURES.items():
        figure = getattr(wood, field)
        assert (figure.value if figure else None) == (Fraction(row[column]) if row[column] else None), field
    assert (wood.label, wood.scientific_name) == (row["handbook_label"], row["scientific_name"])
    assert wood.group.value == row["group"]


@pytest.mark.parametrize("row", SPECIES, ids=lambda row: row["key"])
def test_every_figure_says_where_it_is_from_and_how_far_it_may_be_trusted(row):
    wood = woods().species[row["key"]]

    for field in FIGURES:
        figure = getattr(wood, field)
        own = "shrinkage_" if field.startswith("shrinkage") else ""
        if figure:
            assert (figure.source, figure.confidence.value) == (row[f"{own}source"], row[f"{own}confidence"])
            assert "Wood Handbook" in figure.source


@pytest.mark.parametrize("row", SPECIES, ids=lambda row: row["key"])
def test_dry_wood_is_as_heavy_as_its_gravity_says(row):
    """1120 times the gravity at 12 % moisture, Wood Handbook equation 4-14."""
    figure = woods().species[row["key"]].density_dry

    assert figure is not None
    # The table rounds an estimated gravity to three places before it multiplies.
    assert abs(figure.value - Fraction(row["density_12pct_kg_per_m3_computed"])) <= Fraction(11, 10)
    assert (figure.confidence is Confidence.ESTIMATED) == (row["specific_gravity_12pct"] == "")


def test_sugar_maple_weighs_706_kg_in_a_cubic_metre():
    assert density(Fraction("0.63"), 12) == Fraction("705.6")


@pytest.mark.parametrize(
    "row",
    [row for row in SPECIES if row["specific_gravity_12pct_estimated_from_green"]],
    ids=lambda row: row["key"],
)
def test_dry_gravity_is_estimated_from_the_green_one(row):
    """Wood Handbook chapter 4, from memory: within the digits of the table."""
    printed = row["specific_gravity_12pct_estimated_from_green"]

    estimate = gravity_from_green(Fraction(row["specific_gravity_green"]), 12)

    assert abs(estimate - Fraction(printed)) <= half_of_last_digit(printed)


def test_wood_shrinks_in_step_with_the_moisture_it_loses():
    """Wood Handbook equation 4-9: nothing at 30 %, all of it at 0, three fifths at 12 %."""
    assert [shrinkage(Fraction("8.0"), moisture) for moisture in (30, 12, 0)] == [0, Fraction("4.8"), 8]


def test_every_wood_of_the_handbook_is_there_and_no_other():
    assert list(woods().species) == [row["key"] for row in SPECIES]


@pytest.mark.parametrize(("key", "wood"), WITH_NOTE)
def test_a_wood_with_a_note_raises_it(key, wood):
    health = woods().health(key)

    assert health.listing is Listing.LISTED
    assert wood in {note.wood for note in health.notes}


@pytest.mark.parametrize("key", ["cherry_black", "bubinga", "no_such_wood", ""])
def test_a_wood_that_is_not_listed_is_said_not_to_be_listed_and_keeps_what_goes_for_all(key):
    health = woods().health(key)

    assert health.listing is Listing.NOT_LISTED
    assert {note.wood for note in health.general} == {"All hardwoods", "All woods", "Wood dust"}


def test_what_goes_for_hardwoods_is_not_said_of_a_softwood():
    general = woods().health("pine_ponderosa").general

    assert {note.wood for note in general} == {"All woods", "Wood dust"}


def test_nothing_anywhere_says_that_a_wood_is_safe():
    """The one place for the word says that a wood is not safe for being absent from a list."""
    notes = [value for note in woods().notes for value in dataclasses.astuple(note)]
    figures = [value for wood in woods().species.values() for value in dataclasses.astuple(wood)]
    texts = [str(value) for value in notes + figures]

    assert [text for text in texts if "safe" in text.replace("not thereby safe", "")] == []
    assert [member.value for member in Listing] == ["listed", "not_listed"]


def test_every_note_names_its_source():
    assert all(note.source and note.confidence in Confidence for note in woods().notes)
    assert len(woods().notes) == len(NOTES)


def test_a_potency_nobody_knows_is_none():
    (note,) = woods().health("hemlock_eastern").notes

    assert note.potency is None


def test_only_oleander_is_not_to_be_turned():
    assert {note.key for note in woods().notes if note.forbids} == {"oleander"}


@pytest.mark.parametrize(
    ("key", "known", "group"),
    [
        ("maple_sugar", True, WoodGroup.HARDWOOD),
        ("pine_ponderosa", True, WoodGroup.SOFTWOOD),
        ("yew", True, WoodGroup.SOFTWOOD),
        ("no_such_wood", False, WoodGroup.UNKNOWN),
        ("", False, WoodGroup.UNKNOWN),
    ],
)
def test_a_wood_has_the_group_of_either_table(key, known, group):
    assert woods().knows(key) == known
    assert woods().group(key) is group
