"""The tables of woods and finishes that the house brings along, read from the files beside this one."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from projects.library.domain.finishes import Finish, finish_from_row
from projects.library.domain.species import Woods, species_from_row
from projects.library.domain.wood_health import health_note_from_row

DATA = Path(__file__).parent / "data"


@cache
def woods() -> Woods:
    """Every wood, and every note on health."""
    species = [species_from_row(row) for row in _rows("woods.csv")]
    notes = tuple(health_note_from_row(row) for row in _rows("wood_health.csv"))
    return Woods(MappingProxyType({wood.key: wood for wood in species}), notes)


@cache
def finishes() -> Mapping[str, Finish]:
    """Every finish by its key."""
    return MappingProxyType({finish.key: finish for finish in map(finish_from_row, _rows("finishes.csv"))})


def _rows(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))
