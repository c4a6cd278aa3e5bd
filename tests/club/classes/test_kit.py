"""The kit of a class through the rows of the stores; totals worked out by hand. Money in euros and cents."""

from __future__ import annotations

from dataclasses import replace

import pytest

from club.base.quantities.length import LengthStyle, parse_length
from club.classes.kit import kit_summary
from projects.library.domain.materials import ConsumedNeed, LengthNeed, SpareCount
from tests.club.classes.kits import CORK, corks, kit, knobs, plain, row, said
from tests.club.classes.rows import kept_edition, planned
from tests.club.classes.shelves import DOWEL, SQUARE, article, dowels, evening_a, inches, squares, sticks
from tests.factories import HeldFactory, OfferFactory, SupplierFactory
from tests.projects.library.examples import KNOB

pytestmark = pytest.mark.django_db


class TestEveningA:
    """12 students, 1 demonstration, 10 % of 13 rounded up = 2 spare: 15 kits."""

    def test_fifteen_kits_are_counted_out_loud(self):
        evening_a()

        page = kit(knobs())

        assert page.count == 15
        assert page.kits == "12 students + 1 demonstration + 2 spare = 15 kits"
        assert (
            "12 students + 1 demonstration + 2 spare = 15 kits, 1 each = 15." in row(page, "dowel").workings
        )

    def test_the_thin_rod_is_refused_and_the_good_one_gives_all_fifteen(self):
        """R1 is 0.016 in under size, 20 times that is 0.32, about 5/16. R2: 35 7/8 - 15 x 2 5/16 = 1 3/16."""
        evening_a()

        dowel = row(kit(knobs()), "dowel")

        assert (dowel.needed, dowel.from_shelf, dowel.to_buy, dowel.cost) == ("15", "15", "none", "")
        assert said(dowel.findings) == (
            "Maple dowel 1/2 in, marked R1 isn't counted: it measures 0.484 in across, too thin for a collet "
            "of 1/2 in, which would draw in by about 5/16 in more."
        )
        assert said(dowel.cuts) == (
            "Maple dowel 1/2 in, marked R2, 36 in long: 15 of 2 1/4 in, a saw cut of 1/16 in behind each and "
            "1/8 in trimmed off the ends, rest 1 3/16 in."
        )

    def test_fifteen_blanks_come_from_one_square(self):
        """35 3/4 - 15 x 2 1/8 = 3 7/8 in."""
        evening_a()

        blank = row(kit(knobs()), "blank")

        assert (blank.needed, blank.from_shelf, blank.to_buy) == ("15", "15", "none")
        assert said(blank.cuts) == "Maple, 1 1/2 in square, 36 in long: 15 blanks, rest 3 7/8 in."

    def test_boards_that_are_bought_say_what_is_cut_from_each(self):
        """36 in give 16 of 2 in, kerf 1/8, 1/4 trimmed; 20 are 16 and 4. Rest 35 3/4 - 16 x 2 1/8 = 1 3/4 in,
        and 35 3/4 - 4 x 2 1/8 = 27 1/4 in."""
        maple = squares()
        sizes = {"thickness": inches("1 1/2"), "width": inches("1 1/2"), "length": inches("36")}
        OfferFactory(article=maple, price=840, label="36 in", **sizes)

        blank = row(kit(knobs(17)), "blank")

        assert (blank.needed, blank.to_buy, blank.packs[0].count) == ("20", "20", 2)
        assert said(blank.cuts) == (
            "Maple, 1 1/2 in square, bought, 36 in long: 16 blanks, rest 1 3/4 in. "
            "Maple, 1 1/2 in square, bought, 36 in long: 4 blanks, rest 27 1/4 in."
        )

    def test_blanks_that_are_cut_already_are_nothing_to_cut(self):
        maple = squares()
        HeldFactory(article=maple, label="M4", amount=20, moisture=9, cut_for=SQUARE)

        blank = row(kit(knobs()), "blank")

        assert blank.cuts == ()
        assert "15 blanks come from" in said(blank.workings)

    def test_a_metric_reader_is_shown_millimetres(self):
        """2 1/4 in are 57.15 mm, 36 in 914.4, 1/16 in 1.5875, 1 3/16 in 30.1625, 0.484 in 12.2936."""
        evening_a()

        dowel = row(kit(knobs(), LengthStyle.MILLIMETRES), "dowel")

        assert "914.4 mm long: 15 of 57.15 mm" in said(dowel.cuts)
        assert "rest about 30.2 mm" in said(dowel.cuts)
        assert "12.29 mm across" in said(dowel.findings)

    def test_towels_are_for_heads_alone_and_bought_by_the_roll(self):
        """3 for each of 13 heads are 39: one roll of 50 at 3.20; delivery 4.50; 7.70 over 12 is 0.642."""
        evening_a()

        page = kit(knobs())

        towel = row(page, "towel")
        assert (towel.needed, towel.to_buy, plain(towel.cost)) == ("39", "39", "3.20 EUR")
        assert [each.words for each in towel.packs] == ["1 \N{MULTIPLICATION SIGN} roll of 50"]
        sums = [plain(each) for each in (page.goods, page.delivery, page.cost, page.a_head)]
        assert sums == ["3.20 EUR", "4.50 EUR", "7.70 EUR", "0.65 EUR"]

    def test_glue_is_shown_in_grams(self):
        """2 in² = 1 290.32 mm² at 200 g/m² for 15 kits are 3.87 g; nobody sells it yet."""
        evening_a()

        glue = row(kit(knobs()), "glue")

        assert plain(glue.needed) == "3.9 g"
        assert said(glue.findings) == "3.9 g short: nobody is known to sell it."

    def test_what_is_missing_is_named_and_the_kit_isnt_complete(self):
        evening_a()

        page = kit(knobs())

        assert not page.is_complete
        assert [each.key for each in page.missing] == ["glue", "oil", "grit-120", "grit-180", "grit-240"]

    def test_in_short_it_says_what_is_bought_and_what_is_missing(self):
        evening_a()

        short = kit_summary(knobs(), LengthStyle.AS_TYPED)

        assert [(each.specification, plain(each.cost)) for each in short.buying] == [
            ("Paper towel", "3.20 EUR")
        ]
        assert (plain(short.cost), plain(short.a_head)) == ("7.70 EUR", "0.65 EUR")
        assert "Wood glue" in short.missing


