"""What is to be done before a class: the recipe's jobs in the workshop's hours, and what its list asks."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from club.base.changes import changes_of
from club.classes.actions.classes import cancel_class
from club.classes.actions.lists import hold, sign_up
from club.classes.actions.preparation import mark_done
from club.classes.book import book_of
from club.classes.domain.errors import ClassError
from club.classes.domain.places import Place
from club.classes.kit_totals import totals_of
from club.classes.models import ClassSession, PreparationDone
from club.classes.ordering import Ordering, ordering_of
from club.classes.preparing import Preparing, preparing
from club.lathes.models import Lathe
from projects.library.domain.preparation import Task
from tests.club.classes.rows import NOW, kept_edition, people, planned, room
from tests.club.classes.shelves import dowels, evening_a, rod, square, squares
from tests.factories import AccountFactory
from tests.projects.library.examples import KNOB

pytestmark = pytest.mark.django_db

# DAY, 7 March 2030, is a Thursday; NOW is Friday 1 March, 13:00 in Berlin.
NOTHING = Ordering()
ORDERED = Ordering(packs=3, suppliers=("Reed Mill",), slowest="Reed Mill", days=2)


def found(session: ClassSession, ordering: Ordering = NOTHING, now: datetime = NOW) -> Preparing:
    session = ClassSession.objects.whole().get(pk=session.pk)
    return preparing(session, book_of(session, now), ordering, now)


def starts(plan: Preparing) -> dict[str, str]:
    return {todo.key: f"{todo.start_by:%a %H:%M}" for todo in plan.todos}


def knobs(**facts):
    """Twelve students, one demonstration, two spares: 15 knobs in a room that is open on three days."""
    workshop = room(6, opening="Tue 18:00-21:00\nWed 17:00-20:00\nSat 09:00-12:00")
    return planned(workshop, **{"kits_for": 12, "sittings": 2, **facts})


def test_fifteen_knobs_are_counted_back_through_the_hours_of_the_workshop():
    """15 x 3 min of glue and 24 h to Thursday 18:30: Wednesday 17:45; drilled from 17:00.

    15 x 2 min of cutting are the last half hour of Tuesday.
    """
    plan = found(knobs())

    assert starts(plan) == {"cut": "Tue 20:30", "drill": "Wed 17:00", "glue-dowel": "Wed 17:45"}
    assert [todo.takes.replace("\u00a0", " ") for todo in plan.todos] == [
        "30 min",
        "45 min",
        "45 min, then wait 24 h",
    ]
    assert all(todo.in_chain for todo in plan.todos)
    assert plan.minutes_left == 120


def test_dates_are_those_of_the_workshop_s_own_clock():
    workshop = room(6, zone="America/New_York")

    plan = found(planned(workshop, kits_for=12))

    assert starts(plan)["glue-dowel"] == "Wed 17:45"
    assert plan.now.tzinfo == ZoneInfo("America/New_York")


def test_an_order_goes_out_as_many_days_before_the_cutting_as_the_slowest_takes():
    """Cutting begins on Tuesday 20:30, two days before is Sunday 20:30, when no door need be open."""
    plan = found(knobs(), ORDERED)

    assert starts(plan)["order"] == "Sun 20:30"
    assert plan.todos[0].in_chain
    assert plan.todos[0].tells == "3 packs from Reed Mill. Reed Mill takes 2 days to deliver."
    assert plan.todos[0].link.url.endswith("/order/")


def test_what_needs_no_material_is_begun_without_waiting_for_the_order():
    recipe = replace(KNOB, preparation=(*KNOB.preparation, Task("sharpen", "Sharpen", minutes=700)))
    session = knobs(edition=kept_edition(replace(recipe, key="knob-sharp")))

    plan = found(session, ORDERED)

    assert starts(plan)["order"] == "Sun 20:30"
    assert plan.todos[0].key == "sharpen"


def own_order(lead_hours: int = 24):
    order = Task("order", "Order maple and towels", minutes=20, lead_hours=lead_hours)
    cut = replace(KNOB.preparation[0], after=("order",))
    recipe = replace(KNOB, key="knob-ordered", preparation=(order, cut, KNOB.preparation[1]))
    return knobs(edition=kept_edition(recipe))


def test_a_recipe_s_own_order_is_not_said_twice_and_waits_for_the_slowest():
    """20 min and two days before Tuesday 20:30: Sunday, so in the last opening before, Saturday to 12:00."""
    orders = [todo for todo in found(own_order(), ORDERED).todos if "rder" in todo.title]

    assert [(todo.key, todo.title) for todo in orders] == [("order", "Order maple and towels")]
    assert f"{orders[0].start_by:%a %H:%M}" == "Sat 11:40"


def test_a_recipe_s_own_order_waits_longer_where_the_recipe_says_so():
    plan = found(own_order(lead_hours=240), ORDERED)

    assert f"{plan.todos[0].start_by:%d %b}" == "23 Feb"


def test_nothing_is_ordered_where_all_of_it_lies_there():
    plan = found(own_order(), NOTHING)

    assert list(starts(plan)) == ["cut", "drill", "glue-dowel"]


def test_what_is_to_buy_comes_from_the_stores_as_the_kit_has_it():
    mill = evening_a()
    mill.delivery_days = 4
    mill.save()

    ordering = ordering_of(totals_of(knobs()))

    assert (ordering.suppliers, ordering.days, ordering.is_needed) == (("Reed Mill",), 4, True)
    assert ordering.missing > 0


def test_without_anything_to_buy_or_missing_no_order_is_needed():
    recipe = replace(KNOB, key="knob-bare", glue_ups=(), materials=KNOB.materials[:2])
    rod(dowels(), "R1", "0.499")
    square(squares())

    ordering = ordering_of(totals_of(planned(edition=kept_edition(recipe), kits_for=1)))

    assert ordering == NOTHING


def test_late_is_counted_in_days_of_the_calendar_and_earlier_today_by_the_clock():
    thursday_noon = datetime(2030, 3, 7, 12, tzinfo=ZoneInfo("Europe/Berlin"))

    late = {todo.key: todo.late for todo in found(knobs(), now=thursday_noon).todos}
    wednesday = {
        todo.key: todo.late
        for todo in found(knobs(), now=thursday_noon - timedelta(hours=18, minutes=45)).todos
    }

    assert late == {"cut": "2 days late", "drill": "1 day late", "glue-dowel": "1 day late"}
    assert wednesday == {"cut": "1 day late", "drill": "late since 17:00", "glue-dowel": ""}


class TestTheList:
    def test_calls_for_papers_a_day_before_once_somebody_is_on_it(self):
        session = knobs()
        sign_up(None, session, people(1)[0], NOW, Place(1, 1))

        assert starts(found(session))["print"] == "Wed 18:30"

    def test_calls_for_places_of_those_who_have_none_and_of_those_who_lost_theirs(self):
        session = knobs()
        one, two, three = people(3)
        sign_up(None, session, one, NOW)
        sign_up(None, session, two, NOW, Place(6, 2))
        sign_up(None, session, three, NOW, Place(1, 1))
        Lathe.objects.filter(number=6).update(condition="out", condition_reason="quill")

        plan = found(session)

        seat = next(todo for todo in plan.todos if todo.key == "seat")
        assert (seat.title, seat.ticked, seat.late) == ("Give 2 people a place", False, "")
        assert seat.link.url.endswith("#without-place")

    def test_calls_for_an_offer_where_somebody_waits_for_room(self):
        session = knobs(lowered_to=1)
        first, second = people(2)
        hold(None, session, first, NOW, NOW + timedelta(days=1))
        sign_up(None, session, second, NOW)

        before, after = found(session), found(session, now=NOW + timedelta(days=2))

        assert "offer" not in starts(before)
        assert next(todo.title for todo in after.todos if todo.key == "offer") == "Offer 1 free place"


@pytest.mark.parametrize("later", [timedelta(days=7), timedelta(days=30)])
def test_nothing_is_left_once_the_class_has_begun(later):
    assert found(knobs(), ORDERED, NOW + later).todos == ()


def test_nothing_is_left_before_a_class_that_is_not_held():
    session = knobs()
    cancel_class(None, session, 1)

    assert found(session, ORDERED).todos == ()


def test_hours_that_ten_years_of_openings_do_not_hold_are_left_out_and_said():
    workshop = room(6, opening="Mon 09:00-09:01", name="Attic")
    recipe = replace(KNOB, key="knob-slow", preparation=(Task("carve", "Carve", minutes=1_000),), glue_ups=())

    plan = found(planned(workshop, edition=kept_edition(recipe)))

    assert starts(plan) == {"carve": "Thu 01:50"}
    assert plan.mind.startswith("Attic isn't open long enough")


class TestATick:
    def test_is_kept_with_who_said_so_and_in_the_log(self):
        session = knobs()
        by = AccountFactory(person__name="Ilse Brandt")

        mark_done(by, session, "cut", True)

        row = PreparationDone.objects.get(class_session=session)
        assert (row.key, row.by_name) == ("cut", str(by))
        assert changes_of(session)[0].lines == [["Cut the blanks", "to do", "done"]]
        assert [todo.key for todo in found(session).left] == ["drill", "glue-dowel"]

    def test_may_be_taken_back(self):
        session = knobs()
        mark_done(None, session, "cut", True)

        mark_done(None, session, "cut", False)

        assert not PreparationDone.objects.exists()
        assert changes_of(session)[0].lines == [["Cut the blanks", "done", "to do"]]

    @pytest.mark.parametrize("done", [True, False])
    def test_said_twice_changes_nothing(self, done):
        session = knobs()
        mark_done(None, session, "cut", True)
        mark_done(None, session, "cut", done)
        count = changes_of(session).count()

        mark_done(None, session, "cut", done)

        assert changes_of(session).count() == count
        assert PreparationDone.objects.count() == done

    @pytest.mark.parametrize("key", ["", "seat", "cut ", "\x00", "x" * 200])
    def test_for_what_is_no_job_of_this_class_is_refused(self, key):
        with pytest.raises(ClassError, match="no_such_job"):
            mark_done(None, knobs(), key, True)

    def test_ends_being_late(self):
        session = knobs()
        mark_done(None, session, "cut", True)

        plan = found(session, now=NOW + timedelta(days=5, hours=5))

        assert [todo.key for todo in plan.late] == ["drill", "glue-dowel"]
        assert plan.minutes_left == 90
