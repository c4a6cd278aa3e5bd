"""What a wood is reported to do to people. No note says that a wood is safe, and no missing note says it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from projects.library.domain.sourced import Confidence

NOT_TURNED = "do not turn"


class Listing(StrEnum):
    """Whether a list of harmful woods has this one. A wood that is not listed is not thereby safe."""

    LISTED = "listed"
    NOT_LISTED = "not_listed"


@dataclass(frozen=True)
class HealthNote:
    """One line of a list. `species_keys` are woods of the table of woods; `key` names one that it has not.

    `potency` goes from 1 to 4, None where the list doesn't know; `parts` are what of the tree does it.
    """

    wood: str
    key: str
    group: str
    species_keys: tuple[str, ...]
    effects: tuple[str, ...]
    sites: tuple[str, ...]
    potency: int | None
    parts: tuple[str, ...]
    incidence: str
    note: str
    source: str
    confidence: Confidence

    @property
    def is_general(self) -> bool:
        """Whether it goes for a whole group of woods or for all."""
        return not self.key and not self.species_keys

    @property
    def forbids(self) -> bool:
        return self.note == NOT_TURNED

    def speaks_of(self, key: str) -> bool:
        return key != "" and (key == self.key or key in self.species_keys)


@dataclass(frozen=True)
class WoodHealth:
    """The notes on one wood, and those on all woods, which hold for it as well."""

    key: str
    notes: tuple[HealthNote, ...]
    general: tuple[HealthNote, ...]

    @property
    def listing(self) -> Listing:
        return Listing.LISTED if self.notes else Listing.NOT_LISTED


def health_note_from_row(row: Mapping[str, str]) -> HealthNote:
    """The note in a line of the table; KeyError or ValueError when the table is damaged."""
    return HealthNote(
        wood=row["wood"],
        key=row["key"],
        group=row["group"],
        species_keys=_several(row["species_keys"]),
        effects=_several(row["effect_classes"]),
        sites=_several(row["site"]),
        potency=int(row["potency"]) if row["potency"] else None,
        parts=_several(row["from"]),
        incidence=row["incidence"],
        note=row["note"],
        source=row["source"],
        confidence=Confidence(row["confidence"]),
    )


def _several(cell: str) -> tuple[str, ...]:
    """`eyes; skin` is two."""
    return tuple(part.strip() for part in cell.split(";") if part.strip())
