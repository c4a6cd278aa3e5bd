"""What is left on the shelf for whoever comes after, once a line has taken its part.

Only what lies on the shelf goes back there: the rest of a stick or board, pieces torn off a sheet that nobody
needs. What is left of something bought isn't there yet, so it never counts.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import TypeVar

from projects.kit.line import Line
from projects.kit.supplies import (
    BlankLot,
    Board,
    CountSupply,
    HeldStick,
    SheetSupply,
    StickSupply,
    Supply,
)
from projects.kit.taken import Taken
from projects.library.domain.materials import Need, SheetNeed

# The articles that meet each need, by the need's key.
Articles = Mapping[str, Collection[str]]
NO_ARTICLES: Articles = MappingProxyType({})
T = TypeVar("T")


def left_after(supply: Supply, line: Line) -> Supply:
    """The line's own supply without what the line took of it, and with what goes back."""
    return _without(supply, line.taken)


def _without(supply: Supply, taken: Taken) -> Supply:
    if isinstance(supply, CountSupply):
        return replace(supply, on_shelf=max(supply.on_shelf - taken.count, 0))
    if isinstance(supply, SheetSupply):
        return _sheets(supply, taken)
    if isinstance(supply, StickSupply):
        return replace(supply, shelf=_sticks(supply.shelf, taken))
    return replace(supply, lots=_lots(supply.lots, taken), shelf=_boards(supply.shelf, taken))


def _sheets(supply: SheetSupply, taken: Taken) -> SheetSupply:
    sheets = list(supply.sheets)
    for sheet in taken.sheets:
        _take(sheets, sheet)
    pieces = max(supply.pieces - taken.count, 0) + taken.over
    return replace(supply, pieces=pieces, sheets=tuple(sheets))


def _sticks(shelf: Iterable[HeldStick], taken: Taken) -> tuple[HeldStick, ...]:
    left = list(shelf)
    for cut in taken.sticks:
        found = next((each for each in left if (each.key, each.length) == (cut.key, cut.length)), None)
        if found:
            _take(left, found)
            left += [replace(found, length=cut.rest)] if cut.rest else []
    return tuple(left)


def _lots(lots: Iterable[BlankLot], taken: Taken) -> tuple[BlankLot, ...]:
    used = {each.lot.key: each.count for each in taken.lots}
    left = (replace(lot, count=lot.count - used.get(lot.key, 0)) for lot in lots)
    return tuple(lot for lot in left if lot.count > 0)


def _boards(shelf: Iterable[Board], taken: Taken) -> tuple[Board, ...]:
    left = list(shelf)
    for cut in taken.boards:
        if _take(left, cut.board) and cut.rest:
            left.append(replace(cut.board, length=cut.rest))
    return tuple(left)


def _take(left: list[T], one: T) -> bool:
    """Take one of these off the list, if there is one."""
    if one not in left:
        return False
    left.remove(one)
    return True


def left_for(
    supplies: Mapping[str, Supply], line: Line, needs: Mapping[str, Need], articles: Articles = NO_ARTICLES
) -> dict[str, Supply]:
    """All supplies, by the keys of `needs`, after this line took its part of those it shares.

    Needs share a shelf when they have their specification or one of their `articles` in common. Where it is
    only some of these, all is taken to have come from the shared ones: a shelf never counts twice.
    """
    left = dict(supplies)
    lines = [needs[key] for key in line.keys]
    for key in (supplies.keys() & needs.keys()) - set(line.keys):
        sharing = [each for each in lines if _share(needs[key], each, articles)]
        if sharing:
            left[key] = _without(supplies[key], _seen_by(needs[key], sharing[0], line.taken))
    return left


def _share(one: Need, other: Need, articles: Articles) -> bool:
    if one.kind != other.kind:
        return False
    met_by_one = set(articles.get(one.key, ())) & set(articles.get(other.key, ()))
    return one.specification == other.specification or bool(met_by_one)


def _seen_by(need: Need, other: Need, taken: Taken) -> Taken:
    """What `other` took, as far as it touches `need`: pieces torn from sheets are for one specification, and
    those torn anew have one size."""
    if not isinstance(need, SheetNeed) or not isinstance(other, SheetNeed):
        return taken
    if need.specification != other.specification:
        return replace(taken, count=0, over=0)
    alike = (need.width, need.length) == (other.width, other.length)
    return taken if alike else replace(taken, over=0)
