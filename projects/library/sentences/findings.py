"""What people read of what the checks found: why an edition can't be kept so, or what to look at.

A finding is never the other way round: that nothing was found says nothing of how safe the work is.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from enum import Enum
from fractions import Fraction

from django.utils.functional import Promise
from django.utils.translation import gettext as said_now
from django.utils.translation import gettext_lazy as _

from club.base.quantities.length import Length, LengthStyle, show_length
from club.base.quantities.shown import decimal, thousands
from projects.library.domain.findings import Finding
from projects.library.sentences.leads import led, place_lead
from projects.library.sentences.words import word_for

Words = str | Promise

FINDINGS: Mapping[str, Words] = {
    "wood_not_named": _("No wood is named, so it counts as one that harms. Name the wood where it is known."),
    "unknown_species": _("“%(species)s” isn't in the table of woods. Choose one that is."),
    "wood_not_turned": _("This wood is not to be turned: the table of woods says why. Choose another."),
    "blank_too_thin": _(
        "With its ends the drawing needs %(needs)s across, and the blank has %(has)s. "
        "Choose a thicker blank or mend the drawing."
    ),
    "blank_too_short": _(
        "With its ends the drawing needs %(needs)s along the axis, and the blank has %(has)s. "
        "Choose a longer blank or mend the drawing."
    ),
    "nothing_to_part_from": _(
        "Neither end has a nub or tenon, but the piece is parted off or marked by centres. "
        "Say what is left at an end to take the cut."
    ),
    "nothing_turned": _("In no step does the lathe run: add the steps in which the piece is turned."),
    "no_materials": _("No material is written down, so none will be ordered: add what one piece takes."),
    "roughing_gouge_on_face_work": _(
        "A spindle roughing gouge is not for face work. Choose a bowl gouge or a scraper."
    ),
    "finishing_while_running": _("Finish is put on with the lathe stopped. Say that it is stopped."),
    "should_stand_still": _("For %(operation)s the lathe is usually stopped, but here it runs."),
    "should_run": _("For %(operation)s the lathe runs, but here it is stopped."),
    "stage_while_stopped": _(
        "The lathe is stopped, so the stage “%(stage)s” gives no speed. Leave the stage empty."
    ),
    "no_stage": _("The lathe runs, so its speed needs a stage. Choose one."),
    "stage_unlike_operation": _(
        "The stage “%(stage)s” isn't one for %(operation)s, so its speed would be another's. "
        "Choose the stage that belongs to it."
    ),
    "rest_in_the_way": _(
        "For %(operation)s the tool rest is taken out of the way. Leave the rest gap empty."
    ),
    "no_rest_gap": _("For %(operation)s it isn't said how far the tool rest stands from the work."),
    "no_cutting_tool": _("For %(operation)s no cutting tool is named."),
    "no_hole": _("It is drilled, but not said how wide and how deep."),
    "between_one_centre": _(
        "Between centres the tailstock holds the work: say which centre is in it, and leave it up while "
        "the lathe runs."
    ),
    "tailstock_away_early": _(
        "It is away from step %(step)s on, but nothing needs that %(until)s. "
        "It stays up as long as it can be."
    ),
    "minutes_do_not_add_up": _(
        "It says %(stated)s, but mountings and steps are %(summed)s minutes together."
    ),
    "tasks_in_a_circle": _("These wait for each other in a circle: %(keys)s. Let one of them begin."),
    "cure_short": _("It is to cure for %(hours)s hours, and %(usual)s are usual before such glue is turned."),
    "grit_unknown": _("P%(grit)s is no grade of ISO 6344. Write one that is, as 120, 180 or 240."),
    "grit_not_finer": _("P%(grit)s isn't finer than P%(before)s before it. Put them in order."),
    "grit_coarse_step": _(
        "From P%(before)s to P%(grit)s the grain gets %(times_finer)s times finer, which leaves scratches: "
        "is a grit missing between them?"
    ),
    "grit_far_too_coarse": _(
        "From P%(before)s to P%(grit)s the grain gets %(times_finer)s times finer. Put a grit between them."
    ),
    "grit_not_in_materials": _("P%(grit)s is used, but no sandpaper of it is in the materials."),
    "unknown_finish": _("“%(finish)s” isn't in the table of finishes. Choose one that is."),
    "finish_not_in_materials": _("This finish is used, but it isn't in the materials."),
    "not_to_be_left_out": _("It leaves out “%(step)s”, but that step says nowhere that it may be left out."),
}
NEVER_NEEDED = _("at all")
NEEDED_FROM = _("before step %(step)s")


def finding_sentence(finding: Finding, lengths: LengthStyle = LengthStyle.MILLIMETRES) -> str:
    """Where something was found, what it is, and how it is mended."""
    values: dict[str, object] = {name: _shown(value, lengths) for name, value in finding.values.items()}
    values["until"] = _until(finding.values.get("needed_from"))
    return led(place_lead(finding.path), str(FINDINGS[finding.code]) % values)


def _until(step: object) -> str:
    return str(NEEDED_FROM) % {"step": step} if step else str(NEVER_NEEDED)


def _shown(value: object, lengths: LengthStyle) -> object:
    show = next((show for kind, show in SHOWN.items() if isinstance(value, kind)), None)
    if isinstance(value, Length):
        return show_length(value, lengths, said_now("about"))
    return show(value) if show else value


def _keys(keys: tuple[str, ...]) -> str:
    return ", ".join(map(_key, keys))


def _key(key: str) -> str:
    return key.replace("_", " ").replace("-", " ")


# Words of the recipe are text to Python as well, so they come first.
SHOWN: Mapping[type, Callable[..., str]] = {
    Enum: word_for,
    int: thousands,
    Fraction: lambda value: decimal(value, 2),
    tuple: _keys,
    str: _key,
}
