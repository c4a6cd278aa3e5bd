"""Writes to projects and their editions: each one short transaction, each with its change row."""

from __future__ import annotations

from collections.abc import Iterator

from django.contrib.auth.base_user import AbstractBaseUser
from django.contrib.auth.models import AnonymousUser
from django.db import transaction
from django.utils import timezone

from club.base.changes import record_change, snapshot
from club.base.writing import StaleError, unless_taken
from projects.library.domain.checks import check, may_be_used
from projects.library.domain.frozen_values import with_table_values
from projects.library.domain.recipe import Recipe
from projects.library.models import Edition, EditionWord, Project
from projects.library.tables import finishes, woods

By = AbstractBaseUser | AnonymousUser | None
Kind = EditionWord.Kind


class NotGoodError(Exception):
    """The recipe has something that stops it from being kept."""


@transaction.atomic
def add_project(by: By, recipe: Recipe, *, kept: bool = False) -> Edition:
    """A project and its first edition, under the recipe's key; raises TakenError when the key is taken."""
    with unless_taken():
        project = Project.objects.create(key=recipe.key)
    return add_edition(by, project, recipe, kept=kept)


@transaction.atomic
def add_edition(by: By, project: Project, recipe: Recipe, *, kept: bool = False) -> Edition:
    """The next edition of a project, a draft unless `kept`.

    Raises TakenError when the project has a draft already, NotGoodError for one that may not be kept.
    """
    Project.objects.select_for_update().get(pk=project.pk)
    last = project.editions.order_by("-number").first()
    edition = Edition(project=project, number=last.number + 1 if last else 1)
    if kept:
        _keep(edition, recipe)
    else:
        edition.take(recipe)
    with unless_taken():
        edition.save(force_insert=True)
    write_words(edition)
    record_change(by, edition, None, snapshot(edition))
    return edition


@transaction.atomic
def save_draft(by: By, edition: Edition, recipe: Recipe, revision: int | None) -> Edition:
    """Write this recipe into a draft; raises StaleError when it was mended, kept or thrown away since."""
    current = _locked_draft(edition.pk, revision)
    before = snapshot(current)
    current.take(recipe)
    current.revision += 1
    current.save(update_fields=("recipe_json", "title", "summary", "revision"))
    write_words(current)
    record_change(by, current, before, snapshot(current))
    return current


@transaction.atomic
def keep_draft(by: By, edition: Edition, revision: int | None) -> Edition:
    """Freeze a draft with what the tables say today; raises StaleError, and NotGoodError for a bad recipe."""
    current = _locked_draft(edition.pk, revision)
    before = snapshot(current)
    _keep(current, current.recipe)
    current.revision += 1
    current.save(update_fields=("recipe_json", "title", "summary", "state", "kept_at", "revision"))
    record_change(by, current, before, snapshot(current))
    return current


@transaction.atomic
def next_edition(by: By, project: Project) -> Edition:
    """A draft that starts as the last kept edition; raises TakenError when there is a draft already."""
    last = project.editions.kept().order_by("-number").first()
    if last is None:
        raise StaleError
    return add_edition(by, project, last.recipe)


@transaction.atomic
def throw_away(by: By, edition: Edition, revision: int | None) -> Edition:
    """The draft that is gone now, and the project with its only edition; raises StaleError."""
    current = _locked_draft(edition.pk, revision)
    record_change(by, current, snapshot(current), None)
    project = current.project
    current.delete()
    if not project.editions.exists() and not project.lessons.exists():
        project.delete()
    return current


def write_words(edition: Edition) -> None:
    """Write the words of an edition anew; they have no life of their own."""
    edition.words.all().delete()
    EditionWord.objects.bulk_create(
        EditionWord(edition=edition, kind=kind, word=word)
        for kind, word in sorted(set(words_of(edition.recipe)))
    )


def words_of(recipe: Recipe) -> Iterator[tuple[Kind, str]]:
    """What an edition is found by."""
    yield from ((Kind.HOLDING, mounting.holding.kind) for mounting in recipe.mountings)
    yield from ((Kind.TOOL, step.tool.value) for step in recipe.steps() if step.tool)
    yield from ((Kind.SKILL_TAUGHT, step.skill) for step in recipe.steps() if step.skill)
    yield from ((Kind.SKILL_NEEDED, skill) for skill in recipe.skills)
    yield from ((Kind.FINISH, coat.finish) for coat in recipe.finish)
    yield Kind.WOOD, recipe.blank.species


def _keep(edition: Edition, recipe: Recipe) -> None:
    if not may_be_used(check(recipe, woods(), finishes())):
        raise NotGoodError
    edition.take(with_table_values(recipe, woods(), finishes()))
    edition.state, edition.kept_at = Edition.State.KEPT, timezone.now()


def _locked_draft(pk: int, revision: int | None) -> Edition:
    current = Edition.objects.drafts().select_for_update(of=("self",)).filter(pk=pk).first()
    if current is None or current.revision != revision:
        raise StaleError
    return current
