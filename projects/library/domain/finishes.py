"""Finishes: how they dry and spread, and the properties that safety rules hang on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType

from projects.library.domain.sourced import Answer, Confidence, FigureRange


class FinishProperty(StrEnum):
    """What a rule may ask of a finish, spelled as the rules spell it."""

    DRIES_BY_OXIDATION = "dries_by_oxidation"
    CONTAINS_TREE_NUT = "contains_tree_nut"
    FLAMMABLE_SOLVENT = "flammable_solvent"


@dataclass(frozen=True)
class Finish:
    """One finish of the table. What the table leaves empty is None.

    Spread is in m²/l for a coat, touch-dry in hours, full cure in days; all are settings, since no standard
    gives them and the tin has the last word.
    """

    key: str
    name: str
    family: str
    cures_by: str
    spread: FigureRange | None
    touch_dry: FigureRange | None
    full_cure: FigureRange | None
    answers: Mapping[FinishProperty, Answer]
    food_note: str
    note: str
    source: str
    confidence: Confidence

    def has(self, asked: FinishProperty) -> bool:
        """Whether rules have to take it as having the property: nobody knows counts as yes."""
        return self.answers[asked].counts_as_yes

    @property
    def properties(self) -> frozenset[FinishProperty]:
        return frozenset(asked for asked in FinishProperty if self.has(asked))


def finish_from_row(row: Mapping[str, str]) -> Finish:
    """The finish in a line of the table; KeyError or ValueError when the table is damaged."""
    answers = {asked: Answer(row[asked.value]) for asked in FinishProperty}
    return Finish(
        key=row["key"],
        name=row["finish"],
        family=row["family"],
        cures_by=row["cures_by"],
        spread=_range(row, "spread_m2_per_l"),
        touch_dry=_range(row, "touch_dry_h"),
        full_cure=_range(row, "full_cure_d"),
        answers=MappingProxyType(answers),
        food_note=row["food_note"],
        note=row["note"],
        source=row["source"],
        confidence=Confidence(row["confidence"]),
    )


def _range(row: Mapping[str, str], column: str) -> FigureRange | None:
    least, most = row[f"{column}_min"], row[f"{column}_max"]
    if not least and not most:
        return None
    return FigureRange(Fraction(least), Fraction(most), row["source"], Confidence(row["confidence"]))
