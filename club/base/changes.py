"""The change log: taken before and after a write, kept in the same transaction."""

from __future__ import annotations

from typing import Any

from django.contrib.auth.base_user import AbstractBaseUser
from django.contrib.auth.models import AnonymousUser
from django.db.models import Model, QuerySet
from django.utils.translation import gettext

from club.base.models import Change

Snapshot = dict[str, str]
LONGEST_NAME = 160


def snapshot(thing: Model) -> Snapshot:
    """How the thing reads now: its `change_fields` by their names for people, lengths as typed.

    A thing with rows of its own adds them through `change_extras() -> dict[str, str]`.
    """
    fields: tuple[str, ...] = thing.change_fields  # type: ignore[attr-defined]
    taken = {_name_of(thing, field): _text_of(thing, field) for field in fields}
    extras = getattr(thing, "change_extras", dict)
    return {**taken, **extras()}


def record_change(
    by: AbstractBaseUser | AnonymousUser | None, thing: Model, before: Snapshot | None, after: Snapshot | None
) -> Change | None:
    """Keep what differs between two snapshots; nothing is kept when nothing does.

    `before` is None for a thing just made, `after` for one taken away, `by` for work at the server itself.
    Call it inside the transaction of the write, and before a thing that goes loses its key.
    """
    if before == after:
        return None
    return Change.objects.create(
        by_id=by.pk if by else None,
        by_name=str(by)[:LONGEST_NAME] if by else "",
        kind=thing._meta.label,
        thing_id=thing.pk,
        thing_name=str(thing)[:LONGEST_NAME],
        deed=_deed(before, after),
        lines=_lines(before or {}, after or {}),
    )


def changes_of(thing: Model) -> QuerySet[Change]:
    """Everything that was changed on this thing, latest first."""
    return Change.objects.filter(kind=thing._meta.label, thing_id=thing.pk)


def _deed(before: Snapshot | None, after: Snapshot | None) -> Change.Deed:
    if before is None:
        return Change.Deed.MADE
    return Change.Deed.GONE if after is None else Change.Deed.MENDED


def _lines(before: Snapshot, after: Snapshot) -> list[list[str]]:
    pairs = [(name, before.get(name, ""), after.get(name, "")) for name in {**before, **after}]
    return [list(pair) for pair in pairs if pair[1] != pair[2]]


def _name_of(thing: Model, field: str) -> str:
    return str(getattr(thing._meta.get_field(field), "verbose_name", field))


def _text_of(thing: Model, field: str) -> str:
    chosen = getattr(thing, f"get_{field}_display", None)
    value: Any = chosen() if chosen else getattr(thing, field)
    if value is None:
        return ""
    if isinstance(value, bool):
        return gettext("yes") if value else gettext("no")
    return str(value)
