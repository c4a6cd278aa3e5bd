"""What was to be done before a class, and is."""

from __future__ import annotations

from django.db import transaction
from django.utils.translation import gettext

from club.base.changes import LONGEST_NAME, record_change
from club.classes.domain.errors import ClassError
from club.classes.models import ClassSession, PreparationDone
from club.classes.preparing import tickable
from club.people.models import Account


@transaction.atomic
def mark_done(by: Account | None, session: ClassSession, key: str, done: bool) -> None:
    """Keep that a job is done, or isn't after all; said twice it changes nothing.

    Raises ClassError no_such_job (key).
    """
    title = tickable(session).get(key)
    if title is None:
        raise ClassError("no_such_job", key=key)
    # The class's row is the lock: two people may tick the same job at once.
    locked = ClassSession.objects.select_for_update().get(pk=session.pk)
    was = locked.done.filter(key=key).exists()
    if was == done:
        return
    if done:
        PreparationDone.objects.create(class_session=locked, key=key, by_name=str(by or "")[:LONGEST_NAME])
    else:
        locked.done.filter(key=key).delete()
    words = {True: gettext("done"), False: gettext("to do")}
    record_change(by, locked, {title: words[was]}, {title: words[done]})
