"""One line of a kit list: a need of the whole class, with how it was worked out as data without words."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType

from projects.kit.offers import Purchase
from projects.kit.sawing import CuttingPlan
from projects.kit.taken import NOTHING, Taken
from projects.library.domain.facts import Working
from projects.library.domain.findings import Finding, Weight

OWN = ""
COMMON_PRACTICE = "common practice"


@dataclass(frozen=True)
class Line:
    """`need`, `on_shelf` and `to_buy` count pieces, of a liquid nanolitres, of glue nanograms.

    `keys` are the needs of the recipe it stands for; pieces of one stick share a line. `on_shelf` is what of
    the need the shelf covers, never more than the need, and `taken` is what leaves the shelf for it. What
    `to_buy` lacks in `purchase` is missing there.
    """

    keys: tuple[str, ...]
    kind: str
    need: int
    on_shelf: int
    purchase: Purchase
    workings: tuple[Working, ...] = ()
    findings: tuple[Finding, ...] = ()
    plan: CuttingPlan | None = None
    taken: Taken = NOTHING

    @property
    def to_buy(self) -> int:
        return self.need - self.on_shelf

    @property
    def cost(self) -> int:
        return self.purchase.cost

    @property
    def complete(self) -> bool:
        """Whether all that is needed is there or can be bought."""
        return not self.purchase.missing and all(
            finding.weight is not Weight.REFUSED for finding in self.findings
        )

    @property
    def proved_least(self) -> bool:
        return self.complete and self.purchase.proved_least


def working(code: str, source: str = OWN, /, **values: object) -> Working:
    return Working(code, MappingProxyType(values), source)
