"""Whole kits: cost, orders, and what is said where something is missing. Money in cents."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from club.base.quantities.length import Length
from club.base.quantities.volume import Volume
from projects.geometry.solids import surface_mm2
from projects.kit.counting import Heads
from projects.kit.offers import Supplier
from projects.kit.sawing import Saw
from projects.kit.supplies import (
    BlankSupply,
    Board,
    CountSupply,
    Sheet,
    SheetPack,
    SheetSupply,
    StickSupply,
    Supply,
)
from projects.kit.totals import areas_um2, totals
from projects.library.domain.blank import SquareBlank
from projects.library.domain.coats import Coat
from projects.library.domain.materials import (
    BlankNeed,
    ConsumedNeed,
    LengthNeed,
    LiquidNeed,
    PieceNeed,
    SheetNeed,
    SpareCount,
    SparePercent,
)
from tests.projects.kit.stores import inch, mm, pack, sold
from tests.projects.library.examples import KNOB, inches

CORK = PieceNeed("cork", "Cork")
RING = PieceNeed("ring", "Ring", count=2)
LONG = LengthNeed("long", "Dowel", inches("3/8"), inches("2 3/4"))
SHORT = LengthNeed("short", "Dowel", inches("3/8"), inches("1 1/2"))


NO_SPARES = SpareCount(0)


def needing(*materials, spares=NO_SPARES):
    return replace(KNOB, materials=materials, spares=spares)


def codes(found):
    return [finding.code for line in found.lines for finding in line.findings]


def test_the_cost_of_a_class_and_a_head_is_that_of_the_hand():
    """13 kits: 13 corks from packs of 10 at 4.50 and of 4 at 2.00: 10 + 4, 6.50.

    26 rings from packs of 25 at 3.10: two, 6.20. Delivery 3.00. 15.70 over 12 students is 1.3084, so 1.31.
    """
    supplies = {
        "cork": CountSupply(packs=(pack(10, 450), pack(4, 200))),
        "ring": CountSupply(packs=(pack(25, 310),)),
    }

    found = totals(needing(CORK, RING), Heads(12), supplies, [Supplier("north", delivery=300)])

    assert [line.cost for line in found.lines] == [650, 620]
    assert (found.cost, found.cost_a_head) == (1_570, 131)
    assert found.complete


def test_what_is_on_the_shelf_costs_nothing_and_asks_for_no_delivery():
    supply = CountSupply(13, (pack(10, 450),))

    found = totals(needing(CORK), Heads(12), {"cork": supply}, [Supplier("north", delivery=300)])

    assert (found.lines[0].to_buy, found.cost, found.orders) == (0, 0, ())


def test_delivery_is_weighed_over_the_whole_order():
    """Corks 1.00 in the north, rings 1.00 in the south, each 1.50 at the other's; delivery 2.00 each.

    Both from one cost 1.00 + 1.50 + 2.00 = 4.50; from two 2.00 + 4.00 = 6.00.
    """
    supplies = {
        "cork": CountSupply(packs=(pack(50, 100, "north"), pack(50, 150, "south"))),
        "ring": CountSupply(packs=(pack(50, 150, "north"), pack(50, 100, "south"))),
    }
    both = [Supplier("north", delivery=200), Supplier("south", delivery=200)]

    found = totals(needing(CORK, RING), Heads(12), supplies, both)

    assert found.cost == 450
    assert len(found.orders) == 1


def test_a_supplier_who_alone_sells_a_thing_is_never_left_out_to_save_delivery():
    supplies = {
        "cork": CountSupply(packs=(pack(50, 100, "north"),)),
        "ring": CountSupply(packs=(pack(50, 100, "south"),)),
    }
    both = [Supplier("north", delivery=200), Supplier("south", delivery=9_000)]

    found = totals(needing(CORK, RING), Heads(12), supplies, both)

    assert found.complete
    assert [order.cost for order in found.orders] == [300, 9_100]


def test_an_order_under_the_least_is_said():
    found = totals(
        needing(CORK),
        Heads(12),
        {"cork": CountSupply(packs=(pack(50, 100),))},
        [Supplier("north", least_order=2_500)],
    )

    (finding,) = found.findings
    assert (finding.code, finding.path) == ("under_least_order", "north")
    assert dict(finding.values) == {"goods": 100, "least": 2_500}


def test_pieces_of_one_stock_share_their_sticks():
    """2 students, no demonstration: 2 x 2 3/4 + 2 x 1 1/2 + 3 x 1/16 = 8 11/16; one stick of 9 in does.

    Apart each would take a stick.
    """
    supply = StickSupply(Saw(inch("1/16")), offers=(sold(inch("9"), 100),))

    found = totals(needing(LONG, SHORT), Heads(2, 0), {"long": supply})

    (line,) = found.lines
    assert (line.keys, line.need, line.cost, line.proved_least) == (("long", "short"), 4, 100, True)


def test_a_metric_total_is_that_of_the_hand():
    """9 students, 1 demonstration, 10 %: 11 kits of 70 mm from 1 000 mm rods, kerf 2, 10 trimmed.

    (990 + 2) / 72 = 13.7, so one rod at 2.40 gives 13 and 11 are cut: 1 000 - 10 - 11 x 72 = 198 left.
    """
    need = replace(LONG, length=Length(mm("70")))
    supply = StickSupply(Saw(mm("2"), mm("10")), offers=(sold(mm("1000"), 240),))

    found = totals(needing(need, spares=SparePercent(10)), Heads(9), {"long": supply})

    (line,) = found.lines
    (cut,) = line.plan.sticks
    assert (line.need, line.cost, cut.rest(supply.saw)) == (11, 240, mm("198"))
    assert found.cost_a_head == 27


class TestWhatIsMissing:
    def test_a_need_nobody_meets_has_no_supplier(self):
        found = totals(needing(CORK, LONG), Heads(3), {})

        assert codes(found) == ["no_supplier", "no_supplier"]
        assert [finding.values["missing"] for line in found.lines for finding in line.findings] == [4, 4]
        assert (found.complete, found.cost) == (False, 0)

    def test_a_piece_longer_than_any_stock_is_named(self):
        """36 in less 1/2 trimmed leave 35 1/2."""
        tall = LengthNeed("tall", "Dowel", inches("3/8"), inches("35 3/4"))
        supply = StickSupply(Saw(inch("1/16"), inch("1/2")), offers=(sold(inch("36"), 100),))

        (line,) = totals(needing(tall, SHORT), Heads(3), {"tall": supply}).lines

        (finding,) = [each for each in line.findings if each.code == "longer_than_stock"]
        assert finding.path == "tall"
        assert dict(finding.values) == {"length": inch("35 3/4"), "longest": inch("35 1/2")}
        assert not line.complete
        assert line.plan.pieces == {inch("1 1/2"): 4}

    def test_a_kerf_wider_than_the_piece_is_said_and_the_total_is_right(self):
        """Slices of 2 mm, kerf 3, 4 of them: 4 x 2 + 3 x 3 = 17 mm."""
        slice_ = replace(SHORT, length=Length(mm("2")))
        supply = StickSupply(Saw(mm("3")), offers=(sold(mm("17"), 100),))

        (line,) = totals(needing(slice_), Heads(3), {"short": supply}).lines

        assert [each.code for each in line.findings] == ["kerf_wider_than_piece"]
        assert (line.complete, line.cost) == (True, 100)

    def test_boards_and_sheets_too_small_say_so(self):
        sheet = SheetNeed("grit", "Sandpaper", inches("12"), inches("12"))
        supplies: dict[str, Supply] = {
            "grit": SheetSupply(packs=(SheetPack("sheet", "north", Sheet(inch("9"), inch("11")), 10, 500),)),
            "blank": BlankSupply(
                Saw(0), offers=(Board("thin", inch("1"), inch("8"), inch("96"), 900, "north"),)
            ),
        }

        found = totals(needing(sheet, BlankNeed("blank", "Maple")), Heads(3), supplies)

        assert codes(found) == ["larger_than_sheets", "larger_than_boards"]

    def test_a_finish_without_a_spread_is_refused(self):
        oil = LiquidNeed("oil", "Oil", "walnut_oil")

        assert "no_spread" in codes(totals(needing(oil), Heads(3), {"oil": CountSupply(10**9)}))

    def test_a_supply_of_another_kind_is_an_error_of_whoever_calls(self):
        with pytest.raises(TypeError, match="cork"):
            totals(needing(CORK), Heads(3), {"cork": SheetSupply()})


@pytest.mark.parametrize("students", [0, 1])
def test_totals_for_nobody_and_for_one(students):
    """Nobody and no demonstration need nothing; one and none need one of each, two rings."""
    everything = needing(CORK, RING, LONG, ConsumedNeed("towel", "Towel"), spares=SpareCount(0))

    found = totals(everything, Heads(students, 0), {})

    assert [line.need for line in found.lines] == [students, 2 * students, students, students]
    assert found.complete is (students == 0)
    assert found.cost_a_head == (None if students == 0 else 0)


def test_the_area_for_oil_is_that_of_the_drawing():
    """Two coats at 100 cm²/ml, each with 1 ml in the cloth, end grain half as much again."""
    oil = LiquidNeed("oil", "Oil", "walnut_oil", in_cloth=Volume(10**6))
    coat = Coat("walnut_oil", 24, True, spread_cm2_per_ml=100)
    recipe = replace(needing(oil), finish=(coat, coat))
    plain = surface_mm2(KNOB.profile.profile()).total

    (line,) = totals(recipe, Heads(1, 0), {}).lines

    surface, end_grain = areas_um2(recipe)
    counted = surface + end_grain / 2
    assert surface == pytest.approx(plain * 10**6, abs=1)
    assert 0 < end_grain < surface
    assert line.workings[0].values["surface_um2"] == surface
    assert line.need == pytest.approx(2 * (counted / 10**4 + 10**6), abs=1)


def test_a_need_with_a_blank_of_its_own_is_cut_to_that():
    """Lids of 1 in square x 1 in, not the knob's 1 1/2 x 2: four from a stick of 4 in without a kerf."""
    lid = BlankNeed("lid", "Maple", SquareBlank("maple_sugar", inches("1"), inches("1")))
    stick = Board("stick", inch("1"), inch("1"), inch("4"), 300, "north")

    (line,) = totals(needing(lid), Heads(3), {"lid": BlankSupply(Saw(0), offers=(stick,))}).lines

    assert (line.complete, line.purchase.packs) == (True, 1)


