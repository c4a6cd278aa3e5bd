"""How far a value may be trusted, in words; whoever shows a value of a table shows these beside it."""

from __future__ import annotations

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from projects.library.domain.sourced import Answer, Confidence

CONFIDENCES: Mapping[Confidence, Promise] = {
    Confidence.CONFIRMED: _("published"),
    Confidence.RECALLED: _("published, recalled and not read"),
    Confidence.COMMON_PRACTICE: _("common practice"),
    Confidence.ESTIMATED: _("estimated"),
}
ANSWERS: Mapping[Answer, Promise] = {
    Answer.YES: _("yes"),
    Answer.NO: _("no"),
    Answer.UNKNOWN: _("nobody knows"),
}
# What stands under an answer that a rule takes otherwise than it is given.
ANSWER_NOTES: Mapping[Answer, Promise] = {Answer.UNKNOWN: _("counts as yes")}
