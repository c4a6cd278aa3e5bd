"""Two recipes without a fault, small enough to be read: a knob held in a collet, and a bowl."""

from __future__ import annotations

from dataclasses import replace

from club.base.quantities.area import parse_area
from club.base.quantities.length import Length, parse_length
from club.base.quantities.volume import parse_volume
from projects.geometry.profile import ShapeKind
from projects.library.domain.blank import SlabBlank, SquareBlank
from projects.library.domain.coats import Coat
from projects.library.domain.drawn import DrawnMark, DrawnProfile, DrawnShape
from projects.library.domain.holding import Collet, Faceplate, ScrollChuck, Tailstock
from projects.library.domain.materials import (
    AdhesiveNeed,
    BlankNeed,
    ConsumedNeed,
    LengthNeed,
    LiquidNeed,
    SheetNeed,
    SpareCount,
    SparePercent,
)
from projects.library.domain.mountings import Mounting, Step
from projects.library.domain.preparation import GlueUp, Task
from projects.library.domain.recipe import Caution, ClassTime, End, Recipe, Variant
from projects.library.domain.words import (
    Centre,
    EndKind,
    Glue,
    Grip,
    Moment,
    Operation,
    Severity,
    Spindle,
    Stage,
    Tool,
)

STRAIGHT = DrawnShape(ShapeKind.STRAIGHT)
GAP = parse_length("1/8 in")


def inches(text: str) -> Length:
    return parse_length(f"{text} in")


def outline(*marks: tuple[str, str]) -> DrawnProfile:
    """Straights through these places and diameters, in inches; `0` is allowed."""
    drawn = tuple(
        DrawnMark(parse_length(f"{at} in", zero=True), parse_length(f"{across} in", zero=True))
        for at, across in marks
    )
    return DrawnProfile(drawn, (STRAIGHT,) * (len(drawn) - 1))


def cut(key: str, operation: Operation, tool: Tool, stage: Stage, minutes: int) -> Step:
    return Step(key, f"Do the {key}.", operation, Spindle.RUNNING, minutes, tool, stage, rest_gap=GAP)


MOUNT = Step("mount", "Tighten the draw bar.", Operation.MOUNTING, Spindle.STOPPED, 4)
ROUGH = cut("rough", Operation.ROUGHING, Tool.SPINDLE_ROUGHING_GOUGE, Stage.ROUGH, 8)
BEAD = replace(
    cut("bead", Operation.SHAPING, Tool.SPINDLE_GOUGE, Stage.SHAPE, 12), may_be_left_out=True, skill="beads"
)
SAND = Step(
    "sand", "Go through the grits.", Operation.SANDING, Spindle.RUNNING, 8, Tool.SANDPAPER, Stage.SAND
)
OIL = Step("oil", "Wipe the oil on.", Operation.FINISHING, Spindle.STOPPED, 5, Tool.PAPER_TOWEL)
PART = cut("part", Operation.PARTING_OFF, Tool.PARTING_TOOL, Stage.SHAPE, 5)

