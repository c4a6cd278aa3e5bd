"""What the checks say of a recipe, in sentences, apart by weight."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from projects.library.domain.checks import check
from projects.library.domain.findings import Finding, Weight
from projects.library.domain.recipe import Recipe
from projects.library.sentences.findings import finding_sentence
from projects.library.tables import finishes, woods


@dataclass(frozen=True)
class Remark:
    sentence: str
    path: str


@dataclass(frozen=True)
class LookedOver:
    """`refused` stops the draft from being kept; `mind` is for somebody to look at."""

    refused: tuple[Remark, ...]
    mind: tuple[Remark, ...]


def looked_over(recipe: Recipe) -> LookedOver:
    found = check(recipe, woods(), finishes())
    return LookedOver(_of(found, Weight.REFUSED), _of(found, Weight.MIND))


def _of(found: Iterable[Finding], weight: Weight) -> tuple[Remark, ...]:
    return tuple(
        Remark(finding_sentence(finding), finding.path) for finding in found if finding.weight is weight
    )
