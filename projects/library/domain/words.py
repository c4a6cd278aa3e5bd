"""The trade's words a recipe chooses from. Where safety rules know a word, it is spelled as they spell it."""

from __future__ import annotations

from enum import StrEnum


class Tool(StrEnum):
    """What is in the hand or in the tailstock."""

    SPINDLE_ROUGHING_GOUGE = "spindle_roughing_gouge"
    SPINDLE_GOUGE = "spindle_gouge"
    BOWL_GOUGE = "bowl_gouge"
    SKEW = "skew"
    SCRAPER = "scraper"
    PARTING_TOOL = "parting_tool"
    DRILL = "drill"
    BURNING_WIRE = "burning_wire"
    SANDPAPER = "sandpaper"
    PAPER_TOWEL = "paper_towel"
    PENCIL = "pencil"
    CALIPERS = "calipers"
    HANDSAW = "handsaw"


class Operation(StrEnum):
    """What is done in a step."""

    MOUNTING = "mounting"
    MARKING = "marking"
    CHECKING = "checking"
    ROUGHING = "roughing"
    SIZING = "sizing"
    SHAPING = "shaping"
    FACING = "facing"
    HOLLOWING = "hollowing"
    DRILLING = "drilling"
    PARTING_OFF = "parting_off"
    TRIMMING = "trimming"
    FRICTION_BURNING = "friction_burning"
    SANDING = "sanding"
    POLISHING = "polishing"
    FINISHING = "finishing"


class Stage(StrEnum):
    """What the speed is chosen for; the finishing cut is part of shaping."""

    START = "start"
    ROUGH = "rough"
    SHAPE = "shape"
    DRILL = "drill"
    BURN = "burn"
    SAND = "sand"
    POLISH = "polish"


class Spindle(StrEnum):
    """Whether the lathe runs during a step, and which way."""

    STOPPED = "stopped"
    RUNNING = "running"
    REVERSE = "reverse"


class Drive(StrEnum):
    """What turns work between centres."""

    TWO_PRONG = "two_prong"
    FOUR_PRONG = "four_prong"
    RING = "ring"


class Centre(StrEnum):
    """What the tailstock touches the work with."""

    LIVE_POINT = "live_point"
    LIVE_CUP = "live_cup"
    LIVE_CONE = "live_cone"


class Grip(StrEnum):
    """What the jaws of a scroll chuck close on, or open into."""

    TENON = "tenon"
    RECESS = "recess"


class EndKind(StrEnum):
    """What is left at an end of the piece to hold it by."""

    NUB = "nub"
    TENON = "tenon"


class WoodCondition(StrEnum):
    SPALTED = "spalted"
    WET = "wet"
    RECLAIMED = "reclaimed"
    TREATED = "treated"


class Glue(StrEnum):
    PVA = "pva"
    EPOXY = "epoxy"
    INSTANT_GLUE = "instant_glue"


class Moment(StrEnum):
    """When a caution is said."""

    BEFORE_POWER = "before_power"
    MOUNTING = "mounting"
    TURNING = "turning"
    DRILLING = "drilling"
    SANDING = "sanding"
    FINISHING = "finishing"
    LEAVING = "leaving"


class Severity(StrEnum):
    """Stop: no power until it is true. Caution: can injure, burn or make ill. Note: background."""

    STOP = "stop"
    CAUTION = "caution"
    NOTE = "note"
