"""Recipes made at random, from the same description that the schema is made from."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache

from hypothesis import strategies as st

from club.base.quantities.area import Area
from club.base.quantities.length import LONGEST, NM_PER_INCH, Length, parse_length
from club.base.quantities.volume import Volume
from projects.geometry.profile import ShapeKind
from projects.library.domain.drawn import DrawnBore, DrawnMark, DrawnProfile, DrawnShape
from projects.library.domain.materials import AdhesiveNeed
from projects.library.domain.mountings import Mounting
from projects.library.domain.recipe import Recipe
from projects.library.domain.structure import (
    ChoicePart,
    ListPart,
    Part,
    QuantityPart,
    RecordPart,
    TextPart,
    WholePart,
    WordPart,
    YesNoPart,
    members,
)

TYPED = [
    "1/2 in",
    '2 3/4"',
    "69.85 mm",
    "7cm",
    "1 ft 6 in",
    "2\u00be in",
    "2,75 in",
    "0.5\u00a0mm",
    "12.7 mm",
]
TYPED_AMOUNTS: dict[object, list[str]] = {Area: ["12 in\u00b2", "75 cm2"], Volume: ["2 ml", "1 fl oz"]}


def lengths(least: int = 1, most: int = LONGEST) -> st.SearchStrategy[Length]:
    """Typed ones, typed ones that no longer say their amount, and ones that were worked out."""
    amounts = st.integers(least, most)
    stale = st.builds(Length, amounts, st.sampled_from([*TYPED, " 5 mm ", "wide"]))
    typed = st.sampled_from(TYPED).map(parse_length).filter(lambda length: least <= length.nm <= most)
    return typed | amounts.map(Length) | stale


def _quantity(part: QuantityPart) -> st.SearchStrategy[object]:
    form = part.form
    if form.make is Length:
        return lengths(least=int(part.above))
    typed = st.sampled_from(TYPED_AMOUNTS[form.make]).map(form.read)
    return typed | st.integers(1, form.most).map(form.make)


@cache
def _text(part: TextPart) -> st.SearchStrategy[str]:
    bounds = part.bounds
    if "a-z" in bounds.pattern:
        return st.from_regex(r"[a-z][a-z0-9]{0,8}(?:[_-][a-z0-9]{1,6})?", fullmatch=True)
    if "MT" in bounds.pattern:
        return st.sampled_from(["", *(f"MT{size}" for size in range(7))])
    text = st.text(min_size=bounds.least, max_size=min(bounds.most, 12)) | st.just(
        "light cuts, \u00bd in \u2014 \u00e9"
    )
    return text.filter(lambda made: re.search(bounds.pattern, made) is not None)


@cache
def part_strategy(part: Part) -> st.SearchStrategy[object]:
    match part:
        case TextPart():
            return _text(part)
        case WholePart(bounds):
            return st.integers(bounds.least, bounds.most)
        case YesNoPart():
            return st.booleans()
        case WordPart(words):
            return st.sampled_from(list(words))
        case QuantityPart():
            return _quantity(part)
        case ListPart(entry, bounds):
            most = max(bounds.least, min(bounds.most, 2))
            return st.lists(part_strategy(entry), min_size=bounds.least, max_size=most).map(tuple)
        case RecordPart(record):
            return records(record)
        case ChoicePart(choices):
            return st.one_of([records(record) for record in choices])


@cache
def records(record: type) -> st.SearchStrategy[object]:
    if record is DrawnProfile:
        return profiles()
    required = {member.name: part_strategy(member.part) for member in members(record) if member.required}
    others = {member.name: part_strategy(member.part) for member in members(record) if not member.required}
    return st.fixed_dictionaries(required, optional=others).map(lambda values: record(**values))


@st.composite
def profiles(draw: st.DrawFn) -> DrawnProfile:
    """Cones and cylinders, so that each is a piece of wood; sometimes bored through."""
    gaps = draw(st.lists(st.integers(1, 4 * NM_PER_INCH), min_size=1, max_size=5))
    count = len(gaps) + 1
    diameters = draw(st.lists(lengths(10**7, 10**9), min_size=count, max_size=count))
    places = [0]
    for gap in gaps:
        places.append(places[-1] + gap)
    marks = tuple(DrawnMark(Length(at), across) for at, across in zip(places, diameters, strict=True))
    straight = DrawnShape(ShapeKind.STRAIGHT)
    bore = DrawnBore(
        (DrawnMark(Length(0), Length(10**6)), DrawnMark(marks[-1].at, Length(10**6))), (straight,)
    )
    return DrawnProfile(marks, (straight,) * len(gaps), draw(st.none() | st.just(bore)))


@st.composite
def recipes(draw: st.DrawFn) -> Recipe:
    """Whole recipes whose keys are their own and whose references find something."""
    made = draw(records(Recipe))
    assert isinstance(made, Recipe)
    return _with_references(draw, _with_own_keys(made))


def _with_own_keys(recipe: Recipe) -> Recipe:
    mountings = [replace(mounting, key=f"m{place}") for place, mounting in enumerate(recipe.mountings)]
    return replace(
        recipe,
        mountings=tuple(_with_own_steps(mounting) for mounting in mountings),
        materials=tuple(
            replace(need, key=f"{need.key}-{place}") for place, need in enumerate(recipe.materials)
        ),
        glue_ups=tuple(replace(one, key=f"g{place}") for place, one in enumerate(recipe.glue_ups)),
        preparation=tuple(replace(task, key=f"t{place}") for place, task in enumerate(recipe.preparation)),
    )


def _with_own_steps(mounting: Mounting) -> Mounting:
    own = (replace(step, key=f"{mounting.key}-{place}") for place, step in enumerate(mounting.steps))
    return replace(mounting, steps=tuple(own))


def _with_references(draw: st.DrawFn, recipe: Recipe) -> Recipe:
    steps = [step.key for step in recipe.steps()]
    tasks = [*(one.key for one in recipe.glue_ups), *(task.key for task in recipe.preparation)]
    materials = [need.key for need in recipe.materials]
    glues = [need.key for need in recipe.materials if isinstance(need, AdhesiveNeed)]
    some_tasks = st.lists(st.sampled_from(tasks), max_size=2).map(tuple) if tasks else st.just(())
    some_steps = st.lists(st.sampled_from(steps), max_size=2).map(tuple)
    parts = (
        st.lists(st.sampled_from(materials), min_size=2, max_size=3).map(tuple) if materials else st.nothing()
    )
    glue_ups = tuple(
        replace(one, after=draw(some_tasks), parts=draw(parts), adhesive=draw(st.sampled_from(glues)))
        for one in recipe.glue_ups
        if glues
    )
    kept = {*(one.key for one in glue_ups), *(task.key for task in recipe.preparation)}
    return replace(
        recipe,
        mountings=tuple(_with_tailstock(draw, mounting) for mounting in recipe.mountings),
        glue_ups=tuple(replace(one, after=_those(one.after, kept)) for one in glue_ups),
        preparation=tuple(replace(task, after=_those(draw(some_tasks), kept)) for task in recipe.preparation),
        easier=recipe.easier and replace(recipe.easier, leaves_out=draw(some_steps)),
        harder=recipe.harder and replace(recipe.harder, leaves_out=draw(some_steps)),
    )


def _those(keys: tuple[str, ...], kept: set[str]) -> tuple[str, ...]:
    return tuple(key for key in keys if key in kept)


def _with_tailstock(draw: st.DrawFn, mounting: Mounting) -> Mounting:
    if mounting.tailstock is None:
        return mounting
    away_from = draw(st.none() | st.sampled_from([step.key for step in mounting.steps]))
    return replace(mounting, tailstock=replace(mounting.tailstock, away_from=away_from))
