"""Lines of blanks: cut ones of the shelf that are dry, then boards of the shelf, then boards bought."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from projects.kit.boards import blanks_from, rest_of
from projects.kit.counting import Kits
from projects.kit.line import Line, working
from projects.kit.lines import counting, no_supplier
from projects.kit.offers import Pack, Purchase
from projects.kit.packs import cheapest_packs
from projects.kit.sawing import Saw
from projects.kit.supplies import BlankLot, BlankSupply, Board
from projects.kit.taken import CutBoard, FromLot, Taken
from projects.library.domain.blank import Blank
from projects.library.domain.facts import Working
from projects.library.domain.findings import Finding, mind, refused
from projects.library.domain.materials import BlankNeed
from projects.library.domain.words import WoodCondition


def blank_line(need: BlankNeed, own: Blank, kits: Kits, supply: BlankSupply) -> Line:
    """`own` is the recipe's blank, for a need that names no other.

    A wet lot never counts for a piece that is finished the same day, which is every piece but one whose blank
    is asked for wet.
    """
    blank = need.blank or own
    amount = need.count * kits.all
    wet = WoodCondition.WET in blank.conditions
    limit = None if wet else supply.dry_percent
    lots = _from_lots(amount, [lot for lot in supply.lots if _is_dry(lot.moisture_percent, limit)])
    dry = [board for board in supply.shelf if _is_dry(board.moisture_percent, limit)]
    boards = _from_boards(amount - sum(each.count for each in lots), dry, blank, supply.saw)
    on_shelf = sum(each.count for each in lots) + sum(each.blanks for each in boards)
    purchase = cheapest_packs(amount - on_shelf, [_pack(board, blank, supply) for board in supply.offers])
    bought = _from_boards(amount - on_shelf, _bought(purchase, supply), blank, supply.saw)
    taken = Taken(lots=lots, boards=boards)
    cuts = (*_cuts(taken), *_cuts(Taken(boards=bought)))
    workings = (counting(need.count, kits), *_workings(blank, supply), *cuts)
    findings = (
        *_too_wet(need.key, supply, limit),
        *_sizes(need.key, blank, supply),
        *_missing(need.key, purchase.missing, supply),
    )
    return Line((need.key,), need.kind, amount, on_shelf, purchase, workings, findings, taken=taken)


def _is_dry(moisture: int | None, limit: int | None) -> bool:
    return limit is None or (moisture is not None and moisture <= limit)


def _from_lots(need: int, lots: Sequence[BlankLot]) -> tuple[FromLot, ...]:
    """One lot after the other."""
    used = []
    for lot in lots:
        count = min(lot.count, need)
        need -= count
        used.append(FromLot(lot, count))
    return tuple(each for each in used if each.count > 0)


def _from_boards(need: int, boards: Sequence[Board], blank: Blank, saw: Saw) -> tuple[CutBoard, ...]:
    """The fewest boards: those that give most first, and at last the one that gives just enough."""
    gives = [(blanks_from(board, blank, saw), board) for board in boards]
    left = sorted((each for each in gives if each[0]), key=lambda each: (-each[0], each[1].length))
    cuts = []
    while need > 0 and left:
        chosen = min((each for each in left if each[0] >= need), key=lambda each: each[0], default=left[0])
        left.remove(chosen)
        count = min(chosen[0], need)
        need -= count
        cuts.append(CutBoard(chosen[1], count, rest_of(chosen[1], blank, count, saw)))
    return tuple(cuts)


def _pack(board: Board, blank: Blank, supply: BlankSupply) -> Pack:
    return Pack(board.key, board.supplier, blanks_from(board, blank, supply.saw), board.price)


def _bought(purchase: Purchase, supply: BlankSupply) -> list[Board]:
    """Every board that is bought, each by itself."""
    offers = {board.key: board for board in supply.offers}
    return [offers[each.pack.article] for each in purchase.bought for _ in range(each.count)]


def _workings(blank: Blank, supply: BlankSupply) -> Iterator[Working]:
    for board in dict.fromkeys((*supply.shelf, *supply.offers)):
        yield working(
            "per_board",
            board=board.key,
            blanks=blanks_from(board, blank, supply.saw),
            across=blank.size.across,
            length=blank.size.length,
            kerf=supply.saw.kerf,
            trim=supply.saw.trim,
        )


def _cuts(taken: Taken) -> Iterator[Working]:
    for each in taken.lots:
        yield working("from_lot", lot=each.lot.key, count=each.count)
    for cut, boards in Counter(taken.boards).items():
        yield working(
            "cut_board",
            board=cut.board.key,
            boards=boards,
            length=cut.board.length,
            blanks=cut.blanks,
            rest=cut.rest,
        )


def _too_wet(key: str, supply: BlankSupply, limit: int | None) -> Iterator[Finding]:
    """Lots and boards that aren't counted, wet or never measured."""
    counted = [(lot.key, lot.count, lot.moisture_percent) for lot in supply.lots]
    counted += [(board.key, 1, board.moisture_percent) for board in supply.shelf]
    for lot, count, moisture in counted:
        if not _is_dry(moisture, limit):
            code = "moisture_not_measured" if moisture is None else "too_wet"
            yield mind(code, key, lot=lot, count=count, moisture=moisture, dry=limit)


def _sizes(key: str, blank: Blank, supply: BlankSupply) -> Iterator[Finding]:
    if supply.saw.kerf > blank.size.length:
        yield mind("kerf_wider_than_piece", key, kerf=supply.saw.kerf, length=blank.size.length)


def _missing(key: str, missing: int, supply: BlankSupply) -> tuple[Finding, ...]:
    """Boards are sold, but none gives a blank, or nobody sells any."""
    if missing and supply.offers:
        return (refused("larger_than_boards", key, missing=missing),)
    return no_supplier(key, missing)
