"""What is said with sanding and polishing, and of dust."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from projects.library.domain.sourced import Confidence
from projects.library.domain.words import Moment, Severity
from safety.topics.domain.rules import Place, Rule, Trigger

RULES = (
    Rule(
        key="resp-sanding",
        severity=Severity.STOP,
        moment=Moment.SANDING,
        statement=_(
            "Sand only with a mask that seals: protection factor 20 at least (FFP3, or a half mask with P3;"
            " in the US N95 at least). On bare wood with the extractor running at the work."
        ),
        said_at=(Place.INDUCTION, Place.BRIEFING, Place.HANDOUT),
        who_says=_("UK HSE; NIOSH"),
        source="UK trade and HSE guidance on APF 20; 42 CFR Part 84",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(operations=("sanding",)),
    ),
    Rule(
        key="rest-off-sanding",
        severity=Severity.STOP,
        moment=Moment.SANDING,
        statement=_("Take the rest away for sanding and polishing, or fingers get drawn in between."),
        said_at=(Place.INDUCTION, Place.BRIEFING, Place.HANDOUT),
        who_says=_("school sheet"),
        source="school sheet, item 14",
        confidence=Confidence.CONFIRMED,
        trigger=Trigger(operations=("sanding", "polishing", "finishing_on_lathe")),
    ),
)
