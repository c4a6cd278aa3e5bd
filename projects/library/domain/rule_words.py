"""The words of a recipe that safety rules fire on, in the rules' own vocabulary."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from projects.library.domain.finishes import Finish, FinishProperty
from projects.library.domain.materials import AdhesiveNeed, BlankNeed
from projects.library.domain.mountings import Mounting
from projects.library.domain.operations import CUTTING_TOOLS, TURNING
from projects.library.domain.recipe import Recipe
from projects.library.domain.species import Woods
from projects.library.domain.words import Glue, Operation, Spindle, Tool

# What the recipe calls otherwise than the rules.
OPERATION_WORDS: Mapping[Operation, str] = {
    **dict.fromkeys(TURNING, "turning"),
    Operation.DRILLING: "drilling",
    Operation.FRICTION_BURNING: "friction_burning",
    Operation.SANDING: "sanding",
    Operation.POLISHING: "polishing",
    Operation.FINISHING: "finishing_on_lathe",
}


@dataclass(frozen=True)
class RuleWords:
    """Each a list of a rule's trigger; machine and audience are not the recipe's affair."""

    tools: frozenset[str]
    holding: frozenset[str]
    finishes: frozenset[str]
    finish_properties: frozenset[str]
    woods: frozenset[str]
    wood_groups: frozenset[str]
    wood_conditions: frozenset[str]
    operations: frozenset[str]


def rule_words(recipe: Recipe, woods: Woods, finishes: Mapping[str, Finish]) -> RuleWords:
    """The words of this recipe. A finish that isn't in the table counts as having every property."""
    keys = frozenset(_finishes(recipe))
    blanks = [
        recipe.blank,
        *(need.blank for need in recipe.materials if isinstance(need, BlankNeed) and need.blank),
    ]
    species = frozenset(blank.species for blank in blanks)
    return RuleWords(
        tools=frozenset({"lathe", *(step.tool for step in recipe.steps() if step.tool in CUTTING_TOOLS)}),
        holding=frozenset(word for mounting in recipe.mountings for word in mounting_words(mounting)),
        finishes=keys,
        finish_properties=frozenset(word for key in keys for word in _properties(finishes.get(key))),
        woods=species,
        wood_groups=frozenset(woods.group(key).value for key in species),
        wood_conditions=frozenset(condition.value for blank in blanks for condition in blank.conditions),
        operations=frozenset(_operations(recipe)),
    )


def mounting_words(mounting: Mounting) -> Iterator[str]:
    """The words of one way of holding, its tailstock and its drill chuck among them."""
    yield from mounting.holding.rule_words
    if mounting.tailstock is not None:
        yield "tailstock"
    if any(step.tool is Tool.DRILL for step in mounting.steps):
        yield from ("tailstock", "drill_chuck")


def _finishes(recipe: Recipe) -> Iterator[str]:
    """Instant glue counts as glue as well as finish."""
    yield from (coat.finish for coat in recipe.finish)
    glues = {need.glue for need in recipe.materials if isinstance(need, AdhesiveNeed)}
    yield from glues & {Glue.INSTANT_GLUE}


def _properties(finish: Finish | None) -> frozenset[FinishProperty]:
    return frozenset(FinishProperty) if finish is None else finish.properties


def _operations(recipe: Recipe) -> Iterator[str]:
    done = {step.operation for step in recipe.steps()}
    yield from (OPERATION_WORDS[operation] for operation in done if operation in OPERATION_WORDS)
    if recipe.blank.grain_across:
        yield "face_work"
    if any(step.spindle is Spindle.REVERSE for step in recipe.steps()):
        yield "reverse"
    if recipe.glue_ups:
        yield "glued_blank"
    if recipe.food_ware:
        yield "food_ware"
