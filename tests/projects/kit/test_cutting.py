"""Plans for sticks, worked out by hand and after published cases; money in cents."""

from __future__ import annotations

import pytest

from projects.kit.cutting import cutting_plan
from projects.kit.sawing import Saw, Stick
from tests.projects.kit.stores import CASES, held, inch, inches_of, mm, sold

SIXTEENTH = Saw(inch("1/16"), inch("1/8"))


@pytest.mark.parametrize("name", ["kerf-36", "kerf-exact", "kerf-float-trap"])
def test_a_stick_gives_as_many_pieces_as_published(name):
    """n pieces take n - 1 cuts; each case names its source in the table."""
    given = CASES[name]["given"]
    saw = Saw(inches_of(given["kerf_in"]))

    pieces = saw.fits(inches_of(given["piece_in"]), inches_of(given["stock_in"]))

    assert pieces == CASES[name]["expected"]["pieces"]


@pytest.mark.parametrize(
    "name", ["cs-paper-5600", "cs-100-textbook", "cs-110-textbook", "cs-gap-132", "cs-ffd-11-9"]
)
def test_published_cases_are_never_undercut_and_never_claimed_beyond_the_proof(name):
    """The optimum of each case was proved by enumeration and integer programming; see the table."""
    given, optimum = CASES[name]["given"], CASES[name]["expected"]["optimum"]
    demand = dict(zip(given["lengths"], given["demand"], strict=True))

    plan = cutting_plan(demand, [sold(given["stock"], 1)], Saw(0))

    assert plan.pieces == demand
    assert plan.bound <= optimum <= plan.cost
    assert plan.cost <= optimum * 1.03
    assert not plan.proved_least or plan.cost == optimum


def test_the_worst_case_of_first_fit_and_the_case_without_round_up_are_proved():
    """9 sticks where the longest-first rule takes 11; 3 where the lengths alone say 2."""
    for name in ("cs-ffd-11-9", "cs-gap-132"):
        given = CASES[name]["given"]
        demand = dict(zip(given["lengths"], given["demand"], strict=True))

        plan = cutting_plan(demand, [sold(given["stock"], 1)], Saw(0))

        assert plan.proved_least, name


def test_a_piece_longer_than_the_stick_stays_unplaced():
    given = CASES["cs-impossible"]["given"]

    plan = cutting_plan({37: 1}, [sold(given["stock"], 1)], Saw(0))

    assert (plan.unplaced, plan.sticks, plan.proved_least) == ((37,), (), False)


def test_a_plan_that_leaves_a_piece_out_claims_no_bound():
    """Two of 10 alone would be proved at 5."""
    plan = cutting_plan({37: 1, 10: 2}, [sold(36, 5)], Saw(0))

    assert (plan.unplaced, plan.cost, plan.bound) == ((37,), 5, 0)


def test_fifteen_pieces_of_two_and_a_quarter_come_from_one_rod():
    """36 less 1/8 is 35 7/8; 15 x (2 1/4 + 1/16) = 34 11/16; the rest is 1 3/16 in."""
    plan = cutting_plan({inch("2 1/4"): 15}, [held(inch("36"))], SIXTEENTH)

    (cut,) = plan.sticks
    assert len(cut.pieces) == 15
    assert cut.rest(SIXTEENTH) == inch("1 3/16")


def test_a_piece_that_just_fits_needs_no_cut_behind_it():
    """250 mm less 10 trimmed is 240: 3 x 78 + 2 x 3 = 240 exactly; 0.001 mm less holds only 2."""
    saw = Saw(mm("3"), mm("10"))

    assert saw.fits(mm("78"), mm("250")) == 3
    assert saw.fits(mm("78"), mm("249.999")) == 2


def test_a_kerf_wider_than_the_piece_is_counted_like_any_other():
    """Pieces of 2 mm, kerf 3: from 20 mm, (20 + 3) / 5 = 4 pieces; 2 + 3 + 2 + 3 + 2 + 3 + 2 = 17."""
    plan = cutting_plan({mm("2"): 9}, [sold(mm("20"), 100)], Saw(mm("3")))

    assert [len(cut.pieces) for cut in plan.sticks] == [4, 4, 1]
    assert plan.proved_least


def test_sticks_of_two_lengths_are_bought_at_the_least_cost():
    """Pieces of 5 in, no kerf: 12 in give 2 at 1.00, 36 in give 7 at 3.20.

    Of 9: 7 + 2 for 4.20; five short ones cost 5.00, two long ones 6.40.
    """
    plan = cutting_plan({inch("5"): 9}, [sold(inch("12"), 100), sold(inch("36"), 320)], Saw(0))

    assert (plan.cost, plan.bound) == (420, 420)
    assert sorted(len(cut.pieces) for cut in plan.sticks) == [2, 7]


def test_an_offcut_that_saves_nothing_stays_whole():
    """12 pieces of 5 in come from two sticks of 36 with 2 to spare; the offcut of 12 in would only give 2."""
    sticks = [held(inch("12")), sold(inch("36"), 320)]

    enough = cutting_plan({inch("5"): 12}, sticks, Saw(0))
    saving = cutting_plan({inch("5"): 16}, sticks, Saw(0))

    assert not any(cut.stick.on_shelf for cut in enough.sticks)
    assert [cut.stick.on_shelf for cut in saving.sticks].count(True) == 1
    assert saving.cost == 640


def test_what_lies_there_is_enough_and_nothing_is_bought():
    plan = cutting_plan({inch("5"): 14}, [held(inch("36"), 3), sold(inch("36"), 320)], Saw(0))

    assert (plan.cost, plan.proved_least, len(plan.sticks)) == (0, True, 2)


def test_a_piece_that_only_the_shelf_has_a_stick_for_gets_it():
    """The 40 in piece would be too late if the 20 in ones were cut from the long stick first."""
    demand = {inch("20"): 4, inch("40"): 1}

    plan = cutting_plan(demand, [held(inch("48")), sold(inch("36"), 300)], Saw(0))

    assert plan.unplaced == ()
    assert plan.cost == 1200


def test_two_lengths_share_sticks_and_the_plan_is_proved_by_its_bound():
    """100 mm: 60 + 40 twice over; the lengths add up to two whole sticks, so none fewer can do."""
    plan = cutting_plan({mm("60"): 2, mm("40"): 2}, [sold(mm("100"), 250)], Saw(0))

    assert [cut.pieces for cut in plan.sticks] == [(mm("60"), mm("40"))] * 2
    assert plan.proved_least


def test_pieces_of_more_than_half_a_stick_are_proved_by_their_number():
    """Three of 60 mm need a stick of 100 each, though with one of 10 they add up to less than two sticks."""
    plan = cutting_plan({mm("60"): 3, mm("10"): 1}, [sold(mm("100"), 250)], Saw(0))

    assert (plan.cost, plan.bound) == (750, 750)


def test_no_stick_at_all_leaves_everything_unplaced():
    plan = cutting_plan({mm("60"): 2}, [], Saw(0))

    assert plan.unplaced == (mm("60"),) * 2


def test_no_piece_needs_no_stick():
    plan = cutting_plan({mm("60"): 0}, [Stick("a", mm("100"), 5)], Saw(0))

    assert (plan.sticks, plan.cost, plan.proved_least) == ((), 0, True)
