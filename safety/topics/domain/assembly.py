"""The cautions of a handout: what always has to be said for such a recipe, and what is the recipe's own.

Nine stop lines are as many as somebody keeps in mind, so a handout never has more. None of what they say is
left out for that: where more stops are called for, lines are folded together until nine are left. The moment
that has most to say folds first (of equals the later one), always its last two lines into one, which then
says both, whole sentence after whole sentence. So a chuck's grub screw and its jaws come to stand in one line
of mounting, while what is said before power stands by itself for as long as it can. A recipe's own stops are
the first of their moment, since nobody has heard them before, and are the last to be folded. There are fewer
moments than nine lines: with every moment folded into one line of its own there is still room for all.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from projects.library.domain.recipe import Caution
from projects.library.domain.rule_words import RuleWords
from projects.library.domain.words import Moment, Severity
from safety.topics.domain.rules import Fired, Place, Rule, Spoken, Word, fire

# The look's rule for paper: nine stop lines at most on a handout or card; common practice.
MOST_STOP_LINES = 9
MOMENTS = tuple(Moment)
WORST_FIRST = (Severity.STOP, Severity.CAUTION, Severity.NOTE)


@dataclass(frozen=True)
class Said:
    """One statement. `rule` is None for the recipe's own, `because` the words that made the rule fire."""

    statement: Spoken
    rule: Rule | None = None
    because: tuple[Word, ...] = ()


@dataclass(frozen=True)
class CautionLine:
    """One line, which says several things where lines had to be folded together."""

    severity: Severity
    said: tuple[Said, ...]


@dataclass(frozen=True)
class MomentCautions:
    """What is said at one moment, worst first; a moment at which nothing is said has none."""

    moment: Moment
    lines: tuple[CautionLine, ...]

    def of(self, severity: Severity) -> tuple[CautionLine, ...]:
        return tuple(line for line in self.lines if line.severity is severity)


def assemble(
    rules: tuple[Rule, ...], words: RuleWords, own: Sequence[Caution] = ()
) -> tuple[MomentCautions, ...]:
    """Everything the handout says of a recipe with these words and cautions of its own, moment by moment.

    Each thing is said once at its moment, at most nine lines are stops, and no stop is lost.
    """
    fired = fire(rules, Place.HANDOUT, words)
    own = _once(own)
    stops = _folded({moment: _lines(Severity.STOP, moment, own, fired) for moment in MOMENTS})
    others = {
        moment: [line for severity in WORST_FIRST[1:] for line in _lines(severity, moment, own, fired)]
        for moment in MOMENTS
    }
    found = (MomentCautions(moment, (*stops[moment], *others[moment])) for moment in MOMENTS)
    return tuple(cautions for cautions in found if cautions.lines)


def _once(own: Iterable[Caution]) -> list[Caution]:
    """Without what is said twice at one moment; the worse of two stays."""
    kept: dict[tuple[Moment, str], Caution] = {}
    for caution in sorted(own, key=lambda caution: WORST_FIRST.index(caution.severity)):
        kept.setdefault((caution.moment, " ".join(caution.text.split())), caution)
    return list(kept.values())


def _lines(
    severity: Severity, moment: Moment, own: Sequence[Caution], fired: Sequence[Fired]
) -> list[CautionLine]:
    """A line for each, the recipe's own first."""
    said = [Said(one.text) for one in own if (one.severity, one.moment) == (severity, moment)]
    said += [
        Said(one.rule.statement, one.rule, one.because)
        for one in fired
        if (one.rule.severity, one.rule.moment) == (severity, moment)
    ]
    return [CautionLine(severity, (one,)) for one in said]


def _folded(stops: dict[Moment, list[CautionLine]]) -> dict[Moment, list[CautionLine]]:
    """The same statements in nine lines at most; see the head of this module."""
    while sum(map(len, stops.values())) > MOST_STOP_LINES:
        fullest = max(
            (moment for moment in MOMENTS if len(stops[moment]) > 1),
            key=lambda moment: (sum(len(line.said) for line in stops[moment]), MOMENTS.index(moment)),
        )
        *before, last_but_one, last = stops[fullest]
        folded = CautionLine(Severity.STOP, (*last_but_one.said, *last.said))
        stops = {**stops, fullest: [*before, folded]}
    return stops
