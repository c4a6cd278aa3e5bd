"""A rule: what it says, how much hangs on it, when and where it is said, and what makes it fire."""

from __future__ import annotations

from dataclasses import dataclass, fields
from enum import StrEnum
from typing import Protocol, TypeAlias

from projects.library.domain.rule_words import RuleWords
from projects.library.domain.sourced import Confidence
from projects.library.domain.words import Moment, Severity

Words: TypeAlias = tuple[str, ...]


class Spoken(Protocol):
    """Text for people: a str, or one that is translated when somebody reads it."""

    def __str__(self) -> str: ...


class Place(StrEnum):
    """Where a rule is said. Limits and law stand on the officer's list only."""

    INDUCTION = "induction"
    BRIEFING = "briefing"
    HANDOUT = "handout"
    LATHE_CARD = "lathe_card"
    OIL_BENCH = "oil_bench"
    OFFICER = "officer"


@dataclass(frozen=True)
class Trigger:
    """Words of a recipe: any one of a list will do, but one of every list; an empty list asks nothing.

    A rule hangs on a property where that is what matters, on a name only where the one thing is meant.
    """

    tools: Words = ()
    holding: Words = ()
    finishes: Words = ()
    finish_properties: Words = ()
    woods: Words = ()
    wood_groups: Words = ()
    wood_conditions: Words = ()
    operations: Words = ()


@dataclass(frozen=True)
class Rule:
    """`who_says` stands where people read it; `source` names laws and is for the officer's list."""

    key: str
    severity: Severity
    moment: Moment
    statement: Spoken
    said_at: tuple[Place, ...]
    who_says: Spoken
    source: str
    confidence: Confidence
    trigger: Trigger


@dataclass(frozen=True, order=True)
class Word:
    """A word of a recipe, and the list of the trigger it stands in."""

    among: str
    word: str


@dataclass(frozen=True)
class Fired:
    """A rule with the words that made it fire; none for a rule that is always said."""

    rule: Rule
    because: tuple[Word, ...]


def fire(rules: tuple[Rule, ...], place: Place, words: RuleWords) -> tuple[Fired, ...]:
    """The rules that are said at this place for a recipe with these words, in their own order."""
    here = (rule for rule in rules if place in rule.said_at)
    found = ((rule, _because(rule.trigger, words)) for rule in here)
    return tuple(Fired(rule, because) for rule, because in found if because is not None)


def _because(trigger: Trigger, words: RuleWords) -> tuple[Word, ...] | None:
    """None when a list that asks finds none of its words."""
    because: list[Word] = []
    for among in (member.name for member in fields(trigger)):
        asked: Words = getattr(trigger, among)
        used: frozenset[str] = getattr(words, among)
        met = [Word(among, word) for word in asked if word in used]
        if asked and not met:
            return None
        because += met
    return tuple(because)