class TestStopper:
    """Pieces of 2 3/4 in of 3/8 in dowel for a bottle stopper, corks drilled 3/8 in: common practice."""

    def test_ten_stoppers_and_what_they_cost(self):
        """9 students and 1 demonstration: 10 pieces; 36 in give (36 + 1/16) / 2 13/16 = 12.

        One dowel at 1.20; 10 corks from bags of 4 at 1.10: three, 3.30. 4.50 over 9 students is 0.50.
        """
        peg = LengthNeed("peg", "Dowel 3/8 in", inches("3/8"), inches("2 3/4"))
        recipe = replace(KNOB, key="stopper", materials=(peg, CORK), spares=SpareCount(0))
        shop = SupplierFactory()
        sticks(article("Dowel 3/8 in", "length_stock", kerf=inches("1/16")), 120, shop)
        OfferFactory(article=article("Cork", "piece"), supplier=shop, label="bag of 4", holds=4, price=110)

        page = kit(planned(edition=kept_edition(recipe), kits_for=9))

        assert [each.needed for each in page.rows] == ["10", "10"]
        assert plain(page.rows[0].packs[0].words) == "1 \N{MULTIPLICATION SIGN} 36 in"
        assert (plain(page.cost), plain(page.a_head)) == ("4.50 EUR", "0.50 EUR")


