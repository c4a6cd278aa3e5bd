"""The least a project begins with: its wood, a plain cylinder, and how it is held first."""

from __future__ import annotations

from club.base.quantities.length import Length
from projects.geometry.profile import ShapeKind
from projects.library.domain.blank import NOT_NAMED, Blank, RoundBlank
from projects.library.domain.drawn import DrawnMark, DrawnProfile, DrawnShape
from projects.library.domain.holding import TaperOnly
from projects.library.domain.materials import SpareCount
from projects.library.domain.mountings import Mounting, Step
from projects.library.domain.recipe import ClassTime, Recipe
from projects.library.domain.words import Operation, Spindle

NO_TIME = ClassTime(briefing=0, demonstration=0, hands_on=0, change_over=0, clean_up=0)


def cylinder(length: Length, diameter: Length) -> DrawnProfile:
    ends = (DrawnMark(Length(0), diameter), DrawnMark(length, diameter))
    return DrawnProfile(ends, (DrawnShape(ShapeKind.STRAIGHT),))


def mounting_step(key: str, text: str) -> Step:
    """With what every mounting begins; minutes nobody has said yet."""
    return Step(key, text, Operation.MOUNTING, Spindle.STOPPED, minutes=0)


def begun(
    key: str, title: str, summary: str, blank: Blank, profile: DrawnProfile, mounting: Mounting
) -> Recipe:
    """A recipe in which the rest is still to be written: no time, no spares, nothing done beforehand."""
    return Recipe(key, title, summary, blank, profile, (mounting,), SpareCount(0), NO_TIME)


def nothing_yet() -> Recipe:
    """A recipe that has nothing to offer for choosing, for forms that are filled before there is one."""
    one = Length(1_000_000)
    mounting = Mounting("mounting", "-", TaperOnly(), one, 0, (mounting_step("mount", "-"),))
    return begun("project", "-", "-", RoundBlank(NOT_NAMED, one, one), cylinder(one, one), mounting)
