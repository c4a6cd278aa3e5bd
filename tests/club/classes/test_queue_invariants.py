"""Whatever is done to a class's list, in whatever order: what always holds.

Beside the book runs a plain model of who waits since when, kept without its code.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from club.classes.domain.errors import ClassError
from club.classes.domain.places import ClassLathe, Place, layout
from club.classes.domain.queue import (
    ENDED,
    Book,
    State,
    accept,
    cancel,
    hold,
    lapse,
    move,
    offer_next,
    sign_up,
    swap,
    with_places,
)

START = datetime(2027, 4, 8, 16, 0, tzinfo=UTC)
PEOPLE = st.integers(1, 7)
LATHES = st.sets(st.integers(1, 4), min_size=1)
PLACES = st.none() | st.builds(Place, st.integers(1, 4), st.integers(1, 2))
HOURS = st.integers(1, 5)


class ListOfAClass(RuleBasedStateMachine):
    def __init__(self) -> None:
        super().__init__()
        self.book = Book(0)
        self.before = self.book
        self.now = START
        self.in_line: list[int] = []

    def _do(self, change: Callable[[Book], Book]) -> bool:
        """Whether it was done; what is refused leaves the book as it was."""
        try:
            after = change(self.book)
        except ClassError:
            self.before = self.book
            return False
        self.before, self.book = self.book, after
        return True

    def _state(self, person: int) -> State | None:
        live = [each.state for each in self.book.sign_ups if each.person == person]
        return next((state for state in live if state not in ENDED), None)

    @initialize(lathes=LATHES, places=st.integers(0, 8))
    def begin(self, lathes, places):
        self._places_change(lathes, places)

    @rule(lathes=LATHES, places=st.integers(0, 8))
    def places_change(self, lathes, places):
        self._places_change(lathes, places)

    def _places_change(self, lathes, places):
        stand = layout([ClassLathe(number) for number in lathes], 2)

        assert self._do(lambda book: with_places(book, min(places, len(stand)), stand))

    @rule(person=PEOPLE, place=PLACES)
    def somebody_signs_up(self, person, place):
        there = self._state(person) is not None
        waits = bool(self.in_line) or not self.book.room

        if self._do(lambda book: sign_up(book, person, place)):
            assert not there
            assert self._state(person) is (State.WAITING if waits else State.IN)
            self.in_line += [person] if waits else []
        else:
            assert there or not waits

    @rule(person=PEOPLE, place=PLACES, hours=HOURS)
    def a_place_is_held(self, person, place, hours):
        if self._do(lambda book: hold(book, person, self.now + timedelta(hours=hours), place)):
            assert not self.in_line
            assert self._state(person) is State.HELD

    @rule(person=PEOPLE)
    def somebody_accepts(self, person):
        asked = self._state(person) in {State.HELD, State.OFFERED}

        assert self._do(lambda book: accept(book, person)) is asked

    @rule(person=PEOPLE)
    def somebody_cancels(self, person):
        there = self._state(person) is not None

        assert self._do(lambda book: cancel(book, person)) is there
        self.in_line = [each for each in self.in_line if each != person]

    @rule(person=PEOPLE, place=PLACES.filter(bool))
    def somebody_moves(self, person, place):
        if self._do(lambda book: move(book, person, place)):
            assert self.book.of(person).place == place

    @rule(person=PEOPLE, other=PEOPLE)
    def two_swap(self, person, other):
        if self._do(lambda book: swap(book, person, other)):
            assert self.book.of(person).place == self.before.of(other).place
            assert self.book.of(other).place == self.before.of(person).place

    @rule(place=PLACES, hours=HOURS)
    def the_next_is_offered(self, place, hours):
        if self._do(lambda book: offer_next(book, self.now + timedelta(hours=hours), place)):
            first = self.in_line.pop(0)

            assert self._state(first) is State.OFFERED

    @rule(hours=HOURS)
    def time_passes(self, hours):
        self.now += timedelta(hours=hours)

        assert self._do(lambda book: lapse(book, self.now))
        assert all(each.until > self.now for each in self.book.sign_ups if each.until)

    @invariant()
    def nobody_comes_to_take_a_place_while_none_is_left(self):
        took, take = ({each.person for each in book.taking} for book in (self.before, self.book))

        assert len(take) <= self.book.places or take <= took

    @invariant()
    def nobody_and_no_place_is_there_twice(self):
        live = [each.person for each in self.book.sign_ups if each.state not in ENDED]
        stands = [each.place for each in self.book.taking if each.place]

        assert len(live) == len(set(live))
        assert len(stands) == len(set(stands))

    @invariant()
    def those_who_wait_stand_in_the_order_they_came(self):
        assert [each.person for each in self.book.waiting] == self.in_line

    @invariant()
    def queue_numbers_rise_and_stay(self):
        numbers = [each.number for each in self.book.sign_ups]
        kept = zip(self.before.sign_ups, self.book.sign_ups, strict=False)

        assert numbers == list(range(1, self.book.last_number + 1))
        assert all((old.person, old.number) == (new.person, new.number) for old, new in kept)

    @invariant()
    def kit_numbers_are_those_in_s_alone_and_stay_with_them(self):
        kits = [each.kit for each in self.book.taking if each.state is State.IN]
        kept = zip(self.before.sign_ups, self.book.sign_ups, strict=False)

        assert None not in kits
        assert len(kits) == len(set(kits))
        assert all(each.kit is None for each in self.book.sign_ups if each.state is not State.IN)
        assert all(old.kit in {None, new.kit} for old, new in kept if new.state is State.IN)

    @invariant()
    def a_kit_that_is_new_has_a_number_up_to_the_heads(self):
        had = {each.kit for each in self.before.sign_ups}
        new = [each.kit for each in self.book.taking if each.kit not in had and each.kit]

        assert all(kit <= len(self.book.taking) for kit in new)

    @invariant()
    def who_ended_or_waits_holds_nothing(self):
        idle = [each for each in self.book.sign_ups if not each.takes]

        assert all((each.place, each.kit, each.until) == (None, None, None) for each in idle)

    @invariant()
    def what_has_ended_stays_so(self):
        kept = zip(self.before.sign_ups, self.book.sign_ups, strict=False)

        assert all(old == new for old, new in kept if old.state in ENDED)


TestTheListOfAClass = ListOfAClass.TestCase
TestTheListOfAClass.settings = settings(max_examples=150, stateful_step_count=40, deadline=None)
