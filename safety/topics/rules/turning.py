"""What is said with cutting and with burning lines."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from projects.library.domain.sourced import Confidence
from projects.library.domain.words import Moment, Severity
from safety.topics.domain.rules import Place, Rule, Trigger

RULES = (
    Rule(
        key="roughing-gouge-face",
        severity=Severity.STOP,
        moment=Moment.TURNING,
        statement=_("Face work: no spindle roughing gouge. Its tang can snap, and the tool is thrown."),
        said_at=(Place.HANDOUT,),
        who_says=_("turners and clubs"),
        source="a turners' magazine chapter on the tool (read) and common practice",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(operations=("face_work",)),
    ),
    Rule(
        key="burn-handles",
        severity=Severity.STOP,
        moment=Moment.TURNING,
        statement=_(
            "Burn lines only with a wire that has a handle at each end; never wind it round fingers or hands."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("turners magazines"),
        source="turning-supplier article on burning wire",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(operations=("friction_burning",)),
    ),
    Rule(
        key="burn-weak-wire",
        severity=Severity.CAUTION,
        moment=Moment.TURNING,
        statement=_(
            "Thin single wire that will break, no braided cable; in a small "
            "groove, from below or behind, away from the rest."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("turners"),
        source="common practice",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(operations=("friction_burning",)),
    ),
    Rule(
        key="burn-fire",
        severity=Severity.CAUTION,
        moment=Moment.TURNING,
        statement=_(
            "No shavings, solvent or wet finish near the burn; look for embers; extinguisher at hand."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("workshop rule"),
        source="common practice",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(operations=("friction_burning",)),
    ),
    Rule(
        key="burn-thin",
        severity=Severity.NOTE,
        moment=Moment.TURNING,
        statement=_("A thin wall can burn through."),
        said_at=(Place.HANDOUT,),
        who_says=_("turners magazines"),
        source="same article",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(operations=("friction_burning",)),
    ),
    Rule(
        key="resp-toxic",
        severity=Severity.CAUTION,
        moment=Moment.TURNING,
        statement=_(
            "This wood is strongly listed as a sensitiser or irritant: mask for "
            "cutting too, wash, and stop at the first rash or wheeze."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("published list"),
        source="1990 compiled list; UK HSE Woodworking Sheet 30",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(
            woods=(
                "iroko",
                "cocobolo",
                "rosewood_brazilian",
                "rosewood_indian",
                "cedar_western_redcedar",
                "yew",
                "mansonia",
                "obeche",
                "ebony",
                "padauk",
                "wenge",
                "teak",
                "greenheart",
                "olivewood",
            )
        ),
    ),
    Rule(
        key="wood-unlisted",
        severity=Severity.CAUTION,
        moment=Moment.TURNING,
        statement=_(
            "This wood is not in our tables, which does not make it safe: mask for "
            "cutting too, and stop at the first rash or wheeze."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("UK HSE"),
        source="UK HSE Woodworking Sheet 30, introduction",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(wood_groups=("unknown",)),
    ),
    Rule(
        key="nut-wood",
        severity=Severity.CAUTION,
        moment=Moment.TURNING,
        statement=_("The dust of walnut wood is itself a listed sensitiser."),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("published list"),
        source="1990 compiled list",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(woods=("walnut_black",)),
    ),
    Rule(
        key="spalted",
        severity=Severity.CAUTION,
        moment=Moment.TURNING,
        statement=_(
            "Spalted wood carries mould spores: mask from the first cut. One school refuses mouldy wood."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("published list; school sheet"),
        source="1990 compiled list; school sheet, item 4",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(wood_conditions=("spalted",)),
    ),
    Rule(
        key="yew",
        severity=Severity.CAUTION,
        moment=Moment.TURNING,
        statement=_("Yew is a poison: no food ware, mask on, wash afterwards."),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("published list"),
        source="1990 compiled list",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(woods=("yew",)),
    ),
)
