"""A place is a lathe and a sitting: its name, its order, which are free, and how many a class has."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterable
from dataclasses import dataclass

from club.classes.domain.errors import ClassError

LETTERS = "abcdefghijklmnopqrstuvwxyz"
PLACE = re.compile(r"([1-9][0-9]{0,2})([a-z])", re.ASCII)


@dataclass(frozen=True, order=True)
class Place:
    """Lathe by its number in the workshop, sitting from 1. Ordered as people read them: 3a, 3b, 10a."""

    lathe: int
    sitting: int

    @property
    def name(self) -> str:
        """`5a` is lathe 5 in the first sitting."""
        return f"{self.lathe}{LETTERS[self.sitting - 1]}"


def place_named(text: str) -> Place:
    """The place of a name such as `5a`, in whatever case; raises ClassError bad_place (text)."""
    found = PLACE.fullmatch("".join(text.split()).casefold())
    if found is None:
        raise ClassError("bad_place", text=text[:20])
    return Place(int(found[1]), LETTERS.index(found[2]) + 1)


@dataclass(frozen=True)
class ClassLathe:
    """A lathe as far as places go. `set_aside` is the demonstration's."""

    number: int
    fits: bool = True
    in_service: bool = True
    set_aside: bool = False

    @property
    def counts(self) -> bool:
        return self.fits and self.in_service and not self.set_aside


def layout(lathes: Iterable[ClassLathe], sittings: int) -> tuple[Place, ...]:
    """Every place of those that fit and are in service, in the order of the lathes."""
    numbers = sorted(lathe.number for lathe in lathes if lathe.counts)
    return tuple(Place(number, sitting + 1) for number in numbers for sitting in range(sittings))


def capacity(places: Collection[Place], by_hand: int | None = None) -> int:
    """How many people a class takes: all its places, or fewer where somebody lowered them.

    Raises ClassError more_than_fit (wanted, most): by hand it only goes down; less_than_none (wanted).
    """
    if by_hand is None:
        return len(places)
    if by_hand < 0:
        raise ClassError("less_than_none", wanted=by_hand)
    if by_hand > len(places):
        raise ClassError("more_than_fit", wanted=by_hand, most=len(places))
    return by_hand


def free(places: Iterable[Place], taken: Collection[Place]) -> tuple[Place, ...]:
    """Those nobody has, the emptiest sitting first, so that the sittings fill evenly."""
    heads = Counter(place.sitting for place in taken)
    left = (place for place in places if place not in taken)
    return tuple(sorted(left, key=lambda place: (heads[place.sitting], place.sitting, place.lathe)))


def next_kit(given: Collection[int]) -> int:
    """The lowest kit number nobody has, from 1.

    A number goes with a person, not with a place; one who leaves gives it back, so that bags run from 1 to
    as many as there are places.
    """
    return next(number for number in range(1, len(given) + 2) if number not in given)
