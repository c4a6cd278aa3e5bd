"""Two classes more, in states that the demonstration hasn't: more people than places, and nobody at all."""

from __future__ import annotations

from datetime import time, timedelta

from django.utils import timezone

from club.classes.actions.classes import plan_class
from club.classes.actions.lists import hold, sign_up
from club.classes.domain.places import Place
from club.classes.models import ClassSession
from club.lathes.models import Lathe
from club.people.models import Account
from projects.library.models import Edition
from tests.factories import PersonFactory


def furnish_class_pages() -> dict[str, dict[str, int | str]]:
    """Rows that a class's own page is about, by the name that a sample calls them; made after the club is."""
    return {"class, over": {"pk": _over().pk}, "class, empty": {"pk": _planned([6, 7], 61).pk}}


def _over() -> ClassSession:
    """One lathe went out of service since: its person lost the place, one has none, one is still asked."""
    sluice = Lathe.objects.filter(workshop__name="Sluice Room")
    was = sluice.values("condition", "condition_reason").get(number=8)
    sluice.filter(number=8).update(condition="in_service", condition_reason="")
    session = _planned([6, 8], 60, note="No oil this time: <b>wax</b>, 1/2 in of it.", minimum=4)
    now = timezone.now()
    sign_up(None, session, PersonFactory(name="Lost Lug"), now, Place(8, 1))
    sign_up(None, session, PersonFactory(name="Open Ogee"), now)
    sign_up(None, session, PersonFactory(name="Wide Waney-Edgerton of the Upper Mill"), now, Place(6, 1))
    hold(None, session, PersonFactory(name="Asked Astragal"), now, now + timedelta(days=2), Place(6, 2))
    sluice.filter(number=8).update(**was)
    return session


def _planned(numbers: list[int], days: int, **facts: object) -> ClassSession:
    lathes = list(Lathe.objects.filter(workshop__name="Sluice Room", number__in=numbers))
    session = ClassSession(
        edition=Edition.objects.kept().get(project__key="drawer-knob"),
        workshop=lathes[0].workshop,
        day=timezone.localdate() + timedelta(days=days),
        at=time(9, 30),
        # Too short for what the recipe needs.
        minutes=120,
        sittings=2,
        instructor=Account.objects.get(name="ilse").person,
        **facts,
    )
    return plan_class(None, session, lathes)