def test_each_line_says_how_it_came_about():
    supply = StickSupply(Saw(inch("1/16")), offers=(sold(inch("9"), 100),))

    (line,) = totals(needing(LONG, spares=SpareCount(1)), Heads(1), {"long": supply}).lines

    counted, cut = line.workings
    assert (counted.code, counted.values["need"], counted.values["spares"]) == ("per_kit", 3, 1)
    assert (cut.code, cut.values["sticks"], cut.values["pieces"]) == ("cut", 1, ((inch("2 3/4"), 3),))


@settings(max_examples=40, deadline=None)
@given(
    st.lists(
        st.tuples(
            st.sampled_from(["cork", "ring"]), st.integers(1, 9), st.integers(0, 50), st.sampled_from("abc")
        ),
        max_size=5,
    ),
    st.lists(st.integers(0, 80), min_size=3, max_size=3),
    st.integers(0, 4),
)
def test_no_other_order_is_cheaper(offers, charges, students):
    """Every number of every pack tried, delivery paid once for each supplier used."""
    supplies = {
        name: CountSupply(
            packs=tuple(pack(holds, price, who) for key, holds, price, who in offers if key == name)
        )
        for name in ("cork", "ring")
    }
    suppliers = [Supplier(key, charge) for key, charge in zip("abc", charges, strict=True)]

    found = totals(needing(CORK, RING), Heads(students, 0), supplies, suppliers)

    least = min(costs_by_trying(supplies, suppliers, {"cork": students, "ring": 2 * students}), default=None)
    assert found.complete is (least is not None)
    assert least in (None, found.cost)


def costs_by_trying(supplies, suppliers, needs):
    charges = {supplier.key: supplier.delivery for supplier in suppliers}
    packs = [(name, each) for name, supply in supplies.items() for each in supply.packs]
    for counts in product(*(range(-(-needs[name] // each.holds) + 1) for name, each in packs)):
        got = dict.fromkeys(needs, 0)
        for count, (name, each) in zip(counts, packs, strict=True):
            got[name] += count * each.holds
        if all(got[name] >= need for name, need in needs.items()):
            used = {each.supplier for count, (_, each) in zip(counts, packs, strict=True) if count}
            goods = sum(count * each.price for count, (_, each) in zip(counts, packs, strict=True))
            yield goods + sum(charges[key] for key in used)
