from __future__ import annotations

from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from projects.kit import packs as module
from projects.kit.packs import cheapest_packs
from tests.projects.kit.stores import pack

PACKS = st.lists(
    st.builds(pack, st.integers(1, 9), st.integers(0, 40), st.sampled_from(["north", "south"])),
    min_size=1,
    max_size=3,
)


def test_packs_of_two_sizes_are_mixed_where_that_is_cheapest():
    """Of 15: 2 x 10 cost 4.00, 10 + 2 x 4 cost 4.10, 4 x 4 cost 4.20. Of 14: 10 + 4 cost 3.05."""
    purchase = cheapest_packs(15, [pack(4, 105), pack(10, 200)])

    assert [(each.pack.holds, each.count) for each in purchase.bought] == [(10, 2)]
    assert purchase.cost == 400

    mixed = cheapest_packs(14, [pack(4, 105), pack(10, 200)])

    assert sorted((each.pack.holds, each.count) for each in mixed.bought) == [(4, 1), (10, 1)]
    assert (mixed.cost, mixed.holds, mixed.proved_least) == (305, 14, True)


def test_of_equal_costs_one_supplier_wins_then_the_least_left_over():
    """10 for 2.00: 6 from the north and 4 from the south leave none over, the south alone sends 12 or 11."""
    mixed = [pack(6, 100, "north"), pack(4, 100, "south")]

    purchase = cheapest_packs(10, [*mixed, pack(12, 200, "south"), pack(11, 200, "south")])

    assert (purchase.cost, purchase.holds) == (200, 11)
    assert purchase.suppliers == frozenset({"south"})
    assert purchase.proved_least


def test_nothing_needed_is_nothing_bought():
    assert cheapest_packs(0, [pack(4, 100)]).bought == ()
    assert cheapest_packs(0, [pack(4, 100)]).proved_least


def test_with_no_pack_that_holds_any_all_of_it_is_missing():
    assert cheapest_packs(7, []).missing == 7
    assert cheapest_packs(7, [pack(0, 100)]).missing == 7
    assert not cheapest_packs(7, []).proved_least


def test_a_pack_that_was_given_costs_nothing():
    purchase = cheapest_packs(7, [pack(4, 0), pack(7, 100)])

    assert (purchase.cost, purchase.packs) == (0, 2)


@given(st.integers(0, 30), PACKS)
def test_the_cost_is_that_of_trying_every_number_of_every_pack(need, packs):
    """Full enumeration as the oracle."""
    counts = [range(-(-need // each.holds) + 1) for each in packs]
    covers = [
        sum(count * each.price for count, each in zip(tried, packs, strict=True))
        for tried in product(*counts)
        if sum(count * each.holds for count, each in zip(tried, packs, strict=True)) >= need
    ]

    purchase = cheapest_packs(need, packs)

    assert purchase.holds >= need
    assert purchase.cost == min(covers)
    assert purchase.proved_least


@given(st.integers(1, 60), PACKS)
def test_a_search_that_is_cut_short_still_covers_and_bounds_from_below(need, packs):
    least = cheapest_packs(need, packs).cost

    short = module._unproved(need, packs)

    assert short.holds >= need
    assert short.bound <= least <= short.cost
