"""What a handout always says of such a recipe, in the reader's language."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from django.utils.functional import Promise

from projects.library.domain.finishes import Finish
from projects.library.domain.recipe import Recipe
from projects.library.domain.rule_words import rule_words
from projects.library.domain.species import Woods
from projects.library.domain.words import Moment, Severity
from safety.topics.domain.assembly import WORST_FIRST, CautionLine, MomentCautions, assemble
from safety.topics.domain.coverage import uncovered
from safety.topics.domain.rules import Word
from safety.topics.sentences import MOMENTS, heading, words_for
from safety.topics.tables import rules

# What is said at every lathe needs no reason.
LATHE = Word("tools", "lathe")


@dataclass(frozen=True)
class SaidLine:
    """`why` names what in the recipe calls for it, `who_says` who does; both are "" for the recipe's own.

    `holding` are the ways of holding that call for it, in the rules' words.
    """

    statement: str
    why: str
    who_says: str
    holding: frozenset[str] = frozenset()


@dataclass(frozen=True)
class SaidGroup:
    severity: Severity
    heading: str
    lines: tuple[SaidLine, ...]


@dataclass(frozen=True)
class SaidMoment:
    """What is said at one moment: stops, then cautions, then notes, as far as there are any."""

    moment: Moment
    name: Promise
    groups: tuple[SaidGroup, ...]


def cautions_for(recipe: Recipe, woods: Woods, finishes: Mapping[str, Finish]) -> tuple[SaidMoment, ...]:
    """Every caution of a handout by moment, the recipe's own among them; at most nine lines are stops."""
    words = rule_words(recipe, woods, finishes)

    def said(line: CautionLine) -> SaidLine:
        because = [word for one in line.said for word in one.because]
        sayers = (str(one.rule.who_says) for one in line.said if one.rule)
        return SaidLine(
            " ".join(str(one.statement) for one in line.said),
            "; ".join(words_for([word for word in because if word != LATHE], woods, finishes)),
            "; ".join(dict.fromkeys(sayers)),
            frozenset(word.word for word in because if word.among == "holding"),
        )

    def group(cautions: MomentCautions, severity: Severity) -> SaidGroup:
        lines = tuple(said(line) for line in cautions.of(severity))
        return SaidGroup(severity, heading(severity, cautions.moment), lines)

    return tuple(
        SaidMoment(
            cautions.moment,
            MOMENTS[cautions.moment],
            tuple(group(cautions, severity) for severity in WORST_FIRST if cautions.of(severity)),
        )
        for cautions in assemble(rules(), words, recipe.cautions)
    )


def uncovered_words(recipe: Recipe, woods: Woods, finishes: Mapping[str, Finish]) -> tuple[str, ...]:
    """What the recipe uses and no rule of the handout speaks of, for whoever teaches it to speak of."""
    return words_for(uncovered(rules(), recipe, woods, finishes), woods, finishes)
