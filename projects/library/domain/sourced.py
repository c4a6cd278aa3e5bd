"""Values from tables, each with where it is from and how far it may be trusted."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction


class Confidence(StrEnum):
    """How far a value may be trusted; whoever shows one shows this beside it."""

    CONFIRMED = "published-confirmed"
    RECALLED = "published-from-memory"
    COMMON_PRACTICE = "common-practice"
    ESTIMATED = "estimated"


class Answer(StrEnum):
    """Whether a thing has a property. What nobody knows counts as yes."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"

    @property
    def counts_as_yes(self) -> bool:
        return self is not Answer.NO


@dataclass(frozen=True)
class Figure:
    """A number of a table, exact as printed, in the unit its field names."""

    value: Fraction
    source: str
    confidence: Confidence


@dataclass(frozen=True)
class FigureRange:
    """The least and the most of what a table gives."""

    least: Fraction
    most: Fraction
    source: str
    confidence: Confidence
