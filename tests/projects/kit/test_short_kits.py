"""Kits of which not all can be had, beside suppliers who charge for delivery. Money in cents."""

from __future__ import annotations

from dataclasses import replace

from projects.kit.counting import Heads
from projects.kit.offers import Supplier
from projects.kit.sawing import Saw
from projects.kit.supplies import StickSupply
from projects.kit.totals import totals
from projects.library.domain.materials import LengthNeed, SpareCount
from tests.projects.kit.stores import inch, sold
from tests.projects.library.examples import KNOB, inches

LONG = LengthNeed("long", "Dowel", inches("3/8"), inches("2 3/4"))
SHORT = LengthNeed("short", "Dowel", inches("3/8"), inches("1 1/2"))
NORTH = Supplier("north", delivery=300)


def needing(*materials):
    return replace(KNOB, materials=materials, spares=SpareCount(0))


def codes(found):
    return [finding.code for line in found.lines for finding in line.findings]


def test_a_piece_longer_than_the_sticks_of_a_supplier_who_charges_delivery_is_named():
    """Sticks of 2 in for a piece of 2 3/4 in, with 3.00 of delivery: nothing is bought, and that is why."""
    supply = StickSupply(Saw(0), offers=(sold(inch("2"), 100),))

    found = totals(needing(LONG), Heads(2, 0), {"long": supply}, [NORTH])

    assert codes(found) == ["longer_than_stock"]
    assert (found.lines[0].purchase.missing, found.cost) == (2, 0)


def test_what_can_be_had_of_a_short_line_is_bought_whatever_its_delivery_costs():
    """Sticks of 2 in give the pieces of 1 1/2 in and none of 2 3/4 in: two sticks and their delivery."""
    supply = StickSupply(Saw(0), offers=(sold(inch("2"), 100),))

    found = totals(needing(LONG, SHORT), Heads(2, 0), {"long": supply}, [NORTH])

    assert (found.lines[0].purchase.missing, found.cost) == (2, 500)
