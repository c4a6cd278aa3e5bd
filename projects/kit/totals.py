"""The kit of a class: every line, what is ordered where, what it costs the class and a head."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import combinations
from typing import TypeVar

from projects.geometry.solids import end_grain_mm2, surface_mm2
from projects.kit.amounts import Soak
from projects.kit.blanks import blank_line
from projects.kit.counting import Heads, Kits, ceil_div, kits_for
from projects.kit.line import Line
from projects.kit.lines import adhesive_line, consumed_line, liquid_line, piece_line, sheet_line
from projects.kit.offers import Bought, Supplier
from projects.kit.promised import NO_ARTICLES, Articles, left_for
from projects.kit.sawing import Saw
from projects.kit.sticks import is_gripped, stick_line
from projects.kit.supplies import BlankSupply, CountSupply, SheetSupply, StickSupply, Supply
from projects.library.domain.findings import Finding, mind
from projects.library.domain.materials import (
    AdhesiveNeed,
    BlankNeed,
    ConsumedNeed,
    LengthNeed,
    Need,
    PieceNeed,
    SheetNeed,
)
from projects.library.domain.recipe import Recipe

UM2_PER_MM2 = 1_000_000
# Suppliers with a delivery charge that are tried in every combination: 64 of them.
MOST_COMBINED = 6
NOTHING_SOLD = Saw(kerf=0)
USUAL_SOAK = Soak()
S = TypeVar("S", StickSupply, SheetSupply, BlankSupply, CountSupply)


@dataclass(frozen=True)
class Order:
    """What one supplier sends; money in minor units."""

    supplier: Supplier
    bought: tuple[Bought, ...]

    @property
    def goods(self) -> int:
        return sum(each.cost for each in self.bought)

    @property
    def cost(self) -> int:
        return self.goods + self.supplier.delivery


@dataclass(frozen=True)
class Totals:
    """Lines in the recipe's order, orders by supplier."""

    kits: Kits
    lines: tuple[Line, ...]
    orders: tuple[Order, ...]
    findings: tuple[Finding, ...] = ()

    @property
    def cost(self) -> int:
        """Of all that is bought, delivery with it. What lies on the shelf is paid already."""
        return sum(order.cost for order in self.orders)

    @property
    def cost_a_head(self) -> int | None:
        """For each student, rounded up to a minor unit; None for a class without students."""
        students = self.kits.heads.students
        return ceil_div(self.cost, students) if students else None

    @property
    def complete(self) -> bool:
        return all(line.complete for line in self.lines)


def totals(
    recipe: Recipe,
    heads: Heads,
    supplies: Mapping[str, Supply],
    suppliers: Sequence[Supplier] = (),
    soak: Soak = USUAL_SOAK,
    articles: Articles = NO_ARTICLES,
) -> Totals:
    """The kit of a class from a checked recipe whose finishes have their spread.

    `supplies` goes by the keys of needs; a need without one has no stock and no supplier. Of needs that share
    their length stock the first one's supply counts. Needs of one specification, or with one of their
    `articles` in common, lie on one shelf, which serves them in the recipe's order. A supplier who isn't
    listed delivers free. Those with a charge are tried in every combination, so delivery is weighed against
    prices over the whole order.
    Raises TypeError for a supply that isn't of its need's kind.
    """
    known = {supplier.key: supplier for supplier in suppliers}
    charging = sorted(key for key, supplier in known.items() if supplier.delivery)
    tried = [
        _with(recipe, heads, supplies, known, left_out, soak, articles) for left_out in _left_out(charging)
    ]
    best = min(tried, key=lambda each: (_missing(each), each.cost, len(each.orders)))
    return replace(best, lines=tuple(map(_as_it_is_short, best.lines, tried[0].lines)))


def _left_out(charging: Sequence[str]) -> Iterator[frozenset[str]]:
    """Nobody, then one supplier, then two; of very many suppliers nobody, or all but one."""
    sizes = range(len(charging) + 1) if len(charging) <= MOST_COMBINED else (0, len(charging) - 1)
    return (frozenset(out) for size in sizes for out in combinations(charging, size))


def _missing(found: Totals) -> Fraction:
    """How much is missing, each line's by its need: what can be had of a short line is had."""
    return sum((Fraction(line.purchase.missing, line.need) for line in found.lines if line.need), Fraction())


def _as_it_is_short(line: Line, of_all: Line) -> Line:
    """Where nobody's offer is of use, the line says why by all of them, those of who is left out too."""
    if not line.purchase.missing or line.taken != of_all.taken or of_all.purchase.bought:
        return line
    return of_all


