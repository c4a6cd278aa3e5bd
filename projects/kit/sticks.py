"""Lines of what is cut from length stock; needs of one specification and size share their sticks."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from projects.kit.counting import Kits
from projects.kit.cutting import cutting_plan
from projects.kit.line import Line, working
from projects.kit.lines import counting, no_supplier
from projects.kit.offers import Pack, Purchase, counted
from projects.kit.sawing import CutStick, CuttingPlan, Saw, Stick
from projects.kit.supplies import HeldStick, StickSupply
from projects.kit.taken import CutHeld, Taken
from projects.library.domain.facts import Working
from projects.library.domain.findings import Finding, mind, refused
from projects.library.domain.holding import Collet
from projects.library.domain.materials import LengthNeed
from projects.library.domain.recipe import Recipe

# A Morse taper closes 1 mm in some 20 mm of its length (ISO 296:1991, ASME B5.10).
DRAWN_IN_FOR_EACH = 20


def is_gripped(need: LengthNeed, recipe: Recipe) -> bool:
    """Whether a collet of the recipe holds the piece by this stock."""
    collets = (each.holding for each in recipe.mountings if isinstance(each.holding, Collet))
    return any(collet.size.nm == need.across.nm for collet in collets)


def stick_line(needs: Sequence[LengthNeed], kits: Kits, supply: StickSupply, *, gripped: bool) -> Line:
    """Pieces of needs that share their stock, from sticks on the shelf that fit, and from bought ones.

    A stick for a collet counts only when it has been measured and lies within the grip.
    """
    demand: Counter[int] = Counter()
    for need in needs:
        demand[need.length.nm] += need.count * kits.all
    across = needs[0].across.nm
    fit, unfit = _sorted_out(supply, needs[0].key, across) if gripped else (supply.shelf, ())
    sticks = (*_shelf(fit), *supply.offers)
    plan = cutting_plan(demand, sticks, supply.saw)
    from_shelf = [cut for cut in plan.sticks if cut.stick.on_shelf]
    return Line(
        keys=tuple(need.key for need in needs),
        kind=LengthNeed.kind,
        need=demand.total(),
        on_shelf=sum(len(cut.pieces) for cut in from_shelf),
        purchase=_purchase(plan),
        workings=tuple(_workings(needs, kits, supply.saw, plan)),
        findings=(*unfit, *cutting_findings(needs, sticks, supply.saw, plan)),
        plan=plan,
        taken=Taken(sticks=tuple(_taken(cut, supply.saw) for cut in from_shelf)),
    )


def _taken(cut: CutStick, saw: Saw) -> CutHeld:
    return CutHeld(cut.stick.key, cut.stick.length, cut.rest(saw))


def _shelf(held: Iterable[HeldStick]) -> Iterator[Stick]:
    return (Stick(stick.key, stick.length, limit=1) for stick in held)


def _sorted_out(
    supply: StickSupply, key: str, size: int
) -> tuple[tuple[HeldStick, ...], tuple[Finding, ...]]:
    """Sticks a collet of this size grips, and what is said of the others."""
    fit, said = [], []
    for stick in supply.shelf:
        if stick.across is None:
            said.append(mind("not_measured", key, stick=stick.key, size=size))
        elif stick.across > size:
            said.append(mind("too_thick_for_collet", key, stick=stick.key, across=stick.across, size=size))
        elif (under := size - stick.across) > supply.grips_under:
            values = {"across": stick.across, "size": size, "draws_in": under * DRAWN_IN_FOR_EACH}
            said.append(mind("too_thin_for_collet", key, stick=stick.key, **values))
        else:
            fit.append(stick)
    return tuple(fit), tuple(said)


def _purchase(plan: CuttingPlan) -> Purchase:
    """Sticks that are bought; `holds` of a pack is its length, `missing` counts pieces."""
    packs = (
        Pack(cut.stick.key, cut.stick.supplier, cut.stick.length, cut.stick.price) for cut in plan.bought
    )
    return Purchase(counted(packs), plan.bound, len(plan.unplaced))


def cutting_findings(
    needs: Sequence[LengthNeed], sticks: Sequence[Stick], saw: Saw, plan: CuttingPlan
) -> Iterator[Finding]:
    """What is longer than any stick, what no stick is left for, and a kerf wider than the piece."""
    longest = max((stick.length - saw.trim for stick in sticks), default=0)
    left = Counter(plan.unplaced)
    for need in needs:
        if sticks and need.length.nm > longest:
            yield refused("longer_than_stock", need.key, length=need.length.nm, longest=longest)
        elif left[need.length.nm]:
            yield from no_supplier(need.key, left.pop(need.length.nm))
        if saw.kerf > need.length.nm:
            yield mind("kerf_wider_than_piece", need.key, kerf=saw.kerf, length=need.length.nm)
    if not plan.unplaced and not plan.proved_least:
        yield mind("not_proved_least", needs[0].key, cost=plan.cost, bound=plan.bound)


def _workings(needs: Sequence[LengthNeed], kits: Kits, saw: Saw, plan: CuttingPlan) -> Iterator[Working]:
    for need in needs:
        yield counting(need.count, kits)
    patterns = Counter(plan.sticks)
    for cut, count in patterns.items():
        yield working(
            "cut",
            stick=cut.stick.key,
            length=cut.stick.length,
            sticks=count,
            kerf=saw.kerf,
            trim=saw.trim,
            pieces=tuple(sorted(Counter(cut.pieces).items(), reverse=True)),
            rest=cut.rest(saw),
        )
