"""What a class finds on the shelf after the classes before it have taken their part."""

from __future__ import annotations

from dataclasses import replace
from datetime import time, timedelta

import pytest
from django.utils import timezone

from club.classes.kit_totals import classes_before, totals_of
from club.classes.models import ClassSession
from projects.library.domain.materials import PieceNeed, SheetNeed, SpareCount
from tests.club.classes.kits import corks, kit, knobs, row, said
from tests.club.classes.rows import DAY, kept_edition, planned, room
from tests.club.classes.shelves import article, dowels, evening_a, inches, rod
from tests.factories import HeldFactory
from tests.projects.library.examples import KNOB

pytestmark = pytest.mark.django_db


def test_the_later_class_is_given_what_the_earlier_leaves():
    """20 corks: 13 for Thursday, 7 for Friday, who is 6 short."""
    HeldFactory(article=article("Cork", "piece"), amount=20)
    workshop = room()
    thursday = corks(workshop=workshop)
    friday = corks(workshop=workshop, day=DAY + timedelta(days=1), instructor=thursday.instructor)

    page = kit(friday)

    assert (page.rows[0].from_shelf, page.rows[0].to_buy) == ("7", "6")
    assert page.before == (thursday,)
    assert "Stopper, Thursday 7 March takes 13 off the shelf first." in page.rows[0].workings
    assert kit(thursday).rows[0].from_shelf == "13"


def test_the_stores_are_the_clubs_so_another_workshop_counts():
    HeldFactory(article=article("Cork", "piece"), amount=13)
    corks(workshop=room())

    later = corks(workshop=room(), at=time(19))

    assert kit(later).rows[0].from_shelf == "0"


@pytest.mark.parametrize("facts", [{"state": "cancelled"}, {"day": DAY - timedelta(days=9_000)}])
def test_a_class_that_is_cancelled_or_over_takes_nothing(facts):
    HeldFactory(article=article("Cork", "piece"), amount=13)
    earlier = corks(at=time(9))
    for name, value in facts.items():
        setattr(earlier, name, value)
    earlier.save()

    assert kit(corks()).rows[0].from_shelf == "13"


def test_two_classes_at_one_time_are_served_in_the_order_they_were_planned():
    first, second = corks(workshop=room()), corks(workshop=room())

    assert classes_before(second) == [first]
    assert classes_before(first) == []


def test_another_project_with_the_same_article_takes_its_part_too():
    stopper = PieceNeed("stopper", "Drilled cork")
    cork = article("Cork", "piece")
    cork.met.create(specification="Drilled cork", key="drilled cork")
    HeldFactory(article=cork, amount=20)
    recipe = replace(KNOB, key="other", materials=(stopper,), spares=SpareCount(0))
    planned(edition=kept_edition(recipe), kits_for=12, at=time(9))

    assert kit(corks()).rows[0].from_shelf == "7"


def test_pieces_torn_for_a_thing_count_once_however_projects_spell_it():
    """20 pieces lie torn; the first class takes 13, so 7 are left for the other project's twelve."""
    HeldFactory(article=article("Sandpaper P120", "sheet"), amount=20, cut_for="Sandpaper P120")
    for key, spelled, hour in (("first", "Sandpaper P120", 9), ("second", "sandpaper  p120", 19)):
        strip = SheetNeed("strip", spelled, inches("2 3/4"), inches("4 1/2"), 120)
        recipe = replace(KNOB, key=key, materials=(strip,), spares=SpareCount(0))
        session = planned(edition=kept_edition(recipe), kits_for=12, at=time(hour))

    assert kit(session).rows[0].from_shelf == "7"


def test_the_rest_of_a_rod_serves_the_next_class():
    """Six kits of three students, a demonstration and 2 spare take 6 x 2 5/16 of R2: 22 in are left.

    Those give (22 - 1/8 + 1/16) / 2 5/16 = 9 pieces; six are needed.
    """
    rod(dowels(), "R2", "0.499")
    spares = {"spares_rule": "count", "spares_number": 2}
    knobs(3, at=time(9), **spares)

    dowel = row(kit(knobs(3, **spares)), "dowel")

    assert (dowel.needed, dowel.from_shelf) == ("6", "6")
    assert "22 in long: 6 of 2 1/4 in" in said(dowel.cuts)


def test_however_many_come_before_it_asks_the_database_four_times(django_assert_num_queries):
    evening_a()
    for hour in range(8, 14):
        knobs(2, at=time(hour))
    session = ClassSession.objects.whole().get(pk=knobs().pk)

    with django_assert_num_queries(4):
        kit(session)


def test_totals_of_a_past_class_promise_nothing_to_it():
    session = corks(day=timezone.localdate() - timedelta(days=3))

    assert totals_of(session).promises == ()
