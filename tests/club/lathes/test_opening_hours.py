"""When a workshop is open, read from lines and written again."""

from __future__ import annotations

from datetime import time

import pytest
from django.urls import reverse
from hypothesis import given
from hypothesis import strategies as st

from club.lathes.domain.opening_hours import (
    MOST,
    Opening,
    OpeningError,
    check_openings,
    parse_openings,
    write_openings,
)
from tests.factories import WorkshopFactory

EVENING = (time(18), time(22))


@pytest.mark.parametrize(
    "text",
    [
        "Mon 18:00-22:00",
        "monday 18:00 - 22:00",
        "MON. 18.00\u201322.00",
        "Mon 18 to 22",
        "Mon: 18:00 to 22:00",
        "\n  Mond\u00a018:00 \u2014 22:00 ;\n",
    ],
)
def test_one_stretch_is_read_however_it_is_typed(text):
    assert parse_openings(text) == (Opening(0, *EVENING),)


@pytest.mark.parametrize(
    ("days", "weekdays"),
    [
        ("Mon-Fri", [0, 1, 2, 3, 4]),
        ("Tuesday to Thursday", [1, 2, 3]),
        ("Sat-Mon", [0, 5, 6]),
        ("Tue, Thu", [1, 3]),
        ("Mon-Wed, Sun", [0, 1, 2, 6]),
    ],
)
def test_several_days_may_share_their_hours(days, weekdays):
    assert parse_openings(f"{days} 18:00-22:00") == tuple(Opening(day, *EVENING) for day in weekdays)


def test_one_may_end_at_midnight_or_after_it():
    assert parse_openings("Fri 20:00-24:00\nSat 20:00-2:00") == (
        Opening(4, time(20), time(0)),
        Opening(5, time(20), time(2)),
    )


def test_an_empty_text_has_none():
    assert parse_openings(" \n\n") == ()


@pytest.mark.parametrize(
    ("text", "code", "number"),
    [
        ("whenever Ilse has the key", "unreadable", 1),
        ("Mon 18:00-22:00\n\n18:00-22:00", "unreadable", 3),
        ("Mon", "unreadable", 1),
        ("Mon 6 pm-10 pm", "unreadable", 1),
        ("Mon - 18:00-22:00", "unreadable", 1),
        ("Montag 18:00-22:00", "no_such_day", 1),
        ("Mo 18:00-22:00", "no_such_day", 1),
        ("Mon 18:00-25:00", "no_such_time", 1),
        ("Mon 18:60-22:00", "no_such_time", 1),
        ("Mon 24:00-02:00", "no_such_time", 1),
        ("Mon 18:00-18:00", "no_length", 1),
        ("Mon 9:00-12:00\nMon 11:00-13:00", "overlap", 0),
        ("Sun 22:00-02:00\nMon 01:00-03:00", "overlap", 0),
        ("Mon, Mon 9:00-12:00", "overlap", 0),
        ("\n".join(f"Mon-Sun {hour}:00-{hour}:30" for hour in (9, 11, 13, 15)), "too_many", 0),
    ],
)
def test_what_cannot_be_kept_is_refused_with_its_line(text, code, number):
    with pytest.raises(OpeningError) as caught:
        parse_openings(text)

    assert (caught.value.code, caught.value.number) == (code, number)


def test_stretches_that_touch_are_taken():
    touching = [Opening(1, time(9), time(12)), Opening(1, time(12), time(13))]

    check_openings(touching)

    assert parse_openings(write_openings(touching)) == tuple(touching)


def test_days_in_a_row_are_written_together():
    text = "Thu 18:00-22:00\nMon-Wed 9:00-12:00\nMon 18-22\nSat 20:00-24:00"

    assert write_openings(parse_openings(text)).splitlines() == [
        "Mon-Wed 09:00-12:00",
        "Mon 18:00-22:00",
        "Thu 18:00-22:00",
        "Sat 20:00-24:00",
    ]


# Quarters of an hour, parted so that none overlap.
DAY_PLANS = st.lists(st.integers(0, 95), min_size=0, max_size=6, unique=True).map(sorted)


@given(st.lists(DAY_PLANS, max_size=7))
def test_what_is_written_is_read_as_it_was_and_fits_the_column(plans):
    openings = [
        Opening(weekday, time(begins // 4, begins % 4 * 15), time(ends // 4, ends % 4 * 15))
        for weekday, plan in enumerate(plans)
        for begins, ends in zip(plan[::2], plan[1::2], strict=False)
    ][:MOST]

    written = write_openings(openings)

    assert parse_openings(written) == tuple(openings)
    assert len(written) <= 400  # of the column


@pytest.mark.django_db
class TestTheWorkshop:
    def mended(self, client, opening):
        barn = WorkshopFactory(name="Barn", zone="Europe/Oslo")
        typed = {"name": "Barn", "zone": "Europe/Oslo", "revision": "1", "opening": opening}
        answer = client.post(reverse("lathes:workshop_mend", args=[barn.pk]), typed)
        barn.refresh_from_db()
        return barn, answer

    def test_shows_its_hours_as_they_were_understood(self, as_coordinator):
        barn, _answer = self.mended(as_coordinator, "monday to friday 9-17\r\nSat 9.30-12.00")

        page = as_coordinator.get(barn.get_absolute_url()).content.decode()

        assert "Mon-Fri 09:00-17:00<br>Sat 09:30-12:00" in page

    def test_without_hours_is_open_at_any(self, as_coordinator):
        barn, _answer = self.mended(as_coordinator, "")

        assert "at any hour" in as_coordinator.get(barn.get_absolute_url()).content.decode()

    @pytest.mark.parametrize(
        ("opening", "sentence"),
        [
            ("Mon evening", "Line 1 reads “Mon evening”. Write day and hours as Mon 18:00-22:00."),
            ("Mo 18:00-22:00", "no weekday is called mo. Write it as Mon, Tue, Wed,"),
            ("Mon 18:00-25:00", "which no clock shows. Write the hours from 0:00 to 24:00."),
            ("Mon 18:00-18:00", "Write a later time behind the first one."),
            ("Mon 9-12\nMon 11-13", "The stretch of Monday from 11:00 lies in another one."),
            ("x" * 401, "Use at most 400 characters."),
            ("Mon-Sun 9-10;Mon-Sun 11-12;Mon-Sun 13-14;Mon-Sun 15-16", "more than 24 stretches a week"),
        ],
    )
    def test_is_not_saved_with_hours_that_say_nothing(self, as_coordinator, opening, sentence):
        barn, answer = self.mended(as_coordinator, opening)

        assert answer.status_code == 422
        assert sentence in answer.content.decode()
        assert opening.splitlines()[0] in answer.content.decode()
        assert (barn.opening, barn.revision) == ("", 1)

    @pytest.mark.parametrize("hostile", ["\x00", "\u202eMon 18-22", "<script>", "9" * 100_000])
    def test_answers_hostile_text_with_a_sentence(self, as_coordinator, hostile):
        barn, answer = self.mended(as_coordinator, hostile)

        assert answer.status_code == 422
        assert barn.opening == ""
