"""What is said where finish is put on."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from projects.library.domain.sourced import Confidence
from projects.library.domain.words import Moment, Severity
from safety.topics.domain.rules import Place, Rule, Trigger

RULES = (
    Rule(
        key="instant-glue",
        severity=Severity.STOP,
        moment=Moment.FINISHING,
        statement=_(
            "Instant glue: eyes covered, air moving, never on cotton. Cloth and glue heat up, smoke and burn."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT, Place.OIL_BENCH),
        who_says=_("safety data sheets"),
        source=(
            "data sheets and first-aid supplements for cyanoacrylate "
            "adhesives (eyes, vapour, heat with fabric; read)"
        ),
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(finishes=("instant_glue",)),
    ),
    Rule(
        key="alcohol",
        severity=Severity.CAUTION,
        moment=Moment.FINISHING,
        statement=_(
            "This finish holds a flammable solvent, or may: no sparks, flame or "
            "burning wire near it, air moving, lid back on."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT, Place.OIL_BENCH),
        who_says=_("fire rules"),
        source="29 CFR 1910.106",
        confidence=Confidence.RECALLED,
        trigger=Trigger(finish_properties=("flammable_solvent",)),
    ),
    Rule(
        key="food-oil",
        severity=Severity.CAUTION,
        moment=Moment.FINISHING,
        statement=_("For food: white mineral oil of food grade, or a drying oil that has fully cured."),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("FDA"),
        source="21 CFR 178.3620(a), 172.878",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(operations=("food_ware",)),
    ),
    Rule(
        key="nut-notice",
        severity=Severity.CAUTION,
        moment=Moment.FINISHING,
        statement=_(
            "This finish holds a tree-nut oil, or may: tell the instructor of"
            " a nut allergy before the lid is opened."
        ),
        said_at=(Place.HANDOUT, Place.OIL_BENCH),
        who_says=_("FDA list; the club"),
        source="walnut is a tree nut on the FDA list; the rule for a class is our own",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(finish_properties=("contains_tree_nut",)),
    ),
)
