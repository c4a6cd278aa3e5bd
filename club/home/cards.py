"""A lathe's card: what a hand sets, what the machine is, and what is always said at it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby
from urllib.parse import urlsplit

from django.conf import settings
from django.http import HttpRequest
from django.urls import reverse
from django.utils.functional import Promise

from club.base.qr import QrCode, qr_code
from club.lathes.domain.own_draw_bars import OwnDrawBar
from club.lathes.domain.speed_settings import SpeedSetting
from club.lathes.models import Lathe
from safety.topics.lathe_card import CardLine, Severity, lines_for

CARDS_A_SHEET = 4
# What fits a card of A6 at a size to be read at arm's length; the lathe's page has the rest.
SPEEDS_IN_A_COLUMN = 5
MOST_SPEEDS = 8
MOST_BARS = 2
# Characters of the reason that fit one line, and of a setting's name that fit beside its speeds.
A_LINE = 50
A_NAME = 8
# Lines at the usual size that fit Letter, the shorter paper: a setting or a reason is one; a draw bar
# brings a line to mind with it and is two.
MOST_LINES = 5
LOCAL_HOSTS = frozenset({"localhost", "127.0.0.1", "::1"})


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

    @property
    def has_many_speeds(self) -> bool:
        return len(self.lathe.speeds) > SPEEDS_IN_A_COLUMN

    @property
    def is_tight(self) -> bool:
        """Whether there is more to say than fits at the usual size."""
        lathe = self.lathe
        # Five small settings stand where four usual ones do.
        settings_lines = min(len(lathe.speeds), SPEEDS_IN_A_COLUMN - 1)
        lines = settings_lines + bool(lathe.condition_reason) + 2 * len(lathe.draw_bars)
        return lines > MOST_LINES or len(lathe.condition_reason) > A_LINE or self.has_many_speeds

    @property
    def has_small_speeds(self) -> bool:
        """Whether the speeds are set smaller, to stand in one line each."""
        return len(self.lathe.speeds) == SPEEDS_IN_A_COLUMN or any(
            len(setting.label) > A_NAME for setting in self.lathe.speeds
        )

    @property
    def short_address(self) -> str:
        """As one types it."""
        return self.code.text.partition("://")[2]

    @property
    def speeds(self) -> Sequence[SpeedSetting]:
        """The lowest ones, when there are more than a card holds."""
        lowest_first = sorted(self.lathe.speeds, key=lambda setting: setting.low)
        return [setting for setting in self.lathe.speeds if setting in lowest_first[:MOST_SPEEDS]]

    @property
    def more_speeds(self) -> int:
        return len(self.lathe.speeds) - len(self.speeds)

    @property
    def bars(self) -> Sequence[OwnDrawBar]:
        return self.lathe.draw_bars[:MOST_BARS]

    @property
    def more_bars(self) -> int:
        return max(0, len(self.lathe.draw_bars) - MOST_BARS)


def card_address(request: HttpRequest, lathe: Lathe) -> str:
    """Where the code leads: the address this installation says it has, else the one it was asked at."""
    path = reverse("home:card", args=[lathe.pk])
    return f"{settings.ADDRESS}{path}" if settings.ADDRESS else request.build_absolute_uri(path)


def opens_elsewhere(request: HttpRequest) -> bool:
    """Whether a phone can open the code: an address of this computer only is no use on paper."""
    return bool(settings.ADDRESS) or urlsplit(f"//{request.get_host()}").hostname not in LOCAL_HOSTS


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
