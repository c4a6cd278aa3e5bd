"""Every caution of an order of work, in the order in which it is read."""

from __future__ import annotations

from collections.abc import Iterator

from club.home.order_of_work import OrderOfWork
from safety.topics.always_said import SaidMoment


def everything_said(work: OrderOfWork) -> Iterator[SaidMoment]:
    yield from work.first
    for mounting in work.mountings:
        yield from mounting.before
        for step in mounting.steps:
            yield from step.before
    yield from work.last
