"""Keys inside a recipe: each stands for one thing, and what refers to a thing finds it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Protocol

from projects.library.domain.errors import RecipeError
from projects.library.domain.materials import AdhesiveNeed
from projects.library.domain.recipe import Recipe

# Where a key stands, and the key.
Place = tuple[str, str]


class _Keyed(Protocol):
    @property
    def key(self) -> str: ...


def check_references(recipe: Recipe) -> None:
    """Raise RecipeError: twice for a key that stands twice, unknown_reference for one that is nowhere."""
    for places in (_mountings(recipe), _steps(recipe), _materials(recipe), _preparation(recipe)):
        _check_once(places)
    _check_known(_tailstocks(recipe), ())
    _check_known(_left_out(recipe), [key for _path, key in _steps(recipe)])
    _check_known(_after(recipe), [key for _path, key in _preparation(recipe)])
    _check_known(_parts(recipe), [key for _path, key in _materials(recipe)])
    _check_known(
        _adhesives(recipe), [need.key for need in recipe.materials if isinstance(need, AdhesiveNeed)]
    )


def _check_once(places: Iterable[Place]) -> None:
    seen = set()
    for path, key in places:
        if key in seen:
            raise RecipeError("twice", path=f"{path}.key", key=key)
        seen.add(key)


def _check_known(references: Iterable[Place], known: Iterable[str]) -> None:
    there = set(known)
    for path, key in references:
        if key not in there:
            raise RecipeError("unknown_reference", path=path, key=key)


def _places(field: str, things: Sequence[_Keyed]) -> list[Place]:
    return [(f"{field}[{place}]", thing.key) for place, thing in enumerate(things)]


def _mountings(recipe: Recipe) -> list[Place]:
    return _places("mountings", recipe.mountings)


def _steps(recipe: Recipe) -> list[Place]:
    return [
        step
        for place, mounting in enumerate(recipe.mountings)
        for step in _places(f"mountings[{place}].steps", mounting.steps)
    ]


def _materials(recipe: Recipe) -> list[Place]:
    return _places("materials", recipe.materials)


def _preparation(recipe: Recipe) -> list[Place]:
    """Glue-ups and tasks wait for each other, so their keys are of one kind."""
    return _places("glue_ups", recipe.glue_ups) + _places("preparation", recipe.preparation)


def _tailstocks(recipe: Recipe) -> Iterator[Place]:
    """Where a tailstock goes away at a step that is not in its own mounting."""
    for place, mounting in enumerate(recipe.mountings):
        away_from = mounting.tailstock.away_from if mounting.tailstock else None
        if away_from is not None and away_from not in {step.key for step in mounting.steps}:
            yield f"mountings[{place}].tailstock.away_from", away_from


def _left_out(recipe: Recipe) -> Iterator[Place]:
    for name, variant in (("easier", recipe.easier), ("harder", recipe.harder)):
        for place, key in enumerate(variant.leaves_out if variant else ()):
            yield f"{name}.leaves_out[{place}]", key


def _after(recipe: Recipe) -> Iterator[Place]:
    glue_ups = [(f"glue_ups[{place}]", glue_up.after) for place, glue_up in enumerate(recipe.glue_ups)]
    tasks = [(f"preparation[{place}]", task.after) for place, task in enumerate(recipe.preparation)]
    for path, after in glue_ups + tasks:
        for before, key in enumerate(after):
            yield f"{path}.after[{before}]", key


def _parts(recipe: Recipe) -> Iterator[Place]:
    for place, glue_up in enumerate(recipe.glue_ups):
        for part, key in enumerate(glue_up.parts):
            yield f"glue_ups[{place}].parts[{part}]", key


def _adhesives(recipe: Recipe) -> Iterator[Place]:
    for place, glue_up in enumerate(recipe.glue_ups):
        yield f"glue_ups[{place}].adhesive", glue_up.adhesive
