"""What the checks find in a recipe, with the tables of the house."""

from __future__ import annotations

from projects.library.domain.checks import check
from projects.library.domain.findings import Finding
from projects.library.domain.recipe import Recipe
from projects.library.tables import finishes, woods


def findings(recipe: Recipe) -> tuple[Finding, ...]:
    return check(recipe, woods(), finishes())


def only(recipe: Recipe) -> Finding:
    (finding,) = findings(recipe)
    return finding


def codes(recipe: Recipe) -> list[str]:
    return [finding.code for finding in findings(recipe)]
