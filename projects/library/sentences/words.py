"""The words of a recipe as people read them: one for each value, and a noun for each kind of thing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from enum import Enum

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from projects.geometry.profile import ShapeKind
from projects.library.domain import materials, words
from projects.library.domain.blank import RoundBlank, SlabBlank, SquareBlank
from projects.library.domain.findings import Weight
from projects.library.domain.finishes import FinishProperty
from projects.library.domain.holding import (
    BetweenCentres,
    Collet,
    Faceplate,
    JamChuck,
    JamIn,
    Mandrel,
    ScrewChuck,
    ScrollChuck,
    TaperOnly,
)
from projects.library.domain.sourced import Answer, Confidence
from projects.library.domain.species import WoodGroup
from projects.library.sentences.sourced import ANSWERS, CONFIDENCES

Words = str | Promise

# By kind first: words of different kinds that are spelled alike are equal to Python.
WORDS: Mapping[type[Enum], Mapping[str, Words]] = {
    words.Tool: {
        "spindle_roughing_gouge": _("spindle roughing gouge"),
        "spindle_gouge": _("spindle gouge"),
        "bowl_gouge": _("bowl gouge"),
        "skew": _("skew chisel"),
        "scraper": _("scraper"),
        "parting_tool": _("parting tool"),
        "drill": _("drill"),
        "burning_wire": _("burning wire"),
        "sandpaper": _("sandpaper"),
        "paper_towel": _("paper towel"),
        "pencil": _("pencil"),
        "calipers": _("calipers"),
        "handsaw": _("handsaw"),
    },
    words.Operation: {
        "mounting": _("mounting"),
        "marking": _("marking"),
        "checking": _("checking"),
        "roughing": _("roughing"),
        "sizing": _("sizing"),
        "shaping": _("shaping"),
        "facing": _("facing"),
        "hollowing": _("hollowing"),
        "drilling": _("drilling"),
        "parting_off": _("parting off"),
        "trimming": _("trimming"),
        "friction_burning": _("burning lines by friction"),
        "sanding": _("sanding"),
        "polishing": _("polishing"),
        "finishing": _("finishing"),
    },
    words.Stage: {
        "start": _("start"),
        "rough": _("rough"),
        "shape": _("shape"),
        "drill": _("drill"),
        "burn": _("burn"),
        "sand": _("sand"),
        "polish": _("polish"),
    },
    words.Spindle: {
        "stopped": _("stopped"),
        "running": _("running"),
        "reverse": _("running in reverse"),
    },
    words.Drive: {
        "two_prong": _("two-prong"),
        "four_prong": _("four-prong"),
        "ring": _("ring"),
    },
    words.Centre: {
        "live_point": _("live point centre"),
        "live_cup": _("live cup centre"),
        "live_cone": _("live cone centre"),
    },
    words.Grip: {"tenon": _("tenon"), "recess": _("recess")},
    words.EndKind: {"nub": _("nub"), "tenon": _("tenon")},
    words.WoodCondition: {
        "spalted": _("spalted"),
        "wet": _("wet"),
        "reclaimed": _("reclaimed"),
        "treated": _("treated"),
    },
    words.Glue: {
        "pva": _("PVA glue"),
        "epoxy": _("epoxy"),
        "instant_glue": _("instant glue"),
    },
    words.Moment: {
        "before_power": _("before power"),
        "mounting": _("mounting"),
        "turning": _("turning"),
        "drilling": _("drilling"),
        "sanding": _("sanding"),
        "finishing": _("finishing"),
        "leaving": _("leaving"),
    },
    words.Severity: {"stop": _("stop"), "caution": _("caution"), "note": _("note")},
    ShapeKind: {
        "straight": _("straight"),
        "bead": _("bead"),
        "cove": _("cove"),
        "v_cut": _("V-cut"),
    },
    JamIn: {
        "scroll_chuck": _("scroll chuck"),
        "faceplate": _("faceplate"),
        "screw_chuck": _("screw chuck"),
        "collet_drawbar": _("collet with draw bar"),
    },
    FinishProperty: {
        "dries_by_oxidation": _("dries by oxidation"),
        "contains_tree_nut": _("contains tree nut"),
        "flammable_solvent": _("flammable solvent"),
    },
    WoodGroup: {
        "hardwood": _("hardwood"),
        "softwood": _("softwood"),
        "unknown": _("group not known"),
    },
    Weight: {"refused": _("to mend"), "mind": _("to look at")},
    Confidence: {word.value: said for word, said in CONFIDENCES.items()},
    Answer: {word.value: said for word, said in ANSWERS.items()},
}
KINDS: Mapping[type, Words] = {
    SquareBlank: _("square blank"),
    RoundBlank: _("round blank"),
    SlabBlank: _("disc from a slab"),
    BetweenCentres: _("between centres"),
    Collet: _("collet with draw bar"),
    Mandrel: _("mandrel with draw bar"),
    TaperOnly: _("taper without draw bar"),
    ScrollChuck: _("scroll chuck"),
    ScrewChuck: _("screw chuck"),
    Faceplate: _("faceplate"),
    JamChuck: _("jam chuck"),
    materials.LengthNeed: _("length stock"),
    materials.BlankNeed: _("blank"),
    materials.PieceNeed: _("by the piece"),
    materials.SheetNeed: _("sheet"),
    materials.LiquidNeed: _("finish"),
    materials.AdhesiveNeed: _("glue"),
    materials.ConsumedNeed: _("used up"),
    materials.SpareCount: _("so many spare kits"),
    materials.SparePercent: _("spare kits in a hundred"),
}
HOLDINGS = (BetweenCentres, Collet, Mandrel, TaperOnly, ScrollChuck, ScrewChuck, Faceplate, JamChuck)


def word_for(value: Enum) -> str:
    """The word for one value: `bowl gouge`; KeyError for a value that has none yet."""
    return str(WORDS[type(value)][value.value])


def kind_label(record: type) -> str:
    """The noun for one kind of blank, holding, need or spares: `scroll chuck`."""
    return str(KINDS[record])


def holding_words(kinds: Iterable[str]) -> dict[str, str]:
    """The nouns for ways of holding by the words they are found by, in the house's order."""
    wanted = set(kinds)
    return {each.kind: kind_label(each) for each in HOLDINGS if each.kind in wanted}
