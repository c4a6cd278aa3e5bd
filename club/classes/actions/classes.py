"""Writes to classes: each one short transaction, each with its change row."""

from __future__ import annotations

from collections.abc import Collection

from django.db import transaction

from club.base.changes import record_change, snapshot
from club.base.writing import StaleError
from club.classes.book import places_at
from club.classes.domain.places import capacity
from club.classes.models import ClassSession
from club.lathes.models import Lathe
from club.people.models import Account, Person


@transaction.atomic
def plan_class(
    by: Account | None, session: ClassSession, lathes: Collection[Lathe], helpers: Collection[Person] = ()
) -> ClassSession:
    """Keep a new class with as many places as its lathes give.

    Raises ClassError: more_than_fit, and what `ClassSession.hours` raises.
    """
    session.places = _capacity(session, lathes)
    session.save(force_insert=True)
    session.lathes.set(lathes)
    session.helpers.set(helpers)
    record_change(by, session, None, snapshot(session))
    return session


@transaction.atomic
def mend_class(
    by: Account | None,
    session: ClassSession,
    revision: int | None,
    lathes: Collection[Lathe],
    helpers: Collection[Person] = (),
) -> ClassSession:
    """Keep the class as its form now has it. Nobody on its list is moved or dropped.

    Raises StaleError when `revision` is not the newest, and what `plan_class` raises.
    """
    before = snapshot(_locked(session.pk, revision))
    session.revision = (revision or 0) + 1
    session.places = _capacity(session, lathes)
    session.save(update_fields=(*ClassSession.change_fields, "revision"))
    session.lathes.set(lathes)
    session.helpers.set(helpers)
    record_change(by, session, before, snapshot(ClassSession.objects.get(pk=session.pk)))
    return session


@transaction.atomic
def cancel_class(by: Account | None, session: ClassSession, revision: int | None) -> ClassSession:
    """It isn't held. Its list stays as it was, so that everybody on it can be told."""
    return _with_state(by, session, revision, ClassSession.State.CANCELLED)


@transaction.atomic
def plan_again(by: Account | None, session: ClassSession, revision: int | None) -> ClassSession:
    """Held after all, with the list as it was."""
    return _with_state(by, session, revision, ClassSession.State.PLANNED)


def _with_state(
    by: Account | None, session: ClassSession, revision: int | None, state: ClassSession.State
) -> ClassSession:
    current = _locked(session.pk, revision)
    before = snapshot(current)
    current.state = state
    current.revision += 1
    current.save(update_fields=("state", "revision"))
    record_change(by, current, before, snapshot(current))
    return current


def _capacity(session: ClassSession, lathes: Collection[Lathe]) -> int:
    here = [lathe for lathe in lathes if lathe.workshop_id == session.workshop_id]
    return capacity(places_at(here, session.demonstration_lathe_id, session.sittings), session.lowered_to)


def _locked(pk: int, revision: int | None) -> ClassSession:
    current = ClassSession.objects.select_for_update().filter(pk=pk).first()
    if current is None or current.revision != revision:
        raise StaleError
    return current