def _with(
    recipe: Recipe,
    heads: Heads,
    supplies: Mapping[str, Supply],
    known: Mapping[str, Supplier],
    left_out: frozenset[str],
    soak: Soak,
    articles: Articles,
) -> Totals:
    kits = kits_for(heads, recipe.spares)
    offered = {key: _without(supply, left_out) for key, supply in supplies.items()}
    lines = tuple(_lines(recipe, kits, offered, soak, articles))
    orders = tuple(_orders(lines, known))
    return Totals(kits, lines, orders, tuple(_under_least(orders)))


def _without(supply: Supply, left_out: frozenset[str]) -> Supply:
    if isinstance(supply, CountSupply):
        return replace(supply, packs=tuple(pack for pack in supply.packs if pack.supplier not in left_out))
    if isinstance(supply, SheetSupply):
        return replace(supply, packs=tuple(pack for pack in supply.packs if pack.supplier not in left_out))
    if isinstance(supply, StickSupply):
        return replace(supply, offers=tuple(each for each in supply.offers if each.supplier not in left_out))
    return replace(supply, offers=tuple(each for each in supply.offers if each.supplier not in left_out))


def _lines(
    recipe: Recipe, kits: Kits, supplies: dict[str, Supply], soak: Soak, articles: Articles
) -> Iterator[Line]:
    """One after the other, each from what those before it left."""
    needs = {need.key: need for need in recipe.materials}
    for together in _together(recipe):
        line = _line(together, recipe, kits, supplies.get(together[0].key), soak)
        supplies = left_for(supplies, line, needs, articles)
        yield line


def _together(recipe: Recipe) -> list[list[Need]]:
    """Needs in the recipe's order; those that are cut from the same sticks stand with the first of them."""
    groups: dict[object, list[Need]] = {}
    for need in recipe.materials:
        cut = isinstance(need, LengthNeed)
        group = (need.specification, need.across.nm) if isinstance(need, LengthNeed) else need.key
        groups.setdefault((cut, group), []).append(need)
    return list(groups.values())


def _line(needs: Sequence[Need], recipe: Recipe, kits: Kits, supply: Supply | None, soak: Soak) -> Line:
    match need := needs[0]:
        case LengthNeed():
            sticks = _as(StickSupply, supply, need, StickSupply(NOTHING_SOLD))
            cut = [each for each in needs if isinstance(each, LengthNeed)]
            return stick_line(cut, kits, sticks, gripped=is_gripped(need, recipe))
        case SheetNeed():
            return sheet_line(need, kits, _as(SheetSupply, supply, need, SheetSupply()))
        case BlankNeed():
            boards = _as(BlankSupply, supply, need, BlankSupply(NOTHING_SOLD))
            return blank_line(need, recipe.blank, kits, boards)
    counted = _as(CountSupply, supply, need, CountSupply())
    match need:
        case PieceNeed():
            return piece_line(need, kits, counted)
        case ConsumedNeed():
            return consumed_line(need, kits, counted)
        case AdhesiveNeed():
            return adhesive_line(need, kits, counted)
    return liquid_line(need, recipe, areas_um2(recipe), kits, counted, soak)


def _as(kind: type[S], supply: Supply | None, need: Need, nothing: S) -> S:
    """The supply, which has to be of the need's kind; TypeError for another."""
    if supply is None:
        return nothing
    if not isinstance(supply, kind):
        raise TypeError(f"{need.key} needs another supply")
    return supply


def areas_um2(recipe: Recipe) -> tuple[int, int]:
    """Surface and end grain of one piece in whole µm², from its drawing."""
    profile = recipe.profile.profile()
    end_grain = end_grain_mm2(profile, grain_across=recipe.blank.grain_across).total
    return round(surface_mm2(profile).total * UM2_PER_MM2), round(end_grain * UM2_PER_MM2)


def _orders(lines: Sequence[Line], known: Mapping[str, Supplier]) -> Iterator[Order]:
    bought = [each for line in lines for each in line.purchase.bought]
    for key in sorted({each.pack.supplier for each in bought}):
        supplier = known.get(key, Supplier(key))
        yield Order(supplier, tuple(each for each in bought if each.pack.supplier == key))


def _under_least(orders: Sequence[Order]) -> Iterator[Finding]:
    for order in orders:
        least = order.supplier.least_order
        if order.goods < least:
            yield mind("under_least_order", order.supplier.key, goods=order.goods, least=least)
