"""Writes to persons: each one short transaction, each with its change row."""

from __future__ import annotations

from django.db import transaction

from club.base.changes import record_change, snapshot
from club.people.models import Account, Person


class StalePersonError(Exception):
    """Somebody else mended this person since the form was opened."""


@transaction.atomic
def add_person(by: Account | None, person: Person) -> Person:
    person.save(force_insert=True)
    record_change(by, person, None, snapshot(person))
    return person


@transaction.atomic
def mend_person(by: Account, person: Person, revision: int | None) -> Person:
    """Keep the person as the form now has them; raises StalePersonError when `revision` is not the newest."""
    current = Person.objects.select_for_update().filter(pk=person.pk, revision=revision or 0).first()
    if current is None:
        raise StalePersonError
    person.revision = current.revision + 1
    person.save(update_fields=(*Person.change_fields, "revision"))
    record_change(by, person, snapshot(current), snapshot(person))
    return person
