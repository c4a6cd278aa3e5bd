"""Finishes as their page shows them. Nothing here has the last word: that is on the tin."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from django.utils.translation import gettext as _

from club.base.quantities.shown import decimal
from projects.library.domain.finishes import Finish, FinishProperty
from projects.library.domain.sourced import Answer, FigureRange
from projects.library.sentences.sourced import ANSWER_NOTES, ANSWERS, CONFIDENCES
from projects.library.sentences.woods import PROPERTIES

# What the table says of a finish that stays wet.
NEVER = "none"


@dataclass(frozen=True)
class ShownAnswer:
    """`counts` is True for yes, and for what nobody knows, which `note` says."""

    name: str
    words: str
    note: str
    counts: bool


@dataclass(frozen=True)
class FinishRow:
    """A line of the list; a range that the table leaves empty is "", as is `cures_by` of what never dries."""

    name: str
    family: str
    cures_by: str
    answers: tuple[ShownAnswer, ...]
    spread: str
    touch_dry: str
    full_cure: str
    notes: str


@dataclass(frozen=True)
class ShownSource:
    """`of` names every finish the source speaks of."""

    of: str
    source: str
    confidence: str


def finish_rows(finishes: Iterable[Finish]) -> tuple[FinishRow, ...]:
    return tuple(_row(finish) for finish in finishes)


def finish_sources(finishes: Iterable[Finish]) -> tuple[ShownSource, ...]:
    """Each source once."""
    named: dict[tuple[str, str], list[str]] = {}
    for finish in finishes:
        named.setdefault((finish.source, str(CONFIDENCES[finish.confidence])), []).append(finish.name)
    return tuple(ShownSource("; ".join(names), *source) for source, names in named.items())


def _row(finish: Finish) -> FinishRow:
    return FinishRow(
        name=finish.name,
        family=finish.family,
        cures_by="" if finish.cures_by == NEVER else finish.cures_by,
        answers=tuple(_answer(asked, finish.answers[asked]) for asked in FinishProperty),
        spread=_range(finish.spread),
        touch_dry=_range(finish.touch_dry),
        full_cure=_range(finish.full_cure),
        notes="; ".join(note for note in (finish.food_note, finish.note) if note),
    )


def _answer(asked: FinishProperty, answer: Answer) -> ShownAnswer:
    note = str(ANSWER_NOTES.get(answer, ""))
    return ShownAnswer(str(PROPERTIES[asked]), str(ANSWERS[answer]), note, answer.counts_as_yes)


def _range(found: FigureRange | None) -> str:
    if found is None:
        return ""
    least, most = decimal(found.least, 2), decimal(found.most, 2)
    return least if least == most else _("%(least)s to %(most)s") % {"least": least, "most": most}
