"""What a recipe uses that no rule of the handout speaks of. That no rule speaks of it makes nothing safe."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from projects.library.domain.finishes import Finish
from projects.library.domain.holding import JamChuck
from projects.library.domain.materials import AdhesiveNeed
from projects.library.domain.recipe import Recipe
from projects.library.domain.rule_words import OPERATION_WORDS, RuleWords, rule_words
from projects.library.domain.species import Woods
from projects.library.domain.words import Operation, Tool
from safety.topics.domain.rules import Place, Rule, Word, fire

# A tool that is only ever used for one operation is spoken of with it.
SPOKEN_OF_WITH: Mapping[Tool, str] = {
    Tool.DRILL: "drilling",
    Tool.BURNING_WIRE: "friction_burning",
    Tool.SANDPAPER: "sanding",
}


@dataclass(frozen=True)
class Use:
    """Something used, and the words of a trigger by which a rule may speak of it."""

    word: Word
    known_by: frozenset[Word]


def uncovered(
    rules: tuple[Rule, ...], recipe: Recipe, woods: Woods, finishes: Mapping[str, Finish]
) -> tuple[Word, ...]:
    """What is used and has no rule among those that fire: a rule for one case doesn't cover another."""
    words = rule_words(recipe, woods, finishes)
    covered = {word for fired in fire(rules, Place.HANDOUT, words) for word in fired.because}
    return tuple(use.word for use in uses(recipe, words, woods, finishes) if not use.known_by & covered)


def uses(recipe: Recipe, words: RuleWords, woods: Woods, finishes: Mapping[str, Finish]) -> tuple[Use, ...]:
    """Every tool, operation, way of holding, wood, finish and glue, each once."""
    found = (
        *_tools(recipe),
        *_operations(recipe, words),
        *_holding(recipe, words),
        *_woods(words, woods),
        *_finishes(words, finishes),
        *_adhesives(recipe),
    )
    return tuple({use.word: use for use in found}.values())


def _use(among: str, word: str, *others: Word) -> Use:
    own = Word(among, word)
    return Use(own, frozenset({own, *others}))


def _tools(recipe: Recipe) -> Iterator[Use]:
    for tool in sorted({step.tool for step in recipe.steps() if step.tool}):
        others = [Word("operations", SPOKEN_OF_WITH[tool])] if tool in SPOKEN_OF_WITH else []
        yield _use("tools", tool.value, *others)


def _operations(recipe: Recipe, words: RuleWords) -> Iterator[Use]:
    """What is mounted is named by its way of holding."""
    done = {step.operation for step in recipe.steps()} - {Operation.MOUNTING}
    own = {operation.value for operation in done if operation not in OPERATION_WORDS}
    yield from (_use("operations", word) for word in sorted(words.operations | own))


def _holding(recipe: Recipe, words: RuleWords) -> Iterator[Use]:
    for word in sorted(words.holding):
        others = [Word("operations", "drilling")] if word == "drill_chuck" else []
        yield _use("holding", word, *others)
    if any(isinstance(mounting.holding, JamChuck) for mounting in recipe.mountings):
        yield _use("holding", JamChuck.kind)


def _woods(words: RuleWords, woods: Woods) -> Iterator[Use]:
    for key in sorted(words.woods):
        yield _use("woods", key, Word("wood_groups", woods.group(key).value))
    yield from (_use("wood_conditions", condition) for condition in sorted(words.wood_conditions))


def _finishes(words: RuleWords, finishes: Mapping[str, Finish]) -> Iterator[Use]:
    """A finish that isn't in the table counts as having every property."""
    every = words.finish_properties
    for key in sorted(words.finishes):
        has = finishes[key].properties if key in finishes else every
        yield _use("finishes", key, *(Word("finish_properties", one) for one in has))
    yield from (_use("finish_properties", one) for one in sorted(every))


def _adhesives(recipe: Recipe) -> Iterator[Use]:
    """Instant glue is spoken of as a finish, wherever it is used."""
    for glue in sorted({need.glue for need in recipe.materials if isinstance(need, AdhesiveNeed)}):
        yield _use("adhesives", glue.value, Word("finishes", glue.value))
