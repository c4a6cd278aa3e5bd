"""Everything that is checked of a recipe before it may be used."""

from __future__ import annotations

from collections.abc import Mapping

from projects.library.domain.check_piece import parting_findings, size_findings, wood_findings
from projects.library.domain.check_plan import (
    finish_findings,
    preparation_findings,
    sanding_findings,
    time_findings,
    variant_findings,
    work_findings,
)
from projects.library.domain.check_steps import step_findings
from projects.library.domain.findings import Finding, Weight
from projects.library.domain.finishes import Finish
from projects.library.domain.grits import USUAL_LIMITS, StepLimits
from projects.library.domain.recipe import Recipe
from projects.library.domain.species import Woods


def check(
    recipe: Recipe, woods: Woods, finishes: Mapping[str, Finish], limits: StepLimits = USUAL_LIMITS
) -> tuple[Finding, ...]:
    """Every finding, in the order of the recipe's page. None of them says that the work is safe."""
    return (
        *wood_findings(recipe, woods),
        *size_findings(recipe),
        *parting_findings(recipe),
        *work_findings(recipe),
        *step_findings(recipe),
        *sanding_findings(recipe, limits),
        *finish_findings(recipe, finishes),
        *preparation_findings(recipe),
        *time_findings(recipe),
        *variant_findings(recipe),
    )


def may_be_used(findings: tuple[Finding, ...]) -> bool:
    """Whether nothing is refused, so that an edition may be frozen."""
    return all(finding.weight is not Weight.REFUSED for finding in findings)
