"""Lines of things counted, torn from sheets, poured and glued."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from math import ceil

from projects.kit.amounts import Soak, adhesive_ng, liquid_nl
from projects.kit.boards import pieces_from
from projects.kit.counting import Kits
from projects.kit.line import COMMON_PRACTICE, Line, working
from projects.kit.offers import Pack
from projects.kit.packs import cheapest_packs
from projects.kit.supplies import CountSupply, Sheet, SheetSupply
from projects.kit.taken import Taken
from projects.library.domain.facts import Working
from projects.library.domain.findings import Finding, refused
from projects.library.domain.materials import AdhesiveNeed, ConsumedNeed, LiquidNeed, PieceNeed, SheetNeed
from projects.library.domain.recipe import Recipe


def piece_line(need: PieceNeed, kits: Kits, supply: CountSupply) -> Line:
    """Bought by the piece, also for the spare kits."""
    return covered(need, need.count * kits.all, supply, counting(need.count, kits))


def consumed_line(need: ConsumedNeed, kits: Kits, supply: CountSupply) -> Line:
    """Used up by a head; a spare kit has no head of its own."""
    how = working("per_head", count=need.count, heads=kits.heads.all, need=need.count * kits.heads.all)
    return covered(need, need.count * kits.heads.all, supply, how)


def counting(count: int, kits: Kits) -> Working:
    """How pieces are counted: each kit's, for students, demonstrations and spares."""
    heads = kits.heads
    return working(
        "per_kit",
        count=count,
        students=heads.students,
        demonstrations=heads.demonstrations,
        spares=kits.spares,
        need=count * kits.all,
    )


def covered(
    need: PieceNeed | ConsumedNeed | LiquidNeed | AdhesiveNeed,
    amount: int,
    supply: CountSupply,
    how: Working,
    *more: Finding,
) -> Line:
    """The amount from the shelf as far as that goes, the rest in whole packs."""
    on_shelf = min(max(supply.on_shelf, 0), amount)
    purchase = cheapest_packs(amount - on_shelf, supply.packs)
    missing = no_supplier(need.key, purchase.missing)
    findings = (*more, *missing)
    return Line((need.key,), need.kind, amount, on_shelf, purchase, (how,), findings, taken=Taken(on_shelf))


def no_supplier(key: str, missing: int) -> tuple[Finding, ...]:
    """So much is missing, because nobody is known to sell it."""
    return (refused("no_supplier", key, missing=missing),) if missing else ()


def sheet_line(need: SheetNeed, kits: Kits, supply: SheetSupply) -> Line:
    """Pieces cut already, then whole sheets of the shelf, then packs of sheets; counted in pieces."""
    amount = need.count * kits.all
    gives = {
        sheet: pieces_from(sheet, need.width.nm, need.length.nm)
        for sheet in {*supply.sheets, *(pack.sheet for pack in supply.packs)}
    }
    packs = [
        Pack(pack.article, pack.supplier, gives[pack.sheet] * pack.sheets, pack.price)
        for pack in supply.packs
    ]
    taken = _torn(amount, supply, gives)
    on_shelf = taken.count + sum(gives[sheet] for sheet in taken.sheets) - taken.over
    purchase = cheapest_packs(amount - on_shelf, packs)
    findings = no_supplier(need.key, purchase.missing)
    if gives and not any(gives.values()) and findings:
        findings = (refused("larger_than_sheets", need.key, missing=purchase.missing),)
    workings = (counting(need.count, kits), *_tearing(gives, taken))
    return Line((need.key,), need.kind, amount, on_shelf, purchase, workings, findings, taken=taken)


def _torn(amount: int, supply: SheetSupply, gives: Mapping[Sheet, int]) -> Taken:
    """Pieces torn already go first, then whole sheets one after the other."""
    ready = min(amount, max(supply.pieces, 0))
    left, sheets = amount - ready, []
    for sheet in supply.sheets:
        if left > 0 and gives[sheet]:
            sheets.append(sheet)
            left -= gives[sheet]
    return Taken(ready, tuple(sheets), over=max(-left, 0))


def _tearing(gives: Mapping[Sheet, int], taken: Taken) -> Iterator[Working]:
    for sheet, each in sorted(gives.items(), key=lambda pair: (pair[0].width, pair[0].length)):
        yield working("per_sheet", width=sheet.width, length=sheet.length, pieces=each)
    if taken.count:
        yield working("torn_already", pieces=taken.count)
    if taken.sheets:
        yield working("torn_now", sheets=len(taken.sheets), over=taken.over)


def liquid_line(
    need: LiquidNeed, recipe: Recipe, areas: tuple[int, int], kits: Kits, supply: CountSupply, soak: Soak
) -> Line:
    """A finish for every head, since a spare takes the place of a piece that was never finished.

    `areas` are surface and end grain of one piece, in µm². A fresh cloth is taken for each coat, and the
    amount of the need stays in it.
    """
    surface, end_grain = areas
    coats = [coat for coat in recipe.finish if coat.finish == need.finish]
    spreads = [coat.spread_cm2_per_ml for coat in coats if coat.spread_cm2_per_ml]
    in_cloth = need.in_cloth.nl if need.in_cloth else 0
    piece = sum(
        (liquid_nl(surface, end_grain, spread, soak) for spread in spreads), Fraction(in_cloth * len(coats))
    )
    unknown = (refused("no_spread", need.key, finish=need.finish),) if len(spreads) < len(coats) else ()
    how = working(
        "liquid",
        COMMON_PRACTICE,
        surface_um2=surface,
        end_grain_um2=end_grain,
        end_grain_more=soak.end_grain_more,
        lost=soak.lost,
        coats=len(coats),
        spreads=tuple(spreads),
        in_cloth_nl=in_cloth,
        heads=kits.heads.all,
    )
    return covered(need, ceil(piece * kits.heads.all), supply, how, *unknown)


def adhesive_line(need: AdhesiveNeed, kits: Kits, supply: CountSupply) -> Line:
    """Glue for every kit, spares too: they are glued up beforehand."""
    amount = adhesive_ng(need.area.um2, need.grams_per_m2, need.loss_percent, kits.all)
    how = working(
        "adhesive",
        COMMON_PRACTICE,
        area_um2=need.area.um2,
        grams_per_m2=need.grams_per_m2,
        loss_percent=need.loss_percent,
        kits=kits.all,
    )
    return covered(need, amount, supply, how)
