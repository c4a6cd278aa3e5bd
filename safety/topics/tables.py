"""The rules the house brings along, in the order in which they are said.

Their statements are our own words. Of their sources, "school sheet" is the wood shop lathe safety sheet of
the Maryland Institute College of Art, "1990 compiled list" the list of harmful woods that the notes on health
name, and "common practice" means: taught in workshops, no published source.
"""

from __future__ import annotations

from functools import cache

from safety.topics.domain.rules import Rule
from safety.topics.rules import before_power, drilling, finishing, leaving, mounting, sanding, turning


@cache
def rules() -> tuple[Rule, ...]:
    """Every rule, moment by moment; lines that hang together are neighbours."""
    moments = (before_power, mounting, turning, drilling, sanding, finishing, leaving)
    return tuple(rule for moment in moments for rule in moment.RULES)
