"""What has to be true of the wood and of what holds it; the stops on holding stand together."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from projects.library.domain.sourced import Confidence
from projects.library.domain.words import Moment, Severity
from safety.topics.domain.rules import Place, Rule, Trigger

RULES = (
    Rule(
        key="reclaimed-metal",
        severity=Severity.STOP,
        moment=Moment.MOUNTING,
        statement=_(
            "Reclaimed wood only after a metal detector has found nothing "
            "in it; old paint stays off the lathe."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("school sheet; turners and clubs"),
        source="school sheet, item 4 (no hidden metal); the detector and the paint are common practice",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(wood_conditions=("reclaimed",)),
    ),
    Rule(
        key="treated",
        severity=Severity.STOP,
        moment=Moment.MOUNTING,
        statement=_("Wood treated against rot or insects is not turned, sanded or burned here."),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("US EPA sheet; the club"),
        source=(
            "consumer information sheet on arsenic-treated wood (reprints read: not for food ware, never "
            "burned, clean up all dust); refusing every treated wood is our own rule"
        ),
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(wood_conditions=("treated",)),
    ),
    Rule(
        key="oleander",
        severity=Severity.STOP,
        moment=Moment.MOUNTING,
        statement=_("Oleander is not turned."),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("published list"),
        source="1990 compiled list",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(woods=("oleander",)),
    ),
    Rule(
        key="tailstock-lock",
        severity=Severity.STOP,
        moment=Moment.MOUNTING,
        statement=_(
            "Tailstock: both ends seated, locked to the bed; the quill locked too, unless it feeds a drill."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("school sheet"),
        source="school sheet, item 6; the quill is common practice",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(holding=("tailstock", "between_centres")),
    ),
    Rule(
        key="drawbar-tight",
        severity=Severity.STOP,
        moment=Moment.MOUNTING,
        statement=_(
            "Draw bar: taper clean and dry, at least one diameter of thread, "
            "nut snug; check it again after the first cut."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT, Place.LATHE_CARD),
        who_says=_("workshop rule"),
        source="thread-engagement rule (1 D); re-check is common practice",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(holding=("collet_drawbar", "mandrel_drawbar")),
    ),
    Rule(
        key="taper-needs-help",
        severity=Severity.STOP,
        moment=Moment.MOUNTING,
        statement=_("A Morse taper alone can walk out: keep the tailstock up, or use a draw bar."),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("engineering practice"),
        source="self-holding tapers hold by friction only; milling practice uses a draw bar",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(holding=("morse_taper_only",)),
    ),
    Rule(
        key="screw-chuck",
        severity=Severity.STOP,
        moment=Moment.MOUNTING,
        statement=_(
            "Screw chuck: the right pilot hole, the face flat on the "
            "shoulder, the tailstock up while roughing."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("turners and clubs"),
        source="common practice",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(holding=("screw_chuck",)),
    ),
    Rule(
        key="faceplate-screws",
        severity=Severity.STOP,
        moment=Moment.MOUNTING,
        statement=_("Faceplate: every screw in, long enough, in sound side grain."),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("school sheet"),
        source="school sheet, item 7 (secure); screw detail is common practice",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(holding=("faceplate",)),
    ),
    Rule(
        key="chuck-home",
        severity=Severity.STOP,
        moment=Moment.MOUNTING,
        statement=_("Chuck or plate screwed right home on the spindle, set screw tight."),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("turners and clubs"),
        source="common practice",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(holding=("scroll_chuck", "faceplate", "screw_chuck")),
    ),
    Rule(
        key="jaws-grip",
        severity=Severity.STOP,
        moment=Moment.MOUNTING,
        statement=_("The work's shoulder tight on the jaws, no jaw standing out past the chuck's body."),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("turners and clubs"),
        source="common practice",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(holding=("scroll_chuck",)),
    ),
    Rule(
        key="wet-wood",
        severity=Severity.CAUTION,
        moment=Moment.MOUNTING,
        statement=_(
            "Wet wood is up to twice as heavy, throws water and can crack as it "
            "turns: slower, stop and look often, wipe the bed dry."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("turners and clubs"),
        source="common practice",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(wood_conditions=("wet",)),
    ),
)
