"""Finishes as their page shows them. Nothing here has the last word: that is on the tin."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from club.base.quantities.shown import NO_BREAK_SPACE, decimal
from projects.library.domain.finishes import Finish, FinishProperty
from projects.library.domain.sourced import Answer, FigureRange
from projects.library.sentences.sourced import ANSWERS, CONFIDENCES
from projects.library.sentences.woods import PROPERTIES


@dataclass(frozen=True)
class ShownAnswer:
    """`counts` is True for yes, and for what nobody knows."""

    name: str
    words: str
    known: bool
    counts: bool


@dataclass(frozen=True)
class FinishRow:
    """A line of the list; a range that the table leaves empty is ""."""

    key: str
    name: str
    family: str
    cures_by: str
    answers: tuple[ShownAnswer, ...]
    spread: str
    touch_dry: str
    full_cure: str
    notes: tuple[str, ...]
    source: str
    confidence: str


def finish_rows(finishes: Iterable[Finish]) -> tuple[FinishRow, ...]:
    return tuple(_row(finish) for finish in finishes)


def _row(finish: Finish) -> FinishRow:
    return FinishRow(
        key=finish.key,
        name=finish.name,
        family=finish.family,
        cures_by=finish.cures_by,
        answers=tuple(_answer(asked, finish.answers[asked]) for asked in FinishProperty),
        spread=_range(finish.spread, "m\u00b2/l"),
        touch_dry=_range(finish.touch_dry, "h"),
        full_cure=_range(finish.full_cure, "d"),
        notes=tuple(note for note in (finish.food_note, finish.note) if note),
        source=finish.source,
        confidence=str(CONFIDENCES[finish.confidence]),
    )


def _answer(asked: FinishProperty, answer: Answer) -> ShownAnswer:
    return ShownAnswer(
        str(PROPERTIES[asked]), str(ANSWERS[answer]), answer is not Answer.UNKNOWN, answer.counts_as_yes
    )


def _range(found: FigureRange | None, unit: str) -> str:
    if found is None:
        return ""
    least, most = decimal(found.least, 2), decimal(found.most, 2)
    return f"{least}{NO_BREAK_SPACE}{unit}" if least == most else f"{least} to {most}{NO_BREAK_SPACE}{unit}"
