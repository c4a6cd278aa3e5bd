"""Three classes worked out by hand. Collet grip, spread rates and dry wood are common practice, no source."""

from __future__ import annotations

from dataclasses import replace

import pytest

from club.base.quantities.length import parse_length
from club.base.quantities.volume import parse_volume
from projects.kit.amounts import Soak
from projects.kit.counting import Heads, kits_for
from projects.kit.lines import liquid_line
from projects.kit.sawing import Saw
from projects.kit.supplies import (
    BlankLot,
    BlankSupply,
    Board,
    CountSupply,
    HeldStick,
    Sheet,
    SheetPack,
    SheetSupply,
    StickSupply,
    Supply,
)
from projects.kit.totals import totals
from projects.library.domain.coats import Coat
from projects.library.domain.materials import BlankNeed, LengthNeed, LiquidNeed, SheetNeed, SpareCount
from projects.library.domain.words import WoodCondition
from tests.projects.kit.stores import inch, sold
from tests.projects.library.examples import BOWL, KNOB, inches

RODS = (HeldStick("R1", inch("36"), inch("0.484")), HeldStick("R2", inch("36"), inch("0.499")))
ROD_SAW = Saw(inch("1/16"), inch("1/8"))
SHEET = Sheet(inch("9"), inch("11"))


@pytest.fixture
def knobs():
    """Twelve students, one demonstration, 10 % spare of 13 rounded up: 15 kits."""
    stick = Board("square", inch("1 1/2"), inch("1 1/2"), inch("36"), moisture_percent=9)
    supplies: dict[str, Supply] = {
        "dowel": StickSupply(ROD_SAW, RODS, (sold(inch("36"), 180),)),
        "blank": BlankSupply(Saw(inch("1/8"), inch("1/4")), shelf=(stick,)),
    }
    return totals(KNOB, Heads(12), supplies)


def length_of(text):
    return None if text is None else parse_length(text).nm


def line_of(found, key):
    return next(line for line in found.lines if key in line.keys)


class TestKnobsInACollet:
    def test_fifteen_kits_are_cut_from_the_rod_that_the_collet_grips(self, knobs):
        """R2 holds 15: 15 x 2 5/16 = 34 11/16 of 35 7/8 in, rest 1 3/16. R1 would hold 15 too."""
        dowel = line_of(knobs, "dowel")

        assert knobs.kits.all == 15
        assert (dowel.need, dowel.on_shelf, dowel.to_buy, dowel.cost) == (15, 15, 0, 0)
        assert [cut.stick.key for cut in dowel.plan.sticks] == ["R2"]
        assert dowel.plan.sticks[0].rest(ROD_SAW) == inch("1 3/16")

    def test_the_thin_rod_is_named_with_how_far_it_would_draw_in(self, knobs):
        """0.500 - 0.484 = 0.016 in, 20 times that is 0.32, about 5/16 in."""
        (finding,) = line_of(knobs, "dowel").findings

        assert (finding.code, finding.values["stick"]) == ("too_thin_for_collet", "R1")
        assert finding.values["draws_in"] == inch("0.32")

    def test_fifteen_blanks_come_from_one_square_of_the_shelf(self, knobs):
        """35 3/4 in hold 16 blanks of 2 in with cuts of 1/8; fifteen leave 35 3/4 - 15 x 2 1/8 = 3 7/8."""
        blank = line_of(knobs, "blank")

        assert (blank.need, blank.on_shelf, blank.to_buy) == (15, 15, 0)

    def test_towels_are_for_heads_and_glue_for_every_kit(self, knobs):
        """3 towels for 13 heads; 2 in² = 1 290.32 mm² at 200 g/m² for 15 kits are 3.87096 g."""
        assert line_of(knobs, "towel").need == 39
        assert line_of(knobs, "glue").need == 3_870_960_000

    def test_without_the_good_rod_one_is_bought(self):
        supply = StickSupply(ROD_SAW, RODS[:1], (sold(inch("36"), 180),))

        dowel = line_of(totals(KNOB, Heads(12), {"dowel": supply}), "dowel")

        assert (dowel.on_shelf, dowel.to_buy, dowel.cost, dowel.proved_least) == (0, 15, 180, True)

    @pytest.mark.parametrize(
        ("across", "code"),
        [("0.501 in", "too_thick_for_collet"), ("12.599 mm", "too_thin_for_collet"), (None, "not_measured")],
    )
    def test_a_rod_outside_the_grip_or_not_measured_is_never_counted(self, across, code):
        """The grip is 12.7 mm down to 12.6."""
        rod = HeldStick("rod", inch("36"), length_of(across))

        dowel = line_of(totals(KNOB, Heads(12), {"dowel": StickSupply(ROD_SAW, (rod,))}), "dowel")

        assert dowel.on_shelf == 0
        assert code in {finding.code for finding in dowel.findings}

    @pytest.mark.parametrize("across", ["12.7 mm", "12.6 mm"])
    def test_a_rod_at_either_end_of_the_grip_is_counted(self, across):
        rod = HeldStick("rod", inch("36"), length_of(across))

        dowel = line_of(totals(KNOB, Heads(12), {"dowel": StickSupply(ROD_SAW, (rod,))}), "dowel")

        assert dowel.on_shelf == 15

    def test_a_stick_no_collet_holds_need_not_be_measured(self):
        loose = replace(KNOB, materials=(LengthNeed("peg", "Dowel", inches("3/8"), inches("2 1/4")),))

        supply = StickSupply(ROD_SAW, (HeldStick("rod", inch("36")),))

        assert line_of(totals(loose, Heads(12), {"peg": supply}), "peg").on_shelf == 15


