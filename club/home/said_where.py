"""Where in the order of work each moment's cautions are said, once each."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from projects.library.domain.mountings import Mounting
from projects.library.domain.operations import TURNING
from projects.library.domain.recipe import Recipe
from projects.library.domain.rule_words import mounting_words
from projects.library.domain.words import Moment, Operation
from safety.topics.always_said import SaidGroup, SaidMoment

# Before which steps a moment's cautions are said; marking and checking are no moment of their own.
MOMENTS: Mapping[Operation, tuple[Moment, ...]] = {
    Operation.DRILLING: (Moment.DRILLING,),
    Operation.SANDING: (Moment.SANDING,),
    # What is polished on is a finish.
    Operation.POLISHING: (Moment.SANDING, Moment.FINISHING),
    Operation.FINISHING: (Moment.FINISHING,),
    Operation.FRICTION_BURNING: (Moment.TURNING,),
    **dict.fromkeys(TURNING, (Moment.TURNING,)),
}


class SaidWhere:
    """Hands out each moment's cautions at the place where they are said, and keeps what is left."""

    def __init__(self, recipe: Recipe, said: Iterable[SaidMoment]) -> None:
        self._waiting = {each.moment: each for each in said}
        self._last = self._waiting.pop(Moment.LEAVING, None)
        self._mounting = _by_mounting(recipe.mountings, self._waiting.pop(Moment.MOUNTING, None))
        met = {moment for step in recipe.steps() for moment in MOMENTS.get(step.operation, ())}
        # What no step belongs to is said at the head.
        self.first = tuple(self._waiting.pop(moment) for moment in list(self._waiting) if moment not in met)

    @property
    def last(self) -> tuple[SaidMoment, ...]:
        return (self._last,) if self._last else ()

    def before_mounting(self, place: int) -> tuple[SaidMoment, ...]:
        """What is said of the way of holding, at the first mounting that has it; `place` from 0."""
        return self._mounting[place]

    def before_step(self, operation: Operation) -> tuple[SaidMoment, ...]:
        moments = MOMENTS.get(operation, ())
        return tuple(self._waiting.pop(moment) for moment in moments if moment in self._waiting)


def _by_mounting(mountings: tuple[Mounting, ...], said: SaidMoment | None) -> list[tuple[SaidMoment, ...]]:
    if said is None:
        return [() for _mounting in mountings]
    parts = (
        replace(said, groups=tuple(_groups_of(said, mountings, place))) for place in range(len(mountings))
    )
    return [(part,) if part.groups else () for part in parts]


def _groups_of(said: SaidMoment, mountings: tuple[Mounting, ...], place: int) -> Iterator[SaidGroup]:
    for group in said.groups:
        lines = tuple(line for line in group.lines if _first_place(mountings, line.holding) == place)
        if lines:
            yield replace(group, lines=lines)


def _first_place(mountings: tuple[Mounting, ...], holding: frozenset[str]) -> int:
    """The first mounting that calls for a line; the first of all for a line that no holding calls for."""
    found = (place for place, each in enumerate(mountings) if holding & set(mounting_words(each)))
    return next(found, 0)
