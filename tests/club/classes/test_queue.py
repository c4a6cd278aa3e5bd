"""Signing up, waiting, moving: what happens to each person on a class's list."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from club.classes.domain.errors import ClassError
from club.classes.domain.places import ClassLathe, Place, layout, place_named
from club.classes.domain.queue import (
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

NOON = datetime(2027, 4, 8, 16, 0, tzinfo=UTC)
TWO = layout([ClassLathe(2), ClassLathe(3)], 1)
A2, A3 = TWO


def book(places: int = 2, *people: int) -> Book:
    """A class of two lathes; each takes the next free place, and who is too many waits."""
    made = Book(places, TWO)
    for person in people:
        made = sign_up(made, person, made.free[0] if made.free else None)
    return made


def states(made: Book) -> dict[int, str]:
    return {each.person: each.state.value for each in made.sign_ups}


def refusal(change, *given) -> tuple[str, dict[str, object]]:
    with pytest.raises(ClassError) as caught:
        change(*given)
    return caught.value.code, caught.value.values


class TestSigningUp:
    def test_takes_a_place_and_the_first_kit(self):
        mine = book(2, 11).of(11)

        assert (mine.state, mine.place, mine.kit, mine.number) == (State.IN, A2, 1, 1)

    def test_waits_once_the_class_is_full(self):
        made = book(2, 11, 12, 13)

        assert states(made) == {11: "in", 12: "in", 13: "waiting"}
        assert (made.of(13).place, made.of(13).kit, made.of(13).number) == (None, None, 3)

    def test_never_passes_those_who_wait_where_somebody_left(self):
        made = sign_up(cancel(book(2, 11, 12, 13), 11), 14)

        assert states(made) == {11: "cancelled", 12: "in", 13: "waiting", 14: "waiting"}
        assert made.room == 1

    def test_may_leave_the_place_open(self):
        assert sign_up(book(), 11).of(11).place is None

    def test_is_refused_to_one_who_is_on_the_list(self):
        assert refusal(sign_up, book(2, 11), 11) == ("twice", {"person": 11})

    def test_is_refused_to_one_who_waits(self):
        assert refusal(sign_up, book(1, 11, 12), 12) == ("twice", {"person": 12})

    def test_on_a_taken_place_is_refused_with_who_has_it(self):
        assert refusal(sign_up, book(2, 11), 12, A2) == ("place_taken", {"place": A2, "person": 11})

    def test_on_a_place_the_class_has_not_is_refused(self):
        assert refusal(sign_up, book(), 11, Place(9, 1)) == ("no_such_place", {"place": Place(9, 1)})

    def test_again_after_cancelling_comes_last_in_the_queue(self):
        made = sign_up(cancel(book(1, 11, 12, 13), 12), 12)

        assert [each.person for each in made.waiting] == [13, 12]

    def test_to_a_class_of_no_places_waits(self):
        assert states(book(0, 11)) == {11: "waiting"}


class TestCancelling:
    def test_frees_place_and_kit(self):
        made = cancel(book(2, 11, 12), 11)
        gone = made.sign_ups[0]

        assert (gone.state, gone.place, gone.kit) == (State.CANCELLED, None, None)
        assert made.free == (A2,)

    def test_gives_the_kit_number_to_the_next_who_comes(self):
        made = sign_up(cancel(book(2, 11, 12), 11), 13, A2)

        assert (made.of(12).kit, made.of(13).kit) == (2, 1)

    def test_is_refused_where_nobody_is(self):
        assert refusal(cancel, book(), 11) == ("not_on_the_list", {"person": 11})

    def test_is_refused_twice(self):
        assert refusal(cancel, cancel(book(2, 11), 11), 11)[0] == "not_on_the_list"


class TestMoving:
    def test_keeps_the_kit(self):
        made = move(book(2, 11), 11, A3)

        assert (made.of(11).place, made.of(11).kit) == (A3, 1)

    def test_to_one_s_own_place_changes_nothing(self):
        assert move(book(2, 11), 11, A2) == book(2, 11)

    def test_to_a_taken_place_is_refused(self):
        assert refusal(move, book(2, 11, 12), 11, A3)[0] == "place_taken"

    def test_is_refused_to_one_who_waits(self):
        waits = {"person": 12, "state": State.WAITING}

        assert refusal(move, book(1, 11, 12), 12, A3) == ("without_place", waits)


class TestSwapping:
    def test_changes_places_and_keeps_kits(self):
        made = swap(book(2, 11, 12), 11, 12)

        assert [(each.place, each.kit) for each in made.sign_ups] == [(A3, 1), (A2, 2)]

    def test_with_oneself_changes_nothing(self):
        assert swap(book(2, 11), 11, 11) == book(2, 11)

    @pytest.mark.parametrize(("one", "other"), [(11, 13), (13, 11)])
    def test_is_refused_with_one_who_waits(self, one, other):
        assert refusal(swap, book(2, 11, 12, 13), one, other)[0] == "without_place"

    def test_is_refused_with_one_whose_place_is_open(self):
        assert refusal(swap, sign_up(book(2, 11), 12), 11, 12)[0] == "without_place"

    @pytest.mark.parametrize(("one", "other"), [(11, 12), (12, 11)])
    def test_puts_nobody_at_a_lathe_that_is_not_there_any_more(self, one: int, other: int):
        made = with_places(book(2, 11, 12), 1, (A2,))

        assert refusal(swap, made, one, other) == ("no_such_place", {"place": A3})


class TestOffering:
    def test_goes_to_whoever_waits_longest(self):
        made = offer_next(cancel(book(2, 11, 12, 13, 14), 11), NOON, A2)

        assert states(made) == {11: "cancelled", 12: "in", 13: "offered", 14: "waiting"}
        assert (made.of(13).place, made.of(13).until, made.of(13).kit) == (A2, NOON, None)

    def test_takes_the_place_so_that_there_is_no_second_offer(self):
        made = offer_next(cancel(book(2, 11, 12, 13, 14), 11), NOON)

        assert refusal(offer_next, made, NOON) == ("full", {"places": 2})

    def test_is_refused_where_nobody_waits(self):
        assert refusal(offer_next, book(2, 11), NOON) == ("nobody_waiting", {})

    def test_accepted_is_in_with_a_kit(self):
        made = accept(offer_next(cancel(book(2, 11, 12, 13), 11), NOON, A2), 13)

        assert (made.of(13).state, made.of(13).kit, made.of(13).until) == (State.IN, 1, None)

    @pytest.mark.parametrize("person", [11, 13])
    def test_can_t_be_accepted_by_one_who_has_none(self, person):
        assert refusal(accept, book(2, 11, 12, 13), person)[0] == "not_held"


class TestHolding:
    def test_takes_a_place_without_a_kit(self):
        mine = hold(book(), 11, NOON, A2).of(11)

        assert (mine.state, mine.place, mine.kit, mine.until) == (State.HELD, A2, None, NOON)

    def test_keeps_the_last_place_from_others(self):
        made = sign_up(hold(book(1), 11, NOON), 12)

        assert states(made) == {11: "held", 12: "waiting"}

    def test_is_refused_in_a_full_class(self):
        assert refusal(hold, book(1, 11), 12, NOON) == ("full", {"places": 1})

    def test_is_refused_while_others_wait(self):
        assert refusal(hold, cancel(book(1, 11, 12), 11), 13, NOON)[0] == "full"

    def test_accepted_is_in(self):
        assert states(accept(hold(book(), 11, NOON), 11)) == {11: "in"}


class TestLapsing:
    def test_happens_at_the_very_time(self):
        made = hold(book(), 11, NOON, A2)

        assert states(lapse(made, NOON - timedelta(seconds=1))) == {11: "held"}
        assert states(lapse(made, NOON)) == {11: "lapsed"}
        assert lapse(made, NOON).free == TWO

    def test_of_an_offer_lets_the_next_one_be_asked(self):
        made = offer_next(cancel(book(1, 11, 12, 13), 11), NOON)

        assert states(offer_next(lapse(made, NOON), NOON)) == {11: "cancelled", 12: "lapsed", 13: "offered"}

    def test_never_touches_one_who_has_accepted(self):
        made = accept(hold(book(), 11, NOON), 11)

        assert lapse(made, NOON) == made


class TestLosingPlaces:
    def test_drops_nobody_and_says_by_how_many_the_class_is_over(self):
        made = with_places(book(2, 11, 12), 1, TWO)

        assert states(made) == {11: "in", 12: "in"}
        assert (made.over, made.room) == (1, 0)

    def test_lets_nobody_in_until_it_is_no_longer_over(self):
        made = sign_up(cancel(with_places(book(2, 11, 12), 1, TWO), 11), 13)

        assert states(made) == {11: "cancelled", 12: "in", 13: "waiting"}

    def test_to_less_than_none_is_refused(self):
        assert refusal(with_places, book(), -1, TWO) == ("less_than_none", {"wanted": -1})

    def test_to_a_broken_lathe_moves_two_people_and_no_kit(self):
        """Twelve places on lathes 2 to 7 in two sittings; 3 goes out of service, 8 stands ready.

        3a and 3b move to 8a and 8b; nobody else moves and all twelve kits keep their numbers.
        """
        full = Book(12, layout([ClassLathe(number) for number in range(2, 8)], 2))
        for person in range(12):
            full = sign_up(full, person, full.free[0])
        without = layout([ClassLathe(number) for number in (2, 4, 5, 6, 7, 8)], 2)

        lost = with_places(full, 12, without)
        mended = lost
        for each in lost.misplaced:
            mended = move(mended, each.person, Place(8, each.place.sitting))

        assert {each.place.name for each in lost.misplaced} == {"3a", "3b"}
        moved = {
            before.place.name: after.place.name
            for before, after in zip(full.sign_ups, mended.sign_ups, strict=True)
            if before.place != after.place
        }
        assert moved == {"3a": "8a", "3b": "8b"}
        assert [each.kit for each in mended.sign_ups] == list(range(1, 13))
        assert mended.misplaced == ()
        assert place_named("8a") not in mended.free
