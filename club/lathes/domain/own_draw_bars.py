"""The draw bars that stay with a lathe, as text: `A: 3/8-16, 14 1/4 in`.

One bar to a line or parted by semicolons; the same text stands in the form and in a list.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from club.base.quantities.errors import QuantityError
from club.base.quantities.length import Length, parse_length, write_length
from club.lathes.domain.labelled_lines import LabelledLine, LineError, labelled_lines
from club.lathes.domain.threads import Thread, ThreadError, parse_thread


class OwnDrawBarError(LineError):
    """Codes besides LineError's: no_comma, two_readings, thread, length.

    For thread and length `reason` is their own error.
    """


@dataclass(frozen=True)
class OwnDrawBar:
    """A bar by the name painted on it, its thread, and its length over all."""

    label: str
    thread: Thread
    length: Length


def parse_own_draw_bars(text: str) -> tuple[OwnDrawBar, ...]:
    """The bars in the order typed, none for an empty text; raises OwnDrawBarError.

    At most 16, each with a name of its own of at most 20 characters.
    """
    return tuple(_bar(line) for line in labelled_lines(text, OwnDrawBarError))


def _bar(line: LabelledLine) -> OwnDrawBar:
    """The one reading that makes sense; when none does, the reason of the first."""
    bars: list[OwnDrawBar] = []
    refused: list[OwnDrawBarError] = []
    for thread, length in _readings(line.rest):
        try:
            bars.append(_read(line, thread, length))
        except OwnDrawBarError as error:
            refused.append(error)
    if len(bars) > 1:
        raise OwnDrawBarError("two_readings", line.number, text=line.text)
    if not bars:
        raise refused[0] if refused else OwnDrawBarError("no_comma", line.number, text=line.text)
    return bars[0]


def _readings(rest: str) -> Iterator[tuple[str, str]]:
    """Thread and length, parted at each comma that has a blank after it, or at every one when none has.

    So a decimal comma in either (`M10 x 1,5, 14,25 in`) is told from the one between them.
    """
    commas = [place for place, sign in enumerate(rest) if sign == ","]
    parting = [place for place in commas if rest[place + 1 : place + 2].isspace()]
    for place in parting or commas:
        yield rest[:place], rest[place + 1 :]


def _read(line: LabelledLine, thread: str, length: str) -> OwnDrawBar:
    try:
        return OwnDrawBar(line.label, parse_thread(thread), parse_length(length))
    except ThreadError as error:
        raise OwnDrawBarError("thread", line.number, text=line.text, reason=error) from error
    except QuantityError as error:
        raise OwnDrawBarError("length", line.number, text=line.text, reason=error) from error


def write_own_draw_bars(bars: Iterable[OwnDrawBar], separator: str) -> str:
    """Text that `parse_own_draw_bars` reads back, lengths as typed; `separator` is a line end or `; `."""
    return separator.join(_written(bar) for bar in bars)


def _written(bar: OwnDrawBar) -> str:
    length = write_length(bar.length)
    return f"{bar.label}: {bar.thread.designation}, {length}"
