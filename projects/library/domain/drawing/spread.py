"""Places for texts that want to stand at certain points of a line and must not touch each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass
class _Run:
    """Neighbours that stand as close as they may; `start` is where the first of them stands."""

    count: int
    wanted: float  # the sum of where each would have the first one stand

    @property
    def start(self) -> float:
        return self.wanted / self.count


def spread(wanted: Sequence[float], apart: float) -> tuple[float, ...]:
    """Places in the same order, at least `apart` from each other, with the least sum of squared shifts.

    `wanted` goes up. Neighbours that would come too near are moved as one (pool adjacent violators).
    """
    runs: list[_Run] = []
    for place in wanted:
        runs.append(_Run(1, place))
        while len(runs) > 1 and runs[-1].start < runs[-2].start + runs[-2].count * apart:
            last = runs.pop()
            # Seen from the first of the run before, each of these stands that many steps further on.
            runs[-1].wanted += last.wanted - last.count * runs[-1].count * apart
            runs[-1].count += last.count
    return tuple(run.start + number * apart for run in runs for number in range(run.count))
