"""A lathe's card: what a hand sets, what the machine is, and what is always said at it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby

from django.conf import settings
from django.http import HttpRequest
from django.urls import reverse
from django.utils.functional import Promise

from club.base.qr import QrCode, qr_code
from club.lathes.models import Lathe
from safety.topics.lathe_card import CardLine, Severity, lines_for

CARDS_A_SHEET = 4
LOCAL_HOSTS = frozenset({"localhost", "127.0.0.1", "[::1]"})


@dataclass(frozen=True)
class Moment:
    name: Promise
    lines: tuple[CardLine, ...]


@dataclass(frozen=True)
class LatheCard:
    lathe: Lathe
    code: QrCode
    stops: tuple[Moment, ...]
    cautions: tuple[Moment, ...]


def card_address(request: HttpRequest, lathe: Lathe) -> str:
    """Where the code leads: the address this installation says it has, else the one it was asked at."""
    path = reverse("home:card", args=[lathe.pk])
    return f"{settings.ADDRESS}{path}" if settings.ADDRESS else request.build_absolute_uri(path)


def opens_elsewhere(request: HttpRequest) -> bool:
    """Whether a phone can open the code: an address of this computer only is no use on paper."""
    return bool(settings.ADDRESS) or request.get_host().rsplit(":", 1)[0] not in LOCAL_HOSTS


def card_of(request: HttpRequest, lathe: Lathe) -> LatheCard:
    lines = lines_for(_properties(lathe))
    return LatheCard(
        lathe,
        qr_code(card_address(request, lathe)),
        _moments(line for line in lines if line.severity is Severity.STOP),
        _moments(line for line in lines if line.severity is Severity.CAUTION),
    )


def sheets_of(cards: Sequence[LatheCard]) -> list[Sequence[LatheCard]]:
    return [cards[first : first + CARDS_A_SHEET] for first in range(0, len(cards), CARDS_A_SHEET)]


def _properties(lathe: Lathe) -> frozenset[str]:
    """What of the machine calls for a line of its own; not known counts as the worse case."""
    found = {"no_volt_release" if lathe.no_volt_release else "no_release_known"}
    if lathe.reverse is not False:
        found.add("reverse")
    if lathe.draw_bars:
        found.add("draw_bars")
    return frozenset(found)


def _moments(lines: Iterable[CardLine]) -> tuple[Moment, ...]:
    return tuple(Moment(name, tuple(group)) for name, group in groupby(lines, key=lambda line: line.moment))
