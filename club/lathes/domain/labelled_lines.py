"""Lines of `name: what it is`, one to a line or parted by semicolons: the form of speeds and draw bars."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

MOST_LINES = 16
MOST_LABEL = 20
MOST_TEXT = 2_000
MOST_SHOWN = 60
ENDS = re.compile(r"\r\n|[\n\r;]")


class LineError(ValueError):
    """A line can't be kept. `number` counts lines from 1 and is 0 when it isn't about one of them.

    Codes: too_long, too_many, no_label, long_label, hidden_marks, twice; those who read what follows the
    label add their own. `values` hold what was found, and `text` the line as typed, cut short.
    """

    def __init__(self, code: str, number: int = 0, **values: object) -> None:
        self.code = code
        self.number = number
        self.values = values
        super().__init__(code)


@dataclass(frozen=True)
class LabelledLine:
    """One line: its number from 1 with empty ones counted, its label, and what stands after the colon."""

    number: int
    text: str
    label: str
    rest: str


def labelled_lines(text: str, error: type[LineError]) -> tuple[LabelledLine, ...]:
    """The lines that aren't empty, each with a label of its own; raises `error` with LineError's codes."""
    if len(text) > MOST_TEXT:
        raise error("too_long", most=MOST_TEXT)
    lines = tuple(_lines(text, error))
    if len(lines) > MOST_LINES:
        raise error("too_many", found=len(lines), most=MOST_LINES)
    _check_labels_differ(lines, error)
    return lines


def _lines(text: str, error: type[LineError]) -> Iterator[LabelledLine]:
    for number, typed in enumerate(ENDS.split(text), start=1):
        if typed.strip():
            before, colon, rest = typed.partition(":")
            line = LabelledLine(number, shown(typed), " ".join(before.split()), rest.strip())
            _check_label(line if colon else LabelledLine(number, line.text, "", ""), error)
            yield line


def _check_label(line: LabelledLine, error: type[LineError]) -> None:
    if not line.label:
        raise error("no_label", line.number, text=line.text)
    if len(line.label) > MOST_LABEL:
        raise error("long_label", line.number, text=line.text, found=len(line.label), most=MOST_LABEL)
    if not line.label.isprintable():
        raise error("hidden_marks", line.number, text=line.text)


def _check_labels_differ(lines: tuple[LabelledLine, ...], error: type[LineError]) -> None:
    """Labels that differ only in capitals are one: nobody at a lathe could tell them apart."""
    first: dict[str, int] = {}
    for line in lines:
        earlier = first.setdefault(line.label.casefold(), line.number)
        if earlier != line.number:
            raise error("twice", line.number, text=line.text, label=line.label, earlier=earlier)


def shown(text: str) -> str:
    """A line as a sentence quotes it: single blanks, nothing hidden, no longer than a line of a page."""
    seen = "".join(sign for sign in " ".join(text.split()) if sign.isprintable())
    return seen if len(seen) <= MOST_SHOWN else seen[:MOST_SHOWN] + "…"