class TestNobodyAndOne:
    def test_for_nobody_only_the_demonstration_is_made(self):
        """1 head, 10 % of 1 rounded up: 2 kits; nobody to share the cost."""
        evening_a()

        page = kit(knobs(0))

        assert (page.count, row(page, "dowel").needed, row(page, "towel").needed) == (2, "2", "3")
        assert page.a_head == ""

    def test_for_nobody_and_no_demonstration_nothing_is_needed(self):
        page = kit(knobs(0, demonstrations=0))

        assert {plain(each.needed) for each in page.rows} == {"0", "0 ml", "0 g"}
        assert page.is_complete
        assert page.orders == ()

    def test_for_one_student(self):
        """1 + 1, 10 % of 2 rounded up: 3 kits and 6 towels."""
        evening_a()

        page = kit(knobs(1))

        assert (row(page, "dowel").needed, row(page, "towel").needed) == ("3", "6")
        assert plain(page.a_head) == "7.70 EUR"


def test_all_on_the_shelf_costs_nothing():
    HeldFactory(article=article("Cork", "piece"), amount=13)

    page = kit(corks())

    assert page.is_complete
    assert (plain(page.cost), page.orders) == ("0.00 EUR", ())
    assert page.rows[0].to_buy == "none"


def test_what_is_unfit_isnt_counted():
    HeldFactory(article=article("Cork", "piece"), amount=13, fit=False)

    assert kit(corks()).rows[0].from_shelf == "0"


def test_a_need_that_no_article_meets_has_nobody_to_sell_it():
    page = kit(corks())

    assert page.rows[0].articles == ()
    assert said(page.rows[0].findings) == "13 short: nobody is known to sell it."


def test_a_piece_longer_than_any_stock_is_named_with_both_lengths():
    """36 in less 1/8 trimmed are 35 7/8."""
    long = LengthNeed("wand", DOWEL, inches("3/8"), inches("36"))
    recipe = replace(KNOB, key="wand", materials=(long,))
    sticks(dowels(), 180, SupplierFactory())

    page = kit(planned(edition=kept_edition(recipe), kits_for=3))

    assert said(page.rows[0].findings) == (
        "A piece of 36 in is longer than any stock: the longest there is gives 35 7/8 in once its ends are "
        "trimmed."
    )
    assert not page.is_complete


def test_a_kerf_wider_than_the_piece_is_said_and_counted():
    """Slices of 2 mm with a kerf of 3: 4 of them take 4 x 2 + 3 x 3 = 17 mm."""
    length = parse_length("2 mm")
    slice_ = LengthNeed("slice", "Rod", parse_length("6 mm"), length)
    recipe = replace(KNOB, key="slice", materials=(slice_,), spares=SpareCount(0))
    stock = article("Rod", "length_stock", kerf=parse_length("3 mm"))
    HeldFactory(article=stock, length=parse_length("17 mm"))

    page = kit(planned(edition=kept_edition(recipe), kits_for=3))

    assert (page.rows[0].needed, page.rows[0].from_shelf) == ("4", "4")
    assert "A saw cut takes 3 mm, more than the 2 mm of a piece" in said(page.rows[0].findings)
    assert page.is_complete


def test_spares_of_the_class_come_before_those_of_the_recipe():
    """12 + 1 and no spare: 13."""
    page = kit(knobs(spares_rule="count", spares_number=0))

    assert page.count == 13


def test_a_thing_that_two_lines_need_is_counted_once():
    """20 towels lie there: 13 for the first line, 7 for the second."""
    needs = (ConsumedNeed("dry", "Towel"), ConsumedNeed("oily", "towel"))
    recipe = replace(KNOB, key="towels", materials=needs)
    HeldFactory(article=article("Towel", "consumed"), amount=20)

    page = kit(planned(edition=kept_edition(recipe), kits_for=12))

    assert [each.from_shelf for each in page.rows] == ["13", "7"]


def test_a_pack_that_two_lines_take_is_ordered_in_one_line():
    """Two lines of 13 towels from bags of 10 at 1.00: two bags each, four on the order."""
    needs = (ConsumedNeed("dry", "Towel"), ConsumedNeed("oily", "towel"))
    recipe = replace(KNOB, key="towels", materials=needs)
    OfferFactory(article=article("Towel", "consumed"), label="bag of 10", holds=10, price=100)

    (order,) = kit(planned(edition=kept_edition(recipe), kits_for=12)).orders

    assert [(line.article, line.count, plain(line.cost)) for line in order.lines] == [
        ("Towel", 4, "4.00 EUR")
    ]
