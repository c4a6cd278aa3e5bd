"""What is said of clearing up, and of what is left behind."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from projects.library.domain.sourced import Confidence
from projects.library.domain.words import Moment, Severity
from safety.topics.domain.rules import Place, Rule, Trigger

RULES = (
    Rule(
        key="rags-can",
        severity=Severity.STOP,
        moment=Moment.LEAVING,
        statement=_(
            "Oily paper towels go straight into water in a lidded metal can, "
            "and the can leaves the building that night."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT, Place.OIL_BENCH),
        who_says=_("NFPA; OSHA"),
        source=(
            "fire-safety sheet on oily rags (tight metal can, water with detergent); 29 "
            "CFR 1910.106(e)(9)(iii), 1910.125(e)(4) (covered metal, out daily); wet at "
            "once instead of dried first is common practice"
        ),
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(finish_properties=("dries_by_oxidation",)),
    ),
)
