"""What people read of a kit: findings, sums, amounts. Values by hand."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest
from django.conf import settings

from club.base.quantities.length import LengthStyle
from club.base.quantities.money import currency_called
from projects.kit.counting import Heads, Kits
from projects.kit.line import Line, working
from projects.kit.offers import Purchase
from projects.kit.sentences.amounts import amount_words, shelf_words
from projects.kit.sentences.findings import FINDINGS, finding_sentence
from projects.kit.sentences.reader import Reader
from projects.kit.sentences.workings import SENTENCES, kits_sum, worked_out
from projects.library.domain.findings import mind, refused
from tests.projects.kit.stores import inch, mm
from tests.projects.library.examples import KNOB, inches

NAMES = {"held-1": "Rod R1", "held-2": "Lot B", "offer-3": "Board 8 ft", "supplier-4": "Reed Mill"}
KIT = Path(settings.BASE_DIR) / "projects" / "kit"


def reader(lengths=LengthStyle.AS_TYPED):
    return Reader(lengths, KNOB, currency_called("EUR"), NAMES)


def said(finding, kind="piece", lengths=LengthStyle.AS_TYPED):
    return plain(finding_sentence(finding, kind, reader(lengths)))


def sum_of(made, kind="piece", need=0):
    line = Line(("key",), kind, need, 0, Purchase())
    return plain(worked_out(made, line, reader()))


def plain(text):
    return text.replace("\N{NO-BREAK SPACE}", " ")


def codes_made_by(functions):
    """The codes that the modules of the kit hand to these functions."""
    trees = [ast.parse(path.read_text(encoding="utf-8")) for path in KIT.glob("*.py")]
    calls = [node for tree in trees for node in ast.walk(tree) if isinstance(node, ast.Call)]
    named = [call for call in calls if isinstance(call.func, ast.Name) and call.func.id in functions]
    return {
        each.value
        for call in named
        for each in ast.walk(call.args[0])
        if isinstance(each, ast.Constant) and isinstance(each.value, str)
    }


def test_every_finding_has_its_words():
    # What comes of a choice stands in a variable there.
    chosen = {"too_wet", "moisture_not_measured"}

    assert codes_made_by({"mind", "refused"}) | chosen == set(FINDINGS)


def test_every_working_has_its_words():
    assert codes_made_by({"working"}) == set(SENTENCES)


@pytest.mark.parametrize(
    ("finding", "kind", "words"),
    [
        (refused("no_supplier", "cork", missing=14), "piece", "14 short: nobody is known to sell it."),
        (refused("no_supplier", "oil", missing=43_210_000), "liquid", "43.3 ml short: nobody is known to"),
        (refused("no_supplier", "glue", missing=3_870_960_000), "adhesive", "3.9 g short"),
        (
            refused("longer_than_stock", "peg", length=inch("35 3/4"), longest=inch("35 1/2")),
            "length_stock",
            "A piece of 35 3/4 in is longer than any stock: the longest there is gives 35 1/2 in",
        ),
        (
            mind("kerf_wider_than_piece", "peg", kerf=inch("1/8"), length=inch("1/16")),
            "length_stock",
            "A saw cut takes 1/8 in, more than the 1/16 in of a piece",
        ),
        (
            mind("not_proved_least", "peg", cost=1_250, bound=1_100),
            "length_stock",
            "this costs 12.50 EUR, and no way costs less than 11.00 EUR",
        ),
        (
            mind("not_measured", "peg", stick="held-1", size=inch("1/2")),
            "length_stock",
            "Rod R1 isn't counted: nobody has measured it across, and a collet of 1/2 in is to hold it.",
        ),
        (
            mind("too_thick_for_collet", "peg", stick="held-1", across=inch("0.501"), size=inch("1/2")),
            "length_stock",
            "it measures 0.501 in across, too thick for a collet of 1/2 in",
        ),
        (
            mind("too_wet", "blank", lot="held-2", count=9, moisture=26, dry=15),
            "blank",
            "Lot B isn't counted: its wood has 26 % moisture, and for a piece finished the same day at most "
            "15 % will do.",
        ),
        (
            mind("moisture_not_measured", "blank", lot="held-2", count=9, moisture=None, dry=15),
            "blank",
            "Lot B isn't counted: nobody has measured its moisture",
        ),
        (refused("larger_than_boards", "blank", missing=6), "blank", "6 short: no board that is sold"),
        (refused("larger_than_sheets", "grit", missing=6), "sheet", "6 short: no sheet is large enough"),
        (refused("no_spread", "oil", finish="walnut_oil"), "liquid", "How far walnut oil goes is not known"),
        (
            mind("under_least_order", "supplier-4", goods=1_200, least=2_500),
            "",
            "Reed Mill takes orders from 25.00 EUR. The goods come to 12.00 EUR, 13.00 EUR too little.",
        ),
    ],
)
def test_a_finding_says_what_it_is_with_its_numbers(finding, kind, words):
    assert words.casefold() in said(finding, kind).casefold()


def test_a_thin_rod_says_how_far_it_would_draw_in():
    """0.016 in under, 20 times that is 0.32 in, 8.13 mm."""
    values = {"across": inch("0.484"), "size": inch("1/2"), "draws_in": inch("0.32")}
    finding = mind("too_thin_for_collet", "peg", stick="held-1", **values)

    assert said(finding).endswith("which would draw in by about 5/16 in more.")
    assert said(finding, lengths=LengthStyle.MILLIMETRES).endswith("draw in by about 8.1 mm more.")


def test_an_estimate_says_about_even_when_it_comes_out_even():
    """Half a millimetre under, 20 times that is 10 mm; of a reading of 12.2 mm nothing is rounded."""
    values = {"across": mm("12.2"), "size": mm("12.7"), "draws_in": mm("10")}
    finding = mind("too_thin_for_collet", "peg", stick="held-1", **values)

    words = said(finding, lengths=LengthStyle.MILLIMETRES)

    assert "measures 12.2 mm across" in words
    assert "about 10 mm more" in words


def test_a_reader_of_inches_sees_a_metric_reading_in_thousandths():
    """12.6 mm are 0.496 in."""
    values = {"across": mm("12.6"), "size": mm("12.7")}

    words = said(mind("too_thick_for_collet", "peg", stick="held-1", **values), "", LengthStyle.SIXTEENTHS)

    assert "0.496 in across" in words


def test_a_length_stands_as_it_was_written():
    written = Reader(LengthStyle.AS_TYPED, KNOB, currency_called("EUR"), typed={inch("36"): inches("36.0")})

    assert plain(written.length(inch("36"))) == "36.0 in"


@pytest.mark.parametrize(
    ("made", "kind", "need", "words"),
    [
        (
            working("per_kit", count=2, students=12, demonstrations=1, spares=2, need=30),
            "piece",
            30,
            "12 students + 1 demonstration + 2 spare = 15 kits, 2 each = 30.",
        ),
        (
            working("per_head", count=3, heads=13, need=39),
            "consumed",
            39,
            "13 heads, students and demonstrations, 3 each = 39. A spare kit has no head.",
        ),
        (
            working("per_head", count=3, heads=1, need=3),
            "consumed",
            3,
            "1 head, students and demonstrations, 3 each = 3. A spare kit has no head.",
        ),
        (
            working("per_sheet", width=inch("9"), length=inch("11"), pieces=8),
            "sheet",
            13,
            "A sheet of 9 in by 11 in gives 8 pieces.",
        ),
        (working("torn_already", pieces=1), "sheet", 13, "1 piece lies there torn already."),
        (
            working("torn_now", sheets=2, over=6),
            "sheet",
            13,
            "2 sheets of the shelf are torn up; pieces left over: 6.",
        ),
        (
            working(
                "per_board",
                board="offer-3",
                blanks=16,
                across=inch("1 1/2"),
                length=inch("2"),
                kerf=inch("1/8"),
                trim=inch("1/4"),
            ),
            "blank",
            15,
            "Board 8 ft gives 16 blanks 1 1/2 in across and 2 in along the axis, with saw cuts of 1/8 in and "
            "1/4 in trimmed off the ends.",
        ),
        (working("from_lot", lot="held-2", count=1), "blank", 15, "1 blank comes from Lot B."),
        (
            working("cut_board", board="offer-3", boards=2, length=inch("36"), blanks=15, rest=inch("3 7/8")),
            "blank",
            30,
            "each of 2 of Board 8 ft, 36 in long: 15 blanks, rest 3 7/8 in.",
        ),
        (
            working(
                "cut",
                stick="held-1",
                length=inch("36"),
                sticks=1,
                kerf=inch("1/16"),
                trim=inch("1/8"),
                pieces=((inch("2 3/4"), 2), (inch("1 1/2"), 3)),
                rest=0,
            ),
            "length_stock",
            5,
            "Rod R1, 36 in long: 2 of 2 3/4 in and 3 of 1 1/2 in, a saw cut of 1/16 in behind each and 1/8 "
            "in trimmed off the ends, no rest.",
        ),
        (
            working(
                "liquid",
                "common practice",
                surface_um2=200 * 10**8,
                end_grain_um2=10 * 10**8,
                end_grain_more=50,
                lost=10,
                coats=1,
                spreads=(100,),
                in_cloth_nl=2_000_000,
                heads=11,
            ),
            "liquid",
            44_000_000,
            "200 cm² of surface, of which 10 cm² of end grain takes 50 % more; 1 coat, 1 ml for every 100 "
            "cm²; 2 ml stays in the cloth at each coat; 10 % is lost besides; for 11 heads 44 ml, rounded "
            "up. Source: common practice.",
        ),
        (
            working(
                "adhesive",
                "common practice",
                area_um2=1_290_320_000,
                grams_per_m2=200,
                loss_percent=10,
                kits=15,
            ),
            "adhesive",
            4_258_056_000,
            "about 12.903 cm² at 200 g a m², 10 % lost besides, for 15 kits 4.3 g, rounded up. "
            "Source: common practice.",
        ),
    ],
    ids=lambda value: getattr(value, "code", ""),
)
def test_a_sum_shows_its_values(made, kind, need, words):
    assert sum_of(made, kind, need) == words


def test_a_sum_of_kits_speaks_of_one_and_of_many():
    assert kits_sum(Kits(Heads(1, 2), 0)) == "1 student + 2 demonstrations + 0 spare = 3 kits"
    assert kits_sum(Kits(Heads(1, 0), 0)) == "1 student + 0 demonstrations + 0 spare = 1 kit"


@pytest.mark.parametrize(
    ("kind", "amount", "words"),
    [
        ("piece", 1_200, "1 200"),
        ("liquid", 44_000_000, "44 ml"),
        ("liquid", 44_000_001, "44.1 ml"),
        ("liquid", 1_500_000_000, "1 500 ml"),
        ("adhesive", 1, "0.1 g"),
        ("adhesive", 0, "0 g"),
    ],
)
def test_an_amount_is_never_shown_too_small(kind, amount, words):
    assert plain(amount_words(kind, amount)) == words


def test_what_the_shelf_gives_and_what_is_bought_add_up_as_shown():
    """4.05 ml needed are 4.1, 2.02 to buy are 2.1, so the shelf gives 2."""
    line = Line(("oil",), "liquid", 4_050_000, 2_030_000, Purchase())

    assert plain(shelf_words(line)) == "2 ml"
    assert plain(amount_words("liquid", line.to_buy)) == "2.1 ml"