class TestBowls:
    """Morning and afternoon together: twice six students and a demonstration, and two spare blanks."""

    def test_a_wet_lot_isnt_counted(self):
        """16 kits; lot A 10 at 11 %, lot B 9 at 26 %: 6 are short and bought dry, 2 to a board."""
        recipe = replace(BOWL, materials=(BlankNeed("blank", "Cherry"),), spares=SpareCount(2))
        board = Board("slab", inch("3"), inch("8 1/4"), inch("17"), price=2_400, supplier="sawmill")
        supply = BlankSupply(Saw(inch("1/8")), (BlankLot("A", 10, 11), BlankLot("B", 9, 26)), offers=(board,))

        found = totals(recipe, Heads(12, 2), {"blank": supply})

        blank = line_of(found, "blank")
        assert (blank.need, blank.on_shelf, blank.to_buy) == (16, 10, 6)
        assert (blank.purchase.packs, blank.cost) == (3, 7_200)
        assert [(each.code, each.values["lot"]) for each in blank.findings] == [("too_wet", "B")]

    def test_a_lot_nobody_measured_isnt_counted_either(self):
        recipe = replace(BOWL, materials=(BlankNeed("blank", "Cherry"),), spares=SpareCount(0))

        found = totals(recipe, Heads(3), {"blank": BlankSupply(Saw(0), (BlankLot("A", 10),))})

        blank = line_of(found, "blank")
        assert blank.on_shelf == 0
        assert [each.code for each in blank.findings] == ["moisture_not_measured", "no_supplier"]

    def test_wood_asked_for_wet_may_be_wet(self):
        wet = replace(BOWL.blank, conditions=(WoodCondition.WET,))
        recipe = replace(BOWL, blank=wet, materials=(BlankNeed("blank", "Cherry"),), spares=SpareCount(0))

        found = totals(recipe, Heads(3), {"blank": BlankSupply(Saw(0), (BlankLot("B", 9, 26),))})

        assert line_of(found, "blank").on_shelf == 4


class TestDibbers:
    def test_thirteen_pieces_of_each_grit_take_two_sheets_each(self):
        """10 + 1 + 2 spare; 4 1/2 x 2 3/4 in, eight to a sheet of 9 x 11: two sheets a grit, six in all."""
        recipe = replace(
            KNOB,
            spares=SpareCount(2),
            materials=tuple(
                SheetNeed(f"grit-{grit}", "Sandpaper", inches("2 3/4"), inches("4 1/2"), grit)
                for grit in (120, 180, 240)
            ),
        )
        supply = SheetSupply(packs=(SheetPack("sheet", "north", SHEET, 1, 90),))

        found = totals(recipe, Heads(10), {need.key: supply for need in recipe.materials})

        assert [line.need for line in found.lines] == [13, 13, 13]
        assert sum(line.purchase.packs for line in found.lines) == 6
        assert found.cost == 540

    def test_sheets_and_cut_pieces_of_the_shelf_come_first(self):
        """3 pieces and one sheet of eight make 11 of 13."""
        need = SheetNeed("grit-120", "Sandpaper", inches("2 3/4"), inches("4 1/2"), 120)
        recipe = replace(KNOB, spares=SpareCount(2), materials=(need,))
        supply = SheetSupply(3, (SHEET,), (SheetPack("sheet", "north", SHEET, 1, 90),))

        (line,) = totals(recipe, Heads(10), {"grit-120": supply}).lines

        assert (line.on_shelf, line.to_buy, line.purchase.packs) == (11, 2, 1)

    def test_oil_for_eleven_pieces_is_44_ml_of_the_500_on_the_shelf(self):
        """200 cm² at 10 m²/l are 2 ml, 2 ml stay in the cloth: 11 x 4 = 44; spares are never oiled."""
        need = LiquidNeed("oil", "White mineral oil", "mineral_oil", in_cloth=parse_volume("2 ml"))
        recipe = replace(KNOB, finish=(Coat("mineral_oil", 0, True, spread_cm2_per_ml=100),))
        kits = kits_for(Heads(10), SpareCount(2))

        line = liquid_line(need, recipe, (200 * 10**8, 0), kits, CountSupply(500 * 10**6), Soak())

        assert (line.need, line.on_shelf, line.to_buy) == (44 * 10**6, 44 * 10**6, 0)
