"""The classes in which their pages are looked at: one with room, a full one, a cancelled one, a past one."""

from __future__ import annotations

from django.utils import timezone

from club.classes.actions.lists import give_up, sign_up
from club.classes.book import book_of
from club.classes.domain.queue import State
from club.classes.models import ClassSession, SignUp
from tests.club.classes.rows import people, planned


def furnish_classes() -> dict[str, dict[str, int | str]]:
    """Rows that pages of classes are about, by the name that a sample calls them; made after the club is."""
    now = timezone.now()
    coming = ClassSession.objects.planned().coming(now).whole()
    with_room = next(session for session in coming if book_of(session, now).room)
    full = next(session for session in coming if book_of(session, now).waiting)
    cancelled = ClassSession.objects.filter(state=ClassSession.State.CANCELLED)[0]
    past = ClassSession.objects.past(now)[0]
    return {
        "query": {"edition": with_room.edition_id, "workshop": with_room.workshop_id},
        "class": {"pk": with_room.pk},
        "class, full": {"pk": full.pk},
        "class, cancelled": {"pk": cancelled.pk},
        "class, past": {"pk": past.pk},
        "class, offering": {"pk": _offering(with_room).pk},
        "place": _line(with_room, State.IN),
        "place, waiting": _line(full, State.WAITING),
        "place, given up": _given_up(),
        "place, cancelled": _line(cancelled, State.IN),
    }


def _offering(like: ClassSession) -> ClassSession:
    """A class at one lathe whose one place was given up while somebody waits for it."""
    lathe = next(iter(like.lathes.all()))
    session = planned(like.workshop, edition=like.edition, instructor=like.instructor, lathes=[lathe])
    now, (one, two) = timezone.now(), people(2)
    sign_up(None, session, one, now)
    sign_up(None, session, two, now)
    give_up(None, session, one, now)
    return session


def _line(session: ClassSession, state: State) -> dict[str, int | str]:
    row = session.sign_ups.filter(state=state.value, lathe__isnull=state is State.WAITING)[0]
    return {"pk": session.pk, "number": row.number}


def _given_up() -> dict[str, int | str]:
    row = SignUp.objects.filter(state=State.CANCELLED.value)[0]
    return {"pk": row.class_session_id, "number": row.number}
