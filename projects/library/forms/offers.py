"""What a recipe and the tables offer for choosing: its own steps, needs and tasks, woods, finishes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum

from django.utils.text import Truncator
from django.utils.translation import gettext

from projects.library.domain.blank import NOT_NAMED
from projects.library.domain.materials import AdhesiveNeed
from projects.library.domain.mountings import Step
from projects.library.domain.places import Place
from projects.library.domain.preparation import GlueUp, Task
from projects.library.domain.recipe import Recipe, Variant
from projects.library.forms.fields import Offered
from projects.library.sentences.words import word_for
from projects.library.tables import finishes, woods

SIZES = range(7)
LONGEST_LABEL = 80


def words_of(words: type[Enum]) -> Offered:
    return [(str(word.value), word_for(word)) for word in words]


def tapers() -> Offered:
    named = [(f"MT{size}", gettext("Morse No. %(size)s") % {"size": size}) for size in SIZES]
    return [("", gettext("whatever the lathe has")), *named]


def species() -> Offered:
    """Every wood with figures or with notes on health, by its name."""
    noted = {note.key: note.wood for note in woods().notes if note.key}
    known = {wood.key: wood.label for wood in woods().species.values()}
    named = sorted((noted | known).items(), key=lambda pair: pair[1].casefold())
    return [(NOT_NAMED, gettext("a wood that nobody named yet")), *named]


def finishes_by_name() -> Offered:
    return sorted(((finish.key, finish.name) for finish in finishes().values()), key=lambda pair: pair[1])


@dataclass(frozen=True)
class Offers:
    """What may be chosen in a record that stands, or is to stand, at this place of a recipe."""

    recipe: Recipe
    place: Place
    current: object = None

    def steps_here(self) -> Offered:
        """The steps of the mounting that this is, or lies in."""
        at = self.place[1] if self.place[:1] == ("mountings",) and len(self.place) > 1 else -1
        here = [mounting for number, mounting in enumerate(self.recipe.mountings) if number == at]
        return _numbered(here[0].steps) if here else []

    def steps_to_leave_out(self) -> Offered:
        """Those that may be left out, and those that this variant leaves out though they may not."""
        leaves_out = self.current.leaves_out if isinstance(self.current, Variant) else ()
        steps = [step for step in self.recipe.steps() if step.may_be_left_out or step.key in leaves_out]
        return [(step.key, _short(step.text)) for step in steps]

    def before(self) -> Offered:
        """Every glue-up and task but this one."""
        own = getattr(self.current, "key", None)
        every: tuple[GlueUp | Task, ...] = (*self.recipe.glue_ups, *self.recipe.preparation)
        return [(one.key, one.title) for one in every if one.key != own]

    def materials(self) -> Offered:
        return [(need.key, need.specification) for need in self.recipe.materials]

    def adhesives(self) -> Offered:
        glues = (need for need in self.recipe.materials if isinstance(need, AdhesiveNeed))
        return [(need.key, need.specification) for need in glues]


def _numbered(steps: Iterable[Step]) -> Offered:
    return [(step.key, f"{number}. {_short(step.text)}") for number, step in enumerate(steps, 1)]


def _short(text: str) -> str:
    return Truncator(text).chars(LONGEST_LABEL)