KNOB = Recipe(
    key="drawer-knob",
    title="Drawer knob",
    summary="A knob on a dowel that is held in a collet.",
    blank=SquareBlank("maple_sugar", inches("1 1/2"), inches("2")),
    profile=outline(("0", "3/4"), ("1/2", "5/8"), ("1", "1 1/4"), ("1 1/2", "1/2")),
    mountings=(
        Mounting(
            key="collet",
            title="Dowel in the collet",
            holding=Collet(size=inches("1/2"), grip_length=inches("1 1/4"), taper="MT2", thread="3/8-16"),
            stands_out=inches("2"),
            minutes=3,
            steps=(MOUNT, ROUGH, BEAD, SAND, OIL, PART),
            tailstock=Tailstock(Centre.LIVE_CONE, away_from="part", taper="MT2"),
        ),
    ),
    spares=SparePercent(10),
    time=ClassTime(briefing=10, demonstration=20, hands_on=45, change_over=5, clean_up=15),
    right_end=End(EndKind.NUB, inches("1/4"), inches("1/4")),
    grits=(120, 180, 240),
    finish=(Coat("walnut_oil", wait_hours=24, on_the_lathe=True),),
    glue_ups=(
        GlueUp(
            key="glue-dowel",
            title="Glue the dowel in",
            parts=("blank", "dowel"),
            adhesive="glue",
            minutes=3,
            clamp_minutes=60,
            cure_hours=24,
            after=("drill",),
        ),
    ),
    preparation=(
        Task("cut", "Cut the blanks", minutes=2, for_each_piece=True),
        Task("drill", "Drill the blanks", minutes=3, for_each_piece=True, after=("cut",)),
    ),
    materials=(
        BlankNeed("blank", "Maple, 1 1/2 in square"),
        LengthNeed("dowel", "Maple dowel 1/2 in", inches("1/2"), inches("2 1/4")),
        AdhesiveNeed("glue", "Wood glue", Glue.PVA, parse_area("2 in\u00b2"), grams_per_m2=200),
        LiquidNeed("oil", "Walnut oil", "walnut_oil", in_cloth=parse_volume("2 ml")),
        *(
            SheetNeed(f"grit-{grit}", f"Sandpaper P{grit}", inches("2 3/4"), inches("4 1/2"), grit)
            for grit in (120, 180, 240)
        ),
        ConsumedNeed("towel", "Paper towel", count=3),
    ),
    skills=("parting_tool",),
    cautions=(Caution(Moment.MOUNTING, Severity.STOP, "Try by hand whether the dowel slips."),),
    easier=Variant("Plain knob", "A cone without beads.", leaves_out=("bead",)),
)

BOWL = Recipe(
    key="small-bowl",
    title="Small bowl",
    summary="A bowl held by a tenon.",
    blank=SlabBlank("cherry_black", inches("8"), inches("3")),
    profile=outline(("0", "3"), ("2 1/2", "7 1/2")),
    mountings=(
        Mounting(
            key="outside",
            title="On the faceplate",
            holding=Faceplate(inches("3"), screws=4, screw_length=inches("3/4"), nose_thread="1 1/4-8"),
            stands_out=inches("3"),
            minutes=5,
            steps=(
                cut("true", Operation.ROUGHING, Tool.BOWL_GOUGE, Stage.ROUGH, 10),
                cut("shape", Operation.SHAPING, Tool.BOWL_GOUGE, Stage.SHAPE, 15),
            ),
            tailstock=Tailstock(Centre.LIVE_CUP),
            turned_round=True,
        ),
        Mounting(
            key="inside",
            title="Tenon in the chuck",
            holding=ScrollChuck("dovetail jaws", Grip.TENON, inches("2 1/2"), inches("1/4"), dovetail=True),
            stands_out=inches("2 3/4"),
            minutes=10,
            steps=(
                cut("hollow", Operation.HOLLOWING, Tool.BOWL_GOUGE, Stage.SHAPE, 40),
                replace(SAND, key="sand-bowl"),
            ),
        ),
    ),
    spares=SpareCount(2),
    time=ClassTime(briefing=10, demonstration=25, hands_on=88, change_over=10, clean_up=10),
    left_end=End(EndKind.TENON, inches("2 1/2"), inches("1/4")),
    materials=(BlankNeed("blank", "Cherry disc 8 in, 3 in thick"),),
    food_ware=True,
)


def with_step(recipe: Recipe, key: str, **changes: object) -> Recipe:
    """The recipe with one of its steps changed."""
    mountings = tuple(
        replace(
            mounting,
            steps=tuple(
                replace(step, **changes) if step.key == key else step  # type: ignore[arg-type]
                for step in mounting.steps
            ),
        )
        for mounting in recipe.mountings
    )
    return replace(recipe, mountings=mountings)


def with_mounting(recipe: Recipe, place: int, **changes: object) -> Recipe:
    """The recipe with one of its mountings changed."""
    mountings = list(recipe.mountings)
    mountings[place] = replace(mountings[place], **changes)  # type: ignore[arg-type]
    return replace(recipe, mountings=tuple(mountings))
