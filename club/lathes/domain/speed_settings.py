"""The speeds a hand can set on a lathe, as text: `belt 1: 620`, `belt 2: 250-1 450`, `dial: 250-3 200`.

One setting to a line or parted by semicolons; the same text stands in the form and in a list.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from club.base.quantities.errors import QuantityError
from club.base.quantities.number import plain_text
from club.base.quantities.speed import parse_rpm
from club.lathes.domain.labelled_lines import LabelledLine, LineError, labelled_lines

BETWEEN = re.compile(r" ?- ?| to ")


class SpeedSettingError(LineError):
    """Codes besides LineError's: no_speed, open_range, speed, low_above_high.

    For speed `reason` is a QuantityError; for low_above_high `low` and `high` are rpm.
    """


@dataclass(frozen=True)
class SpeedSetting:
    """A belt position or dial, from its lowest to its highest speed in rpm; a fixed one has both the same."""

    label: str
    low: int
    high: int

    @property
    def is_fixed(self) -> bool:
        return self.low == self.high


def parse_speed_settings(text: str) -> tuple[SpeedSetting, ...]:
    """The settings in the order typed, none for an empty text; raises SpeedSettingError.

    At most 16, each with a name of its own of at most 20 characters, each speed from 1 to 20 000 rpm.
    """
    return tuple(_setting(line) for line in labelled_lines(text, SpeedSettingError))


def _setting(line: LabelledLine) -> SpeedSetting:
    plain = plain_text(line.rest)
    if not plain:
        raise SpeedSettingError("no_speed", line.number, text=line.text)
    if plain.endswith("-"):
        raise SpeedSettingError("open_range", line.number, text=line.text)
    try:
        low, high = _range(plain)
    except QuantityError as error:
        raise SpeedSettingError("speed", line.number, text=line.text, reason=error) from error
    if low > high:
        raise SpeedSettingError("low_above_high", line.number, text=line.text, low=low, high=high)
    return SpeedSetting(line.label, low, high)


def _range(rest: str) -> tuple[int, int]:
    """Lowest and highest rpm; a minus in front isn't taken for the dash of a range."""
    ends = [rest] if rest.startswith("-") else BETWEEN.split(rest, maxsplit=1)
    return parse_rpm(ends[0]), parse_rpm(ends[-1])


def write_speed_settings(settings: Iterable[SpeedSetting], separator: str) -> str:
    """Text that `parse_speed_settings` reads back; `separator` is a line end or `; `."""
    return separator.join(_written(setting) for setting in settings)


def _written(setting: SpeedSetting) -> str:
    speeds = _grouped(setting.low)
    if not setting.is_fixed:
        speeds += "-" + _grouped(setting.high)
    return f"{setting.label}: {speeds}"


def _grouped(rpm: int) -> str:
    """`1 450` with a plain blank, as one types it."""
    return f"{rpm:,}".replace(",", " ")
