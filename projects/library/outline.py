"""A draft as its page shows it: every part of the recipe in the order people think of it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from django.utils.translation import gettext as _

from projects.library.domain.mountings import Mounting
from projects.library.domain.places import Place, write_place
from projects.library.domain.recipe import Recipe
from projects.library.sentences import lines
from projects.library.sentences.holding import blank_words
from projects.library.sentences.lengths import Show
from projects.library.sentences.lines import Lines
from projects.library.sentences.materials import amount_words, coat_words, spares_words
from projects.library.sentences.places import place_words


@dataclass(frozen=True)
class Entry:
    """One line: what it is, what is said of it, and what can be done with it.

    `at` is its place in an address, `anchor` its name on the page, `called` how people call the place.
    `drawing` is the place of a drawing that belongs to it, `focus` the press a keyboard goes on from.
    """

    at: str
    anchor: str
    called: str
    title: str
    says: Lines = ()
    up: bool = False
    down: bool = False
    may_go: bool = False
    drawing: str = ""
    focus: str = ""
    steps: Section | None = None


@dataclass(frozen=True)
class Section:
    """Lines under a heading. `add` is where one more would stand; `nothing` is said where there is none."""

    anchor: str
    heading: str
    entries: tuple[Entry, ...]
    add: str = ""
    add_words: str = ""
    nothing: str = ""


def outline(recipe: Recipe, show: Show) -> tuple[Section, ...]:
    """Every section of a draft's page, the drawing apart; `show` is how the reader wants lengths."""
    return (
        Section("about", _("What it is"), (_line((), *lines.about_lines(recipe)),)),
        Section("wood", _("Wood"), tuple(_wood(recipe, show))),
        _mountings(recipe, show),
        Section("sanding", _("Sanding"), (_grits(recipe),)),
        *_lists(recipe, show),
        Section("class", _("For the class"), tuple(_for_the_class(recipe))),
        Section("variants", _("Easier and harder"), tuple(_variants(recipe))),
    )


def focused(sections: Iterable[Section], at: str, by: int) -> tuple[Section, ...]:
    """The sections with the keyboard on the entry that moved: to move it on, or back from an end."""
    return tuple(
        replace(section, entries=tuple(_focused(entry, at, by) for entry in section.entries))
        for section in sections
    )


def _focused(entry: Entry, at: str, by: int) -> Entry:
    if entry.at == at:
        return replace(entry, focus="up" if entry.up and (by < 0 or not entry.down) else "down")
    return replace(entry, steps=focused([entry.steps], at, by)[0]) if entry.steps else entry


def _line(place: Place, *said: str) -> Entry:
    title, *says = said
    anchor = "-".join(str(step) for step in place) or "recipe"
    return Entry(write_place(place), anchor, place_words(place), title, tuple(line for line in says if line))


def _entries(
    place: Place, things: Sequence[Any], say: Callable[[Any], Lines], least: int
) -> tuple[Entry, ...]:
    last = len(things) - 1
    return tuple(
        replace(_line((*place, at), *say(thing)), up=at > 0, down=at < last, may_go=len(things) > least)
        for at, thing in enumerate(things)
    )


def _wood(recipe: Recipe, show: Show) -> Iterator[Entry]:
    yield _line(("blank",), _("Blank"), blank_words(recipe.blank, show))
    for name, title, end in (
        ("left_end", _("Left end"), recipe.left_end),
        ("right_end", _("Right end"), recipe.right_end),
    ):
        yield replace(_line((name,), title, lines.end_words(end, show)), may_go=end is not None)


def _mountings(recipe: Recipe, show: Show) -> Section:
    entries = _entries(
        ("mountings",), recipe.mountings, lambda mounting: lines.mounting_lines(mounting, show), 1
    )
    with_steps = (
        replace(entry, steps=_steps(at, mounting, show))
        for at, (entry, mounting) in enumerate(zip(entries, recipe.mountings, strict=True))
    )
    add = write_place(("mountings", len(recipe.mountings)))
    return Section("mountings", _("Order of work"), tuple(with_steps), add, _("Add a mounting"))


def _steps(at: int, mounting: Mounting, show: Show) -> Section:
    place: Place = ("mountings", at, "steps")
    entries = _entries(place, mounting.steps, lambda step: lines.step_lines(step, show), 1)
    add = write_place((*place, len(mounting.steps)))
    return Section(f"steps-{at}", _("Steps"), entries, add, _("Add a step"))


def _grits(recipe: Recipe) -> Entry:
    grits = ", ".join(f"P{grit}" for grit in recipe.grits)
    return _line(("grits",), _("Grits"), grits or _("nothing is sanded"))


def _lists(recipe: Recipe, show: Show) -> Iterator[Section]:
    """The lists in which nothing need stand."""
    tasks = {glue_up.key: glue_up.title for glue_up in recipe.glue_ups}
    tasks |= {task.key: task.title for task in recipe.preparation}
    needs = {need.key: need.specification for need in recipe.materials}
    said: tuple[tuple[str, str, str, str, Callable[[Any], Lines]], ...] = (
        ("finish", _("Finish"), _("Add a coat"), _("No finish."), lambda coat: (coat_words(coat),)),
        (
            *("materials", _("Materials"), _("Add a material"), _("No material is listed.")),
            lambda need: (need.specification, amount_words(need, show)),
        ),
        (
            *("glue_ups", _("Glue-ups"), _("Add a glue-up"), _("Nothing is glued.")),
            lambda glue_up: lines.glue_up_lines(glue_up, needs, tasks),
        ),
        (
            *("preparation", _("Preparation"), _("Add a task"), _("Nothing is done beforehand.")),
            lambda task: lines.task_lines(task, tasks),
        ),
        (
            *("cautions", _("Cautions"), _("Add a caution"), _("None besides those that are always said.")),
            lines.caution_lines,
        ),
    )
    for name, heading, add, nothing, say in said:
        things = getattr(recipe, name)
        entries = _entries((name,), things, say, 0)
        yield Section(name, heading, entries, write_place((name, len(things))), add, nothing)


def _for_the_class(recipe: Recipe) -> Iterator[Entry]:
    yield _line(("skills",), _("Skills needed"), lines.skills_words(recipe.skills))
    yield _line(("time",), _("Time"), lines.time_words(recipe.time))
    yield _line(("spares",), _("Spares"), spares_words(recipe.spares))


def _variants(recipe: Recipe) -> Iterator[Entry]:
    steps = {step.key: step.text for step in recipe.steps()}
    for name, title, variant in (
        ("easier", _("Easier"), recipe.easier),
        ("harder", _("Harder"), recipe.harder),
    ):
        entry = _line((name,), *lines.variant_lines(title, variant, steps))
        is_there = variant is not None
        yield replace(entry, may_go=is_there, drawing=f"{name}.profile" if is_there else "")
