"""Speeds a step is not to be run above, from the work itself: which machine runs it is not known here.

Each limit is the least of its terms, in whole rpm rounded down to ten, which is what a dial can be set by. A
lathe, a chuck and a faceplate have plates of their own, and the least of all of these holds; the machine's
manual and the instructor come before any of them. That a speed is below its limit makes nothing safe.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType

from club.base.quantities.length import NM_PER_INCH, Length
from club.base.quantities.speed import RimSpeed, rim_speed
from projects.library.domain.mountings import Step
from projects.library.domain.recipe import Recipe
from projects.library.domain.sourced import Confidence
from projects.library.domain.turning_diameters import StepDiameters, step_diameters
from projects.library.domain.words import Stage

# What a beginner can set and read.
READABLE = 10
CLASS_SOURCE = "setting for classes"
RULE_SOURCE = "rule of thumb of turning clubs"


class Work(StrEnum):
    """What a class limit is set for."""

    ROUGH_SPINDLE = "rough_spindle"
    ROUGH_FACE = "rough_face"
    SHAPE = "shape"
    SHAPE_SIGNED_OFF = "shape_signed_off"
    SAND = "sand"
    DRILL = "drill"


@dataclass(frozen=True)
class ClassLimit:
    """`inch_rpm` is the most that diameter in inches times rpm may be, `ceiling` the most rpm at all."""

    inch_rpm: int
    ceiling: int
    source: str = CLASS_SOURCE
    confidence: Confidence = Confidence.COMMON_PRACTICE


@dataclass(frozen=True)
class ClassLimits:
    """What a club has set. `rim` holds out of round and for people not signed off, `rim_round` otherwise."""

    classes: Mapping[Work, ClassLimit]
    rim: int = 6_000
    rim_round: int = 9_000
    rim_source: str = RULE_SOURCE
    rim_confidence: Confidence = Confidence.COMMON_PRACTICE


USUAL_LIMITS = ClassLimits(
    MappingProxyType(
        {
            Work.ROUGH_SPINDLE: ClassLimit(3_500, 1_600),
            Work.ROUGH_FACE: ClassLimit(3_000, 600),
            Work.SHAPE: ClassLimit(6_000, 2_200),
            Work.SHAPE_SIGNED_OFF: ClassLimit(9_000, 3_000),
            Work.SAND: ClassLimit(3_000, 1_200),
            Work.DRILL: ClassLimit(600, 1_200),
        }
    )
)


class TermKind(StrEnum):
    """A class limit by diameter, its ceiling, or the rule for the rim of the work."""

    CLASS_LIMIT = "class_limit"
    CEILING = "ceiling"
    RIM = "rim"


@dataclass(frozen=True)
class Term:
    """One of the limits the least is taken of, in exact rpm: `inch_rpm` over the diameter, or a ceiling."""

    kind: TermKind
    rpm: Fraction
    source: str
    confidence: Confidence
    work: Work | None = None
    diameter: Length | None = None
    inch_rpm: int | None = None


@dataclass(frozen=True)
class StepLimit:
    """What a step is not to be run above. `rpm` is None where the lathe runs at its lowest setting.

    `swings` is the largest the work swings, corners included; `is_round` is False until it is roughed.
    """

    stage: Stage
    swings: Length
    is_round: bool
    rpm: int | None = None
    terms: tuple[Term, ...] = ()

    @property
    def deciding(self) -> Term | None:
        """The term that is the least."""
        return min(self.terms, key=lambda term: term.rpm, default=None)

    @property
    def rim_speed(self) -> RimSpeed | None:
        """How fast the rim of the work runs at this limit."""
        return None if self.rpm is None else rim_speed(self.swings, self.rpm)


def step_limits(
    recipe: Recipe, limits: ClassLimits = USUAL_LIMITS, *, signed_off: bool = False
) -> tuple[StepLimit | None, ...]:
    """The limit of each step in the order of work, None for those done with the lathe stopped.

    A square of 1 1/2 in has a diagonal of 2.12 in: 3 500 / 2.12 is 1 649, so the ceiling of 1 600 rpm holds.
    `signed_off` is for people who have been signed off for turning, once the work is round.
    """
    steps = zip(recipe.steps(), step_diameters(recipe), strict=True)
    return tuple(
        _limit(step, at, limits, recipe.blank.grain_across, signed_off) if step.runs else None
        for step, at in steps
    )


def _limit(
    step: Step, at: StepDiameters, limits: ClassLimits, face_work: bool, signed_off: bool
) -> StepLimit:
    """A running step whose stage nobody has named runs at the lowest setting."""
    stage = step.stage or Stage.START
    if stage is Stage.START:
        return StepLimit(stage, at.swings, at.is_round)
    terms = tuple(_terms(stage, at, limits, face_work, signed_off))
    least = min(term.rpm for term in terms)
    return StepLimit(stage, at.swings, at.is_round, int(least // READABLE) * READABLE, terms)


def _terms(
    stage: Stage, at: StepDiameters, limits: ClassLimits, face_work: bool, signed_off: bool
) -> Iterator[Term]:
    """Until the work is round, the roughing limit holds besides that of the stage."""
    rough = Work.ROUGH_FACE if face_work else Work.ROUGH_SPINDLE
    own = _work(stage, rough, signed_off)
    cuts = at.bit if own is Work.DRILL and at.bit else at.swings
    yield from _class_terms(own, cuts, limits)
    if own is not rough and not at.is_round:
        yield from _class_terms(rough, at.swings, limits)
    rim = limits.rim_round if at.is_round and signed_off else limits.rim
    yield Term(
        TermKind.RIM,
        _over(rim, at.swings),
        limits.rim_source,
        limits.rim_confidence,
        diameter=at.swings,
        inch_rpm=rim,
    )


def _work(stage: Stage, rough: Work, signed_off: bool) -> Work:
    """Burning lines takes the roughing limit, polishing that of sanding."""
    match stage:
        case Stage.SHAPE:
            return Work.SHAPE_SIGNED_OFF if signed_off else Work.SHAPE
        case Stage.SAND | Stage.POLISH:
            return Work.SAND
        case Stage.DRILL:
            return Work.DRILL
        case _:
            return rough


def _class_terms(work: Work, diameter: Length, limits: ClassLimits) -> Iterator[Term]:
    limit = limits.classes[work]
    by_diameter = _over(limit.inch_rpm, diameter)
    yield Term(
        TermKind.CLASS_LIMIT,
        by_diameter,
        limit.source,
        limit.confidence,
        work,
        diameter,
        limit.inch_rpm,
    )
    yield Term(TermKind.CEILING, Fraction(limit.ceiling), limit.source, limit.confidence, work)


def _over(inch_rpm: int, diameter: Length) -> Fraction:
    """Exact rpm at which diameter in inches times rpm is so much."""
    return Fraction(inch_rpm * NM_PER_INCH, diameter.nm)
