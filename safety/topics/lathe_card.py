"""What is always said at a lathe: the lines of its card, worst first within each moment.

A line names who says so. "common practice" means: taught in workshops, no published source.
The sheet named "school sheet" is the Maryland Institute College of Art's wood shop lathe safety sheet.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _


class Severity(StrEnum):
    STOP = "stop"
    CAUTION = "caution"


@dataclass(frozen=True)
class CardLine:
    """One sentence of the card. `when` names a property of the machine, "" is always."""

    key: str
    severity: Severity
    moment: Promise
    statement: Promise
    source: str
    when: str = ""


BEFORE_POWER = _("Before power")
MOUNTING = _("Mounting")
TURNING = _("Turning")
POWER_GONE = _("Power gone")
CHANGING = _("Changing")
LEAVING = _("Leaving")

LINES = (
    CardLine(
        "guarded-person",
        Severity.STOP,
        BEFORE_POWER,
        _("full face shield over the glasses; nothing loose on sleeves, hair or hands, no gloves."),
        "school sheet, items 1 to 4",
    ),
    CardLine(
        "tools-out",
        Severity.STOP,
        BEFORE_POWER,
        _("key, spanner, knock-out bar out; spindle lock off; turn the work once by hand."),
        "school sheet, item 8; common practice",
    ),
    CardLine(
        "slow-start",
        Severity.STOP,
        BEFORE_POWER,
        _("lowest setting first; stand out of the line of fire."),
        "school sheet, item 10; common practice",
    ),
    CardLine(
        "reverse-locked",
        Severity.STOP,
        BEFORE_POWER,
        _("no reverse unless chuck or plate is locked on."),
        "common practice",
        when="reverse",
    ),
    CardLine(
        "draw-bar",
        Severity.STOP,
        MOUNTING,
        _(
            "draw bar: at least one diameter of thread, nut snug, at most 25 mm (1 in) outside; "
            "loosen it stopped."
        ),
        "common practice",
        when="draw_bars",
    ),
    CardLine(
        "rest-stop",
        Severity.STOP,
        TURNING,
        _("stop before you move the rest, measure or adjust; if it shakes, stop."),
        "school sheet, item 9; 29 CFR 1910.213(a)(1)",
    ),
    CardLine(
        "power-gone",
        Severity.STOP,
        POWER_GONE,
        _("switch off, dial down; start again at the lowest setting."),
        "common practice",
        when="no_volt_release",
    ),
    CardLine(
        "starts-by-itself",
        Severity.STOP,
        POWER_GONE,
        _("pull the plug at once: it may start by itself when power comes back."),
        "common practice",
        when="no_release_known",
    ),
    CardLine(
        "unplug",
        Severity.CAUTION,
        CHANGING,
        _("unplug before belts, chucks or draw bars."),
        "29 CFR 1910.147, in idea; common practice",
    ),
    CardLine(
        "no-dry-sweep",
        Severity.CAUTION,
        LEAVING,
        _("off and unplugged; vacuum, no dry sweeping."),
        "UK HSE, Woodworking Sheet 23",
    ),
)


def lines_for(properties: frozenset[str]) -> tuple[CardLine, ...]:
    """The lines for a machine with these properties: "reverse", "draw_bars", and one of
    "no_volt_release" or "no_release_known" (which also stands for: nobody knows)."""
    return tuple(line for line in LINES if not line.when or line.when in properties)
