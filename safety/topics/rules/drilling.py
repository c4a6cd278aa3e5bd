"""What is said with drilling on the lathe."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from projects.library.domain.sourced import Confidence
from projects.library.domain.words import Moment, Severity
from safety.topics.domain.rules import Place, Rule, Trigger

RULES = (
    Rule(
        key="drilling",
        severity=Severity.STOP,
        moment=Moment.DRILLING,
        statement=_(
            "Drill slowly, clear the hole often, and keep hold of the drill chuck while you back it out."
        ),
        said_at=(Place.BRIEFING, Place.HANDOUT),
        who_says=_("turners and clubs"),
        source="common practice",
        confidence=Confidence.COMMON_PRACTICE,
        trigger=Trigger(operations=("drilling",)),
    ),
)
