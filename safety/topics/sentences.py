"""What rules say to people besides their statements: moments, how bad, and which word made a rule fire."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from projects.library.domain.finishes import Finish
from projects.library.domain.species import Woods
from projects.library.domain.words import Moment, Severity, Tool
from projects.library.sentences.words import WORDS as RECIPE_WORDS
from projects.library.sentences.words import Words
from safety.topics.domain.rules import Word

MOMENTS: Mapping[Moment, Promise] = {
    Moment.BEFORE_POWER: _("before power"),
    Moment.MOUNTING: _("mounting"),
    Moment.TURNING: _("turning"),
    Moment.DRILLING: _("drilling"),
    Moment.SANDING: _("sanding"),
    Moment.FINISHING: _("finishing"),
    Moment.LEAVING: _("leaving"),
}
HEADINGS: Mapping[Severity, Promise] = {
    Severity.STOP: _("Stop: %(moment)s"),
    Severity.CAUTION: _("Caution: %(moment)s"),
    Severity.NOTE: _("Note: %(moment)s"),
}
# By the list of the trigger, since the same word may stand in two.
WORDS: Mapping[str, Mapping[str, Words]] = {
    "tools": {"lathe": _("lathe"), **RECIPE_WORDS[Tool]},
    "holding": {
        "tailstock": _("tailstock"),
        "between_centres": _("between centres"),
        "collet_drawbar": _("collet with a draw bar"),
        "mandrel_drawbar": _("mandrel with a draw bar"),
        "morse_taper_only": _("Morse taper alone"),
        "scroll_chuck": _("scroll chuck"),
        "faceplate": _("faceplate"),
        "screw_chuck": _("screw chuck"),
        "jam_chuck": _("jam chuck"),
        "drill_chuck": _("drill chuck"),
    },
    "finish_properties": {
        "dries_by_oxidation": _("finish that dries by oxidation"),
        "contains_tree_nut": _("finish with tree nut"),
        "flammable_solvent": _("finish with a flammable solvent"),
    },
    "wood_groups": {
        "hardwood": _("hardwood"),
        "softwood": _("softwood"),
        "unknown": _("wood that is not in our tables"),
    },
    "wood_conditions": {
        "spalted": _("spalted wood"),
        "wet": _("wet wood"),
        "reclaimed": _("reclaimed wood"),
        "treated": _("treated wood"),
    },
    "operations": {
        "turning": _("turning"),
        "face_work": _("face work"),
        "drilling": _("drilling"),
        "reverse": _("reverse"),
        "friction_burning": _("burning lines"),
        "sanding": _("sanding"),
        "polishing": _("polishing"),
        "finishing_on_lathe": _("finishing on the lathe"),
        "glued_blank": _("glued blank"),
        "food_ware": _("food ware"),
        "marking": _("marking"),
        "checking": _("checking"),
        "trimming": _("trimming"),
    },
    "adhesives": {
        "pva": _("white wood glue"),
        "epoxy": _("epoxy glue"),
        "instant_glue": _("instant glue"),
    },
}


def heading(severity: Severity, moment: Moment) -> str:
    """`Stop: mounting`."""
    return str(HEADINGS[severity]) % {"moment": MOMENTS[moment]}


def words_for(found: Iterable[Word], woods: Woods, finishes: Mapping[str, Finish]) -> tuple[str, ...]:
    """What people call these, each once; a wood or finish without a name goes by its key."""
    said = (_word_for(word, woods, finishes) for word in found)
    return tuple(dict.fromkeys(said))


def _word_for(found: Word, woods: Woods, finishes: Mapping[str, Finish]) -> str:
    if found.among == "woods":
        return woods.name(found.word)
    if found.among == "finishes":
        return finishes[found.word].name if found.word in finishes else found.word
    return str(WORDS[found.among][found.word])
