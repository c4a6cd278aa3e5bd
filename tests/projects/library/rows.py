"""Projects for tests, made the way the club makes them."""

from __future__ import annotations

from dataclasses import replace

from projects.library.actions import add_edition, add_project
from projects.library.domain.recipe import Recipe
from projects.library.models import Edition
from tests.projects.library.examples import KNOB


def kept(recipe: Recipe = KNOB) -> Edition:
    """The first edition of a project, kept."""
    return add_project(None, recipe, kept=True)


def draft(recipe: Recipe = KNOB) -> Edition:
    """The first edition of a project, still being written."""
    return add_project(None, recipe)


def next_draft(edition: Edition, **changes: object) -> Edition:
    """The draft of the next edition, with these fields of the recipe changed."""
    return add_edition(None, edition.project, replace(edition.recipe, **changes))  # type: ignore[arg-type]
