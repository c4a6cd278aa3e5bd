"""Any plan can be cut, and no plan is cheaper than its bound; small cases against full enumeration."""

from __future__ import annotations

from collections import Counter
from functools import cache
from itertools import product

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp

from projects.kit.bounds import heaviest
from projects.kit.cutting import cutting_plan
from projects.kit.sawing import Saw, Stick

SAWS = st.builds(Saw, st.integers(0, 4), st.integers(0, 3))
DEMANDS = st.dictionaries(st.integers(1, 30), st.integers(0, 12), max_size=4)
OFFERS = st.builds(
    Stick, st.sampled_from("abc"), st.integers(5, 60), st.integers(0, 30), st.sampled_from(["north", "south"])
)
SHELF = st.builds(Stick, st.sampled_from("def"), st.integers(5, 60), limit=st.integers(0, 3))
STICKS = st.lists(OFFERS | SHELF, max_size=4, unique_by=lambda stick: (stick.key, stick.on_shelf))


@given(DEMANDS, STICKS, SAWS)
def test_every_plan_can_be_cut_and_nothing_is_lost_or_made_up(demand, sticks, saw):
    plan = cutting_plan(demand, sticks, saw)

    assert plan.pieces + Counter(plan.unplaced) == +Counter(demand)
    assert all(cut.is_possible(saw) and cut.pieces for cut in plan.sticks)
    used = Counter(cut.stick for cut in plan.sticks if cut.stick.on_shelf)
    assert all(count <= (stick.limit or 0) for stick, count in used.items())
    assert plan.bound <= plan.cost


@given(DEMANDS, STICKS, SAWS)
def test_a_piece_stays_unplaced_only_where_no_offered_stick_takes_it(demand, sticks, saw):
    plan = cutting_plan(demand, sticks, saw)

    offered = [stick for stick in sticks if not stick.on_shelf]
    assert not any(saw.fits(piece, stick.length) for piece in plan.unplaced for stick in offered)


@settings(max_examples=40, deadline=None)
@given(DEMANDS, STICKS, SAWS)
def test_no_plan_is_cheaper_than_the_bound_says_and_a_proof_is_one(demand, sticks, saw):
    """The least cost by scipy's milp over every way to fill every stick."""
    plan = cutting_plan(demand, sticks, saw)

    if plan.unplaced or not plan.pieces:
        return
    least = least_by_milp(+Counter(demand), sticks, saw)
    assert plan.bound <= least <= plan.cost
    assert not plan.proved_least or plan.cost == least


@given(st.integers(1, 30), st.integers(1, 40), STICKS, SAWS)
def test_a_single_length_is_always_proved(length, count, sticks, saw):
    plan = cutting_plan({length: count}, sticks, saw)

    assert plan.unplaced or plan.proved_least


@given(DEMANDS.filter(lambda demand: any(demand.values())), st.integers(0, 80), SAWS, st.randoms())
def test_the_heaviest_filling_is_that_of_trying_all(demand, room, saw, random):
    weights = {piece: random.randrange(6) for piece in demand}
    wanted = +Counter(demand)

    found = heaviest(wanted, weights, room, saw)

    assert found == most_by_trying(tuple(sorted(wanted.items())), tuple(sorted(weights.items())), room, saw)


@cache
def most_by_trying(demand, weights, room, saw):
    weight_of = dict(weights)
    if not demand:
        return 0
    (piece, count), *rest = demand
    tried = range(min(count, max(room, 0) // saw.taken(piece)) + 1)
    return max(
        number * weight_of[piece]
        + most_by_trying(tuple(rest), weights, room - number * saw.taken(piece), saw)
        for number in tried
    )


def least_by_milp(demand, sticks, saw):
    """Columns are a stick and a filling; rows are the demands and the shelf's limits."""
    pieces = sorted(demand)

    def most_in(piece, stick):
        return min(demand[piece], saw.fits(piece, stick.length))

    columns = [
        (index, counts)
        for index, stick in enumerate(sticks)
        for counts in product(*(range(most_in(piece, stick) + 1) for piece in pieces))
        if sum(n * saw.taken(piece) for n, piece in zip(counts, pieces, strict=True))
        <= saw.room(stick.length)
        and any(counts)
    ]
    meets = LinearConstraint(
        np.array([[counts[row] for _, counts in columns] for row in range(len(pieces))]),
        [demand[piece] for piece in pieces],
        np.inf,
    )
    limits = LinearConstraint(
        np.array([[float(index == row) for index, _ in columns] for row in range(len(sticks))]),
        -np.inf,
        [np.inf if stick.limit is None else stick.limit for stick in sticks],
    )
    prices = [sticks[index].price for index, _ in columns]
    done = milp(
        prices,
        constraints=[meets, limits],
        integrality=np.ones(len(columns)),
        bounds=Bounds(0, np.inf),
        options={"mip_rel_gap": 0},
    )
    assert done.success, done.message
    return round(done.fun)
