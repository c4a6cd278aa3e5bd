"""Who is on a class's list, and how that changes: a new book for each change, or a ClassError and none.

Held, in and offered take one of the places; nobody comes to take one while none is left. Places that are lost
drop nobody: the class is over by so many until somebody acts. Whoever signs up while others wait, waits
behind them, even where there is room: that is kept for the next offer.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum

from club.classes.domain.errors import ClassError
from club.classes.domain.places import Place, free, next_kit


class State(StrEnum):
    """Held: kept until a time for someone who hasn't said yes. Offered: the same for one who waited."""

    HELD = "held"
    IN = "in"
    WAITING = "waiting"
    OFFERED = "offered"
    CANCELLED = "cancelled"
    LAPSED = "lapsed"


TAKING = frozenset({State.HELD, State.IN, State.OFFERED})
ENDED = frozenset({State.CANCELLED, State.LAPSED})


@dataclass(frozen=True)
class SignUp:
    """`number` is the one in the queue, given once. `until` (UTC) is when a held or offered place lapses.

    A place may still be open for one who takes one. The kit number comes with being in, and stays with the
    person wherever they move; whoever is out gives it back.
    """

    person: int
    number: int
    state: State
    place: Place | None = None
    kit: int | None = None
    until: datetime | None = None

    @property
    def takes(self) -> bool:
        return self.state in TAKING


@dataclass(frozen=True)
class Book:
    """A class's list: how many it takes, where they may stand, and the last queue number given."""

    places: int
    layout: tuple[Place, ...] = ()
    sign_ups: tuple[SignUp, ...] = ()
    last_number: int = 0

    @property
    def taking(self) -> tuple[SignUp, ...]:
        return tuple(sign_up for sign_up in self.sign_ups if sign_up.takes)

    @property
    def waiting(self) -> tuple[SignUp, ...]:
        """Those who wait, the next one first."""
        found = (sign_up for sign_up in self.sign_ups if sign_up.state is State.WAITING)
        return tuple(sorted(found, key=lambda sign_up: sign_up.number))

    @property
    def room(self) -> int:
        """How many more the class takes."""
        return max(0, self.places - len(self.taking))

    @property
    def over(self) -> int:
        """How many take a place that is lost."""
        return max(0, len(self.taking) - self.places)

    @property
    def free(self) -> tuple[Place, ...]:
        """Where nobody stands, the emptiest sitting first."""
        return free(self.layout, {sign_up.place for sign_up in self.taking if sign_up.place})

    @property
    def misplaced(self) -> tuple[SignUp, ...]:
        """Those whose place isn't there any more, as when its lathe went out of service."""
        return tuple(each for each in self.taking if each.place and each.place not in self.layout)

    def of(self, person: int) -> SignUp:
        """The one sign-up of a person that hasn't ended; raises not_on_the_list."""
        found = self._live(person)
        if found is None:
            raise ClassError("not_on_the_list", person=person)
        return found

    def _live(self, person: int) -> SignUp | None:
        mine = (sign_up for sign_up in self.sign_ups if sign_up.person == person)
        return next((sign_up for sign_up in mine if sign_up.state not in ENDED), None)

    def with_new(self, sign_up: SignUp) -> Book:
        """The book with the next number given to this one; raises twice."""
        if self._live(sign_up.person):
            raise ClassError("twice", person=sign_up.person)
        number = self.last_number + 1
        return replace(self, sign_ups=(*self.sign_ups, replace(sign_up, number=number)), last_number=number)

    def with_changed(self, *changed: SignUp) -> Book:
        """The book with these in the place of those of their numbers."""
        by_number = {sign_up.number: sign_up for sign_up in changed}
        return replace(self, sign_ups=tuple(by_number.get(each.number, each) for each in self.sign_ups))

    def check_free(self, place: Place | None, for_person: int) -> None:
        """Raises no_such_place or place_taken (by whom)."""
        if place is None:
            return
        if place not in self.layout:
            raise ClassError("no_such_place", place=place)
        for sign_up in self.taking:
            if sign_up.place == place and sign_up.person != for_person:
                raise ClassError("place_taken", place=place, person=sign_up.person)


