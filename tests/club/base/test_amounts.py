"""Areas, volumes and weights."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.area import Area, parse_area, show_area
from club.base.quantities.errors import QuantityError
from club.base.quantities.mass import Mass, parse_mass, show_mass
from club.base.quantities.units import (
    BOARD_FOOT,
    CUBIC_CENTIMETRE,
    FLUID_OUNCE,
    GALLON,
    KILOGRAM,
    LITRE,
    OUNCE,
    POUND,
    SQUARE_FOOT,
    SQUARE_INCH,
    SQUARE_METRE,
)
from club.base.quantities.volume import Volume, parse_volume, show_volume
from club.base.sentences import sentence
from tests.reference.tables import rows

AREA_CURE = "Write the area as 12\u00a0in², 75\u00a0cm² or 0.5\u00a0m²."
VOLUME_CURE = "Write the volume as 250\u00a0ml, 0.25\u00a0l or 8\u00a0fl\u00a0oz."
MASS_CURE = "Write the weight as 250\u00a0g, 1.5\u00a0kg or 8\u00a0oz."
PARSERS = {"area": parse_area, "volume": parse_volume, "mass": parse_mass}
# As printed. Stock under 1 in counts as 1 in, which is a rule of buying, not of the unit.
BOARDS = [row for row in rows("09c_board_foot_examples.csv") if float(row["thickness_in"]) >= 1]


@pytest.mark.parametrize(
    "text", ["12 in²", "12in2", "12 sq in", "1/12 ft²", "12 in^2", "77.4192 cm²", "7741,92 mm2"]
)
def test_every_way_to_write_twelve_square_inches_is_one_area(text):
    # 1 in² = 645.16 mm² exactly, the square of 25.4 mm (NIST SP 811).
    assert parse_area(text) == Area(12 * 645_160_000)


@pytest.mark.parametrize(
    "text", ["250 ml", "0.25 l", "25cl", "1/4 litre", "250 cm³", "250 cc", "250 000 mm3", "0,25 L"]
)
def test_every_way_to_write_a_quarter_litre_is_one_volume(text):
    assert parse_volume(text) == Volume(250_000_000)


@pytest.mark.parametrize("text", ["1 1/2 lb", "24 oz", "1½ lbs", "680.388555 g", "0.680388555 kg"])
def test_every_way_to_write_a_pound_and_a_half_is_one_weight(text):
    # 1 lb = 0.45359237 kg exactly (NIST SP 811).
    assert parse_mass(text) == Mass(680_388_555_000)


# Board feet from lumber texts: tests/reference/09c_board_foot_examples.csv.
@pytest.mark.parametrize("row", BOARDS, ids=lambda row: row["source"][:20])
def test_board_feet_are_those_of_the_lumber_texts(row):
    inches = Fraction(row["thickness_in"]) * Fraction(row["width_in"]) * Fraction(row["length_ft"]) * 12
    volume = parse_volume(f"{inches} in³")

    assert volume == parse_volume(f"{row['board_feet_exact']} bd ft")
    # 144 in³ are a whole number of nanolitres, so nothing was rounded.
    assert Fraction(volume.nl, 2_359_737_216) == Fraction(row["board_feet_exact"])
    assert abs(Fraction(volume.nl, 10**9) - Fraction(row["litres_of_wood_as_nominal"])) < Fraction(1, 10**4)


@pytest.mark.parametrize(
    ("shown", "words"),
    [
        (show_area(parse_area("12 sq in")), "12\u00a0sq\u00a0in"),
        (show_area(Area(7_741_920_000)), "about 77.419\u00a0cm²"),
        (show_area(Area(12 * 645_160_000), SQUARE_INCH), "12\u00a0in²"),
        (show_area(parse_area("1 m²"), SQUARE_FOOT), "about 10.764\u00a0ft²"),
        (show_volume(Volume(250_000_000)), "250\u00a0ml"),
        (show_volume(parse_volume("1 gal"), LITRE), "about 3.785\u00a0l"),
        (show_volume(parse_volume("128 fl oz"), GALLON), "1\u00a0gal"),
        (show_volume(parse_volume("1.5 l"), CUBIC_CENTIMETRE), "1\u00a0500\u00a0cm³"),
        (show_volume(parse_volume("18 in³"), BOARD_FOOT), "0.125\u00a0bd\u00a0ft"),
        (show_mass(Mass(250_000_000_000)), "250\u00a0g"),
        (show_mass(parse_mass("1 lb"), KILOGRAM), "about 0.454\u00a0kg"),
        (show_mass(parse_mass("1.5 lb"), OUNCE), "24\u00a0oz"),
    ],
)
def test_amounts_are_shown_in_the_unit_asked_for_and_own_up_to_rounding(shown, words):
    assert shown == words


@pytest.mark.parametrize(
    ("kind", "text", "words"),
    [
        (
            "area",
            "12 in",
            f"12\u00a0in is a length. {AREA_CURE}",
        ),
        ("area", "12", f"The unit is missing. {AREA_CURE}"),
        (
            "area",
            "1001 m²",
            f"This can't be more than 1\u00a0000\u00a0m². {AREA_CURE}",
        ),
        ("volume", "1,500 ml", "“1,500” can be read in two ways. Write 1500\u00a0ml or 1.500\u00a0ml."),
        ("volume", "1,500", "“1,500” can be read in two ways. Write 1500\u00a0ml or 1.500\u00a0ml."),
        (
            "volume",
            "-1 l",
            f"This can't be below 0. {VOLUME_CURE}",
        ),
        (
            "volume",
            "two cups",
            f"There is no number in digits here. {VOLUME_CURE}",
        ),
        (
            "mass",
            "1 stone",
            f"The unit “stone” isn't known here. {MASS_CURE}",
        ),
        ("mass", "0 g", f"This can't be 0. {MASS_CURE}"),
        ("mass", "", f"Nothing stands here yet. {MASS_CURE}"),
    ],
)
def test_what_is_no_amount_gets_one_sentence_with_its_cure(kind, text, words):
    with pytest.raises(QuantityError) as refused:
        PARSERS[kind](text)

    assert sentence(refused.value) == words


@given(st.integers(1, 10**6))
def test_what_was_shown_exactly_reads_back(thousandths):
    assert parse_area(show_area(Area(thousandths * 10**9), SQUARE_METRE)) == Area(thousandths * 10**9)
    assert parse_volume(show_volume(Volume(thousandths * 10**6), LITRE)) == Volume(thousandths * 10**6)
    assert parse_mass(show_mass(Mass(thousandths * 10**9), KILOGRAM)) == Mass(thousandths * 10**9)


@given(st.integers(1, 10**12), st.sampled_from([FLUID_OUNCE, GALLON, BOARD_FOOT, LITRE]))
def test_a_shown_volume_is_never_further_off_than_half_a_thousandth(nl, unit):
    shown = show_volume(Volume(nl), unit)
    one = parse_volume(f"1000 {unit.sign}").nl

    text = shown.removeprefix("about ").removesuffix(f"\u00a0{unit.shown}").replace("\u00a0", "")

    assert abs(Fraction(text) * one / 1000 - nl) <= Fraction(one, 2_000_000) + 1


@given(st.integers(1, 9999), st.sampled_from(["in²", "cm²"]))
def test_amounts_are_whole_numbers_never_floats(count, sign):
    assert type(parse_area(f"{count} {sign}").um2) is int
    assert type(parse_volume(f"{count}/7 fl oz").nl) is int
    assert type(parse_mass(f"{count}/7 oz").ng) is int


def test_the_text_as_typed_is_kept_and_makes_no_difference():
    assert parse_mass(" 8 oz ").typed == "8 oz"
    assert parse_mass("16 oz") == parse_mass("1 lb")
    assert show_mass(parse_mass("1 lb"), POUND) == "1\u00a0lb"
