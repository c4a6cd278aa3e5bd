"""What the fields of a recipe are called where it is written, and what is said under them."""

from __future__ import annotations

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from projects.library.domain import materials
from projects.library.domain.blank import RoundBlank, SlabBlank, SquareBlank
from projects.library.domain.holding import (
    BetweenCentres,
    Collet,
    Faceplate,
    JamChuck,
    Mandrel,
    ScrewChuck,
    ScrollChuck,
    Tailstock,
    TaperOnly,
)
from projects.library.domain.mountings import Mounting, Step
from projects.library.domain.preparation import GlueUp, Task
from projects.library.domain.recipe import ClassTime, End, Recipe, Variant

Words = str | Promise

LABELS: dict[str, Words] = {
    "adhesive": _("glue"),
    "across": _("diameter or side"),
    "after": _("waits for"),
    "area": _("glued area"),
    "away_from": _("goes away before step"),
    "blank": _("blank"),
    "briefing": _("briefing, in minutes"),
    "centre": _("centre"),
    "change_over": _("change-over of each sitting, in minutes"),
    "checkpoint": _("checkpoint"),
    "clamp_minutes": _("clamped for, in minutes"),
    "clean_up": _("clean-up, in minutes"),
    "conditions": _("how the wood is"),
    "count": _("how many"),
    "cure_hours": _("cures for, in hours"),
    "demonstration": _("demonstration, in minutes"),
    "density_kg_per_m3": _("density in kg/m³"),
    "depth": _("depth"),
    "diameter": _("diameter"),
    "dovetail": _("dovetailed"),
    "drive": _("drive"),
    "drive_diameter": _("diameter of the drive"),
    "easier": _("easier variant"),
    "finish": _("finish"),
    "food_ware": _("for food"),
    "for_each_piece": _("the minutes are for each piece"),
    "glue": _("kind of glue"),
    "grams_per_m2": _("glue on a square metre, in grams"),
    "grip": _("grips"),
    "grip_length": _("gripped length"),
    "grit": _("grit"),
    "grits": _("grits"),
    "hands_on": _("hands-on of each sitting, in minutes"),
    "harder": _("harder variant"),
    "held_in": _("itself held in"),
    "holding": _("held in"),
    "hole": _("hole that is drilled"),
    "hole_depth": _("depth of the hole"),
    "hole_diameter": _("diameter of the hole"),
    "in_cloth": _("stays in the cloth"),
    "jaws": _("jaws"),
    "kind": _("what it is"),
    "lead_hours": _("wait behind it, in hours"),
    "leaves_out": _("leaves out"),
    "left_end": _("left end"),
    "length": _("length"),
    "loss_percent": _("lost besides, in a hundred"),
    "may_be_left_out": _("may be left out"),
    "minutes": _("minutes"),
    "moment": _("when it is said"),
    "nose_thread": _("nose thread"),
    "note": _("note"),
    "on_the_lathe": _("on the lathe, stopped"),
    "operation": _("operation"),
    "parts": _("what is glued"),
    "people": _("people it takes"),
    "percent": _("spare kits in a hundred"),
    "rest_gap": _("gap between rest and work"),
    "right_end": _("right end"),
    "screw_length": _("length of the screws"),
    "screws": _("screws"),
    "severity": _("how grave"),
    "side": _("side"),
    "size": _("size of the collet"),
    "skill": _("skill taught"),
    "skills": _("skills"),
    "spares": _("spares"),
    "species": _("wood"),
    "specification": _("specification"),
    "spindle": _("the lathe is"),
    "spread_cm2_per_ml": _("spread in cm²/ml"),
    "stage": _("stage, for its speed"),
    "stands_out": _("stands out of what holds it by"),
    "summary": _("summary"),
    "tailstock": _("tailstock"),
    "taper": _("taper"),
    "text": _("what is said"),
    "thickness": _("thickness"),
    "thread": _("draw bar thread"),
    "time": _("time"),
    "title": _("title"),
    "tool": _("tool"),
    "turned_round": _("turned round, the right end at the headstock"),
    "wait_hours": _("wait after it, in hours"),
    "watch": _("watch out for"),
    "width": _("width"),
}
OWN_LABELS: dict[tuple[type, str], Words] = {
    (Collet, "taper"): _("headstock taper"),
    (Faceplate, "diameter"): _("diameter of the faceplate"),
    (JamChuck, "diameter"): _("diameter turned for the work"),
    (Mandrel, "diameter"): _("diameter of the mandrel"),
    (Mandrel, "length"): _("length of the mandrel"),
    (Mounting, "minutes"): _("minutes to put it on"),
    (ScrollChuck, "diameter"): _("diameter of the tenon or recess"),
    (ScrollChuck, "length"): _("length of the tenon, or depth of the recess"),
    (Step, "text"): _("what to do"),
    (Tailstock, "taper"): _("tailstock taper"),
    (GlueUp, "minutes"): _("hands-on minutes for each"),
    (Task, "minutes"): _("hands-on minutes"),
    (Variant, "text"): _("what is different"),
    (materials.SpareCount, "count"): _("spare kits for a class"),
}
HELP: dict[str, Words] = {
    "adhesive": _("One of the glues that stand among the materials."),
    "parts": _("Two at least, of what stands among the materials."),
    "checkpoint": _("What has to be true before going on."),
    "density_kg_per_m3": _("Empty: as the table of woods has it when the draft is kept."),
    "grams_per_m2": _("As its maker says."),
    "grits": _("In the order they are used, with commas between, as 120, 180, 240."),
    "grit": _("Empty where it isn't sandpaper."),
    "jaws": _("As they are called in the club, and their size."),
    "leaves_out": _(
        "Steps that may be left out are offered here; each step says on its own page whether it may."
    ),
    "nose_thread": _("As M33\u00a0x\u00a03.5 or 1\u00a01/4-8; empty means whatever the lathe has."),
    "rest_gap": _("None while the rest is out of the way, as for sanding."),
    "skill": _("In a few words, as beads; what somebody is signed off for."),
    "skills": _("What somebody must be signed off for before this class, with commas between."),
    "specification": _("What to look for, as maple dowel 1/2\u00a0in."),
    "spread_cm2_per_ml": _("Empty: as the table of finishes has it when the draft is kept."),
    "stage": _("None where the lathe stands."),
    "thread": _("As 3/8-16 or M10\u00a0x\u00a01.5; empty means whatever the lathe has."),
    "food_ware": _("Somebody eats or drinks from it, so the finish has to suit."),
    "after": _("What has to be done before this is begun."),
    "on_the_lathe": _("Finish is put on with the lathe stopped."),
}
OWN_HELP: dict[tuple[type, str], Words] = {
    (End, "length"): _("Wood beyond the drawing, until it is parted or turned off."),
    (ClassTime, "hands_on"): _("As long as mountings and steps are together."),
    (Recipe, "summary"): _("What the piece is and what is learned, in one or two sentences."),
}
# Kinds of records, to choose from.
KINDS: dict[type, Words] = {
    SquareBlank: _("square across, grain along the axis"),
    RoundBlank: _("round, grain along the axis: a dowel or a branch"),
    SlabBlank: _("a disc from a slab or board, grain across the bed"),
    BetweenCentres: _("between centres"),
    Collet: _("in a collet with a draw bar"),
    Mandrel: _("on a mandrel with a draw bar"),
    TaperOnly: _("in the headstock's taper, without a draw bar"),
    ScrollChuck: _("in a scroll chuck"),
    ScrewChuck: _("on a screw chuck"),
    Faceplate: _("on a faceplate"),
    JamChuck: _("in a jam chuck"),
    materials.LengthNeed: _("cut from lengths: dowel, square, rod"),
    materials.BlankNeed: _("a blank"),
    materials.PieceNeed: _("by the piece: corks, ferrules"),
    materials.SheetNeed: _("cut from sheets: sandpaper"),
    materials.LiquidNeed: _("a finish"),
    materials.AdhesiveNeed: _("a glue"),
    materials.ConsumedNeed: _("used up by each person: respirators, paper towels"),
    materials.SpareCount: _("so many for a class"),
    materials.SparePercent: _("so many in a hundred"),
}


def field_label(record: type, name: str) -> Words:
    """What the field is called, without a capital; KeyError for one that has no name yet."""
    return OWN_LABELS.get((record, name)) or LABELS[name]


def field_help(record: type, name: str) -> Words:
    return OWN_HELP.get((record, name)) or HELP.get(name, "")


def kind_choice(record: type) -> Words:
    """A kind as a line to choose, longer than its name; "" for a record that is no kind of anything."""
    return KINDS.get(record, "")