def sign_up(book: Book, person: int, place: Place | None = None) -> Book:
    """In, with a kit number, where there is room and nobody waits; else waiting, and then without a place.

    Raises twice, no_such_place, place_taken.
    """
    if not book.room or book.waiting:
        return book.with_new(SignUp(person, 0, State.WAITING))
    book.check_free(place, person)
    return book.with_new(SignUp(person, 0, State.IN, place, _next_kit(book)))


def hold(book: Book, person: int, until: datetime, place: Place | None = None) -> Book:
    """A place kept until `until` (UTC) for somebody who hasn't said yes.

    Raises full, also where the room is kept for those who wait; twice, no_such_place, place_taken.
    """
    if not book.room or book.waiting:
        raise ClassError("full", places=book.places)
    book.check_free(place, person)
    return book.with_new(SignUp(person, 0, State.HELD, place, until=until))


def accept(book: Book, person: int) -> Book:
    """Whoever was held or offered a place is in. Let lapse first what has lapsed.

    Raises not_on_the_list; not_held for one who waits or is in.
    """
    mine = book.of(person)
    if mine.state not in {State.HELD, State.OFFERED}:
        raise ClassError("not_held", person=person, state=mine.state)
    return book.with_changed(replace(mine, state=State.IN, kit=_next_kit(book), until=None))


def _next_kit(book: Book) -> int:
    return next_kit({sign_up.kit for sign_up in book.taking if sign_up.kit is not None})


def cancel(book: Book, person: int) -> Book:
    """Place and kit number are free again, and the room is the next one's. Raises not_on_the_list."""
    return book.with_changed(_ended(book.of(person), State.CANCELLED))


def _ended(sign_up: SignUp, state: State) -> SignUp:
    return replace(sign_up, state=state, place=None, kit=None, until=None)


def move(book: Book, person: int, place: Place) -> Book:
    """To a free place, kit and all. Raises not_on_the_list, without_place, no_such_place, place_taken."""
    mine = _taking(book, person)
    book.check_free(place, person)
    return book.with_changed(replace(mine, place=place))


def swap(book: Book, person: int, other: int) -> Book:
    """Two people change places and keep their kits.

    Raises not_on_the_list, without_place; no_such_place for one that is lost: nobody comes to take that.
    """
    one, two = _taking(book, person), _taking(book, other)
    for each in (one, two):
        if each.place is None:
            raise ClassError("without_place", person=each.person, state=each.state)
        if each.place not in book.layout:
            raise ClassError("no_such_place", place=each.place)
    return book.with_changed(replace(one, place=two.place), replace(two, place=one.place))


def _taking(book: Book, person: int) -> SignUp:
    mine = book.of(person)
    if not mine.takes:
        raise ClassError("without_place", person=person, state=mine.state)
    return mine


def offer_next(book: Book, until: datetime, place: Place | None = None) -> Book:
    """Offers room to whoever waits longest, until `until` (UTC).

    Raises nobody_waiting, full, no_such_place, place_taken.
    """
    if not book.waiting:
        raise ClassError("nobody_waiting")
    if not book.room:
        raise ClassError("full", places=book.places)
    first = book.waiting[0]
    book.check_free(place, first.person)
    return book.with_changed(replace(first, state=State.OFFERED, place=place, until=until))


def lapse(book: Book, now: datetime) -> Book:
    """What was held or offered until now (UTC) or earlier has lapsed."""
    late = (each for each in book.sign_ups if each.until is not None and each.until <= now)
    return book.with_changed(*(_ended(each, State.LAPSED) for each in late))


def with_places(book: Book, places: int, layout: tuple[Place, ...]) -> Book:
    """Another number of places, or others. Nobody is dropped or moved. Raises less_than_none."""
    if places < 0:
        raise ClassError("less_than_none", wanted=places)
    return replace(book, places=places, layout=layout)
