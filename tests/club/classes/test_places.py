"""Places: lathe and sitting."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.classes.domain.errors import ClassError
from club.classes.domain.places import ClassLathe, Place, capacity, free, layout, next_kit, place_named

PLACES = st.builds(Place, st.integers(1, 999), st.integers(1, 26))
# Ten lathes: 1 is the demonstration's, 9 has no working drive, 10 doesn't fit.
TEN = [
    ClassLathe(1, set_aside=True),
    *(ClassLathe(number) for number in range(2, 9)),
    ClassLathe(9, in_service=False),
    ClassLathe(10, fits=False),
]


def names(places: tuple[Place, ...]) -> str:
    return " ".join(place.name for place in places)


def test_a_place_is_named_by_lathe_and_sitting():
    assert [Place(5, 1).name, Place(12, 2).name] == ["5a", "12b"]


@given(PLACES)
def test_a_name_leads_back_to_its_place(place):
    assert place_named(place.name) == place


def test_a_name_may_be_typed_with_blanks_and_in_capitals():
    assert place_named(" 5 A ") == Place(5, 1)


@pytest.mark.parametrize("text", ["", "a5", "5", "5aa", "0a", "05a", "1000a", "5ä", "\u0665a", "5a\x00"])
def test_what_is_no_place_is_refused(text):
    with pytest.raises(ClassError) as caught:
        place_named(text)

    assert (caught.value.code, caught.value.values) == ("bad_place", {"text": text})


def test_a_very_long_text_is_quoted_short():
    with pytest.raises(ClassError) as caught:
        place_named("5" * 100_000)

    assert caught.value.values == {"text": "5" * 20}


def test_places_stand_in_the_order_people_read_them():
    assert names(tuple(sorted(map(place_named, ["10a", "3b", "3a"])))) == "3a 3b 10a"


def test_only_lathes_that_fit_and_are_in_service_and_not_the_demonstration_s_give_places():
    """Lathes 2 to 8, two sittings: 14 places."""
    assert names(layout(TEN, 2)) == "2a 2b 3a 3b 4a 4b 5a 5b 6a 6b 7a 7b 8a 8b"


def test_places_come_in_the_lathes_order_however_these_are_handed_in():
    assert layout(reversed(TEN), 2) == layout(TEN, 2)


class TestCapacity:
    def test_is_all_places_where_nobody_lowered_it(self):
        assert capacity(layout(TEN, 2)) == 14

    def test_is_lowered_by_hand(self):
        """Six collets for the students, two sittings: 12 of the 14 places."""
        assert capacity(layout(TEN, 2), by_hand=12) == 12

    def test_may_be_lowered_to_none(self):
        assert capacity(layout(TEN, 2), by_hand=0) == 0

    def test_is_never_raised_by_hand(self):
        with pytest.raises(ClassError) as caught:
            capacity(layout(TEN, 2), by_hand=15)

        assert (caught.value.code, caught.value.values) == ("more_than_fit", {"wanted": 15, "most": 14})

    def test_is_never_less_than_none(self):
        with pytest.raises(ClassError, match="less_than_none"):
            capacity(layout(TEN, 2), by_hand=-1)

    def test_is_none_without_lathes(self):
        assert capacity(layout([], 2)) == 0


class TestFreePlaces:
    def test_are_those_nobody_has(self):
        assert names(free(layout(TEN[:4], 1), {Place(3, 1)})) == "2a 4a"

    def test_come_from_the_emptiest_sitting_first(self):
        """Two in the first sitting, one in the second: the second is next."""
        taken = {place_named("2a"), place_named("3a"), place_named("2b")}

        assert names(free(layout(TEN[:4], 2), taken)) == "3b 4b 4a"

    def test_begin_with_the_first_sitting_where_nobody_has_come_yet(self):
        assert names(free(layout(TEN[:3], 2), ())) == "2a 3a 2b 3b"


class TestKitNumbers:
    def test_run_from_one(self):
        assert next_kit(()) == 1

    def test_fill_the_gap_that_somebody_left(self):
        assert next_kit({1, 2, 4}) == 3

    @given(st.sets(st.integers(1, 30)))
    def test_are_never_given_twice_nor_beyond_the_heads(self, given_before):
        number = next_kit(given_before)

        assert number not in given_before
        assert number <= len(given_before) + 1
