"""The finish of a project: its coats in their order, each with the wait behind it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from projects.library.domain.bounds import Hours, Key, MaybePassage, Whole


@dataclass(frozen=True)
class Coat:
    """One coat of a finish, by its key in the table of finishes.

    `spread_cm2_per_ml` (1 m²/l is 10 cm²/ml) is empty until the edition is frozen.
    """

    finish: Key
    wait_hours: Hours
    on_the_lathe: bool
    note: MaybePassage = ""
    spread_cm2_per_ml: Annotated[int, Whole(1, 1_000)] | None = None
