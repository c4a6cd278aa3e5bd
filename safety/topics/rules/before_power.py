"""What has to be true before power."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from projects.library.domain.sourced import Confidence
from projects.library.domain.words import Moment, Severity
from safety.topics.domain.rules import Place, Rule, Trigger

RULES = (
    Rule(
        key="face-shield",
        severity=Severity.STOP,
        moment=Moment.BEFORE_POWER,
        statement=_("Full face shield over the glasses, at every step, sanding and finishing too."),
        said_at=(Place.INDUCTION, Place.BRIEFING, Place.HANDOUT, Place.LATHE_CARD),
        who_says=_("school sheet"),
        source='school sheet, item 1; "at every step" is common practice',
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(tools=("lathe",)),
    ),
    Rule(
        key="nothing-loose",
        severity=Severity.STOP,
        moment=Moment.BEFORE_POWER,
        statement=_(
            "Nothing that can be caught: sleeves tight, hair tied, rings and "
            "cords off, no gloves, no cloth near turning work."
        ),
        said_at=(Place.HANDOUT, Place.LATHE_CARD),
        who_says=_("OSHA; school sheet"),
        source=(
            "school sheet, items 1 and 2; OSHA woodworking guidance on lathes; UK HSE engineering "
            "questions page on gloves; cloth: rules published by a UK club"
        ),
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(tools=("lathe",)),
    ),
    Rule(
        key="slow-start",
        severity=Severity.STOP,
        moment=Moment.BEFORE_POWER,
        statement=_(
            "Switch on at the lowest setting, go up only while nothing shakes, and not"
            " above the roughing speed until the work is round."
        ),
        said_at=(Place.INDUCTION, Place.BRIEFING, Place.HANDOUT, Place.LATHE_CARD),
        who_says=_("turners and clubs"),
        source=(
            "common practice; the school sheet (Maryland Institute College of "
            "Art, item 10) is stricter: slowest until round"
        ),
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(tools=("lathe",)),
    ),
    Rule(
        key="reverse",
        severity=Severity.STOP,
        moment=Moment.BEFORE_POWER,
        statement=_("No reverse unless chuck or plate is locked to the spindle by its set screw."),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("club sheets"),
        source="common rule",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(holding=("scroll_chuck", "faceplate", "screw_chuck"), operations=("reverse",)),
    ),
)
