"""Writes to lathes and workshops: each one short transaction, each with its change row."""

from __future__ import annotations

from collections.abc import Sequence

from django.db import transaction

from club.base.changes import record_change, snapshot
from club.base.writing import StaleError, unless_in_use, unless_taken
from club.lathes.domain.own_draw_bars import OwnDrawBar
from club.lathes.domain.speed_settings import SpeedSetting
from club.lathes.models import Lathe, LatheDrawBar, LatheSpeed, Workshop
from club.people.models import Account


@transaction.atomic
def add_lathe(by: Account, lathe: Lathe, speeds: Sequence[SpeedSetting], bars: Sequence[OwnDrawBar]) -> Lathe:
    with unless_taken():
        lathe.save(force_insert=True)
    _write_rows(lathe, speeds, bars)
    record_change(by, lathe, None, snapshot(lathe))
    return lathe


@transaction.atomic
def mend_lathe(
    by: Account,
    lathe: Lathe,
    revision: int | None,
    speeds: Sequence[SpeedSetting],
    bars: Sequence[OwnDrawBar],
) -> Lathe:
    """Keep the lathe as its form now has it; raises StaleError when `revision` is not the newest."""
    before = snapshot(_locked(lathe.pk, revision))
    lathe.revision = (revision or 0) + 1
    with unless_taken():
        lathe.save(update_fields=(*Lathe.change_fields, "revision"))
    _write_rows(lathe, speeds, bars)
    record_change(by, lathe, before, snapshot(lathe))
    return lathe


@transaction.atomic
def set_condition(by: Account, lathe: Lathe, revision: int | None, condition: str, reason: str) -> Lathe:
    current = _locked(lathe.pk, revision)
    before = snapshot(current)
    current.condition, current.condition_reason = condition, reason
    current.revision += 1
    current.save(update_fields=("condition", "condition_reason", "revision"))
    record_change(by, current, before, snapshot(current))
    return current


@transaction.atomic
def remove_lathe(by: Account, lathe: Lathe, revision: int | None) -> Lathe:
    """Take it out of the list; raises StaleError, and InUseError where a class has somebody at it."""
    current = _locked(lathe.pk, revision)
    record_change(by, current, snapshot(current), None)
    with unless_in_use():
        Lathe.objects.filter(pk=current.pk).delete()
    return current


def _locked(pk: int, revision: int | None) -> Lathe:
    current = Lathe.objects.select_for_update(of=("self",)).whole().filter(pk=pk).first()
    if current is None or current.revision != revision:
        raise StaleError
    return current


def _write_rows(lathe: Lathe, speeds: Sequence[SpeedSetting], bars: Sequence[OwnDrawBar]) -> None:
    """Speeds and bars are written anew: they have no life of their own."""
    lathe.speed_rows.all().delete()
    lathe.draw_bar_rows.all().delete()
    LatheSpeed.objects.bulk_create(
        LatheSpeed(lathe=lathe, position=place, label=setting.label, low=setting.low, high=setting.high)
        for place, setting in enumerate(speeds, start=1)
    )
    LatheDrawBar.objects.bulk_create(
        LatheDrawBar(
            lathe=lathe, position=place, label=bar.label, thread=bar.thread.designation, length=bar.length
        )
        for place, bar in enumerate(bars, start=1)
    )
    lathe.forget_rows()


@transaction.atomic
def add_workshop(by: Account | None, workshop: Workshop) -> Workshop:
    with unless_taken():
        workshop.save(force_insert=True)
    record_change(by, workshop, None, snapshot(workshop))
    return workshop


@transaction.atomic
def mend_workshop(by: Account, workshop: Workshop, revision: int | None) -> Workshop:
    """Keep the workshop as its form now has it; raises StaleError when `revision` is not the newest."""
    current = Workshop.objects.select_for_update().filter(pk=workshop.pk).first()
    if current is None or current.revision != revision:
        raise StaleError
    workshop.revision = current.revision + 1
    with unless_taken():
        workshop.save(update_fields=(*Workshop.change_fields, "revision"))
    record_change(by, workshop, snapshot(current), snapshot(workshop))
    return workshop
