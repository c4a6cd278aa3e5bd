"""Woods: what a table prints of each, and what it does to the people who turn it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from projects.library.domain.sourced import Confidence, Figure
from projects.library.domain.wood_density import density, gravity_from_green
from projects.library.domain.wood_health import HealthNote, WoodHealth

# Moisture at which tables of dry wood are printed, in per cent.
DRY = 12


class WoodGroup(StrEnum):
    """To the rules, a wood of unknown group is a hardwood."""

    HARDWOOD = "hardwood"
    SOFTWOOD = "softwood"
    UNKNOWN = "unknown"


@dataclass(frozen=True)
class Species:
    """One wood of the table. What the table leaves empty is None, never nought.

    Gravities are without unit, at 12 % moisture and green; hardness is the side hardness in lbf at 12 %;
    shrinkages are in per cent from green to oven-dry.
    """

    key: str
    label: str
    scientific_name: str
    group: WoodGroup
    gravity_dry: Figure | None
    gravity_green: Figure | None
    hardness_lbf: Figure | None
    shrinkage_radial: Figure | None
    shrinkage_tangential: Figure | None
    shrinkage_volumetric: Figure | None
    note: str = ""

    @property
    def density_dry(self) -> Figure | None:
        """kg/m³ at 12 % moisture: from the dry gravity, else estimated from the green one."""
        if dry := self.gravity_dry:
            return Figure(density(dry.value, DRY), dry.source, dry.confidence)
        if green := self.gravity_green:
            estimate = density(gravity_from_green(green.value, DRY), DRY)
            return Figure(estimate, green.source, Confidence.ESTIMATED)
        return None


def species_from_row(row: Mapping[str, str]) -> Species:
    """The wood in a line of the table of woods; KeyError or ValueError when the table is damaged."""
    return Species(
        key=row["key"],
        label=row["label"],
        scientific_name=row["scientific_name"],
        group=WoodGroup(row["group"]),
        gravity_dry=_figure(row, "gravity_dry"),
        gravity_green=_figure(row, "gravity_green"),
        hardness_lbf=_figure(row, "hardness_lbf"),
        shrinkage_radial=_figure(row, "shrinkage_radial", "shrinkage_"),
        shrinkage_tangential=_figure(row, "shrinkage_tangential", "shrinkage_"),
        shrinkage_volumetric=_figure(row, "shrinkage_volumetric", "shrinkage_"),
        note=row["note"],
    )


def _figure(row: Mapping[str, str], column: str, sourced_by: str = "") -> Figure | None:
    """The number in a column, with the source and confidence of its own kind of columns."""
    if not row[column]:
        return None
    source, confidence = row[f"{sourced_by}source"], row[f"{sourced_by}confidence"]
    return Figure(Fraction(row[column]), source, Confidence(confidence))


@dataclass(frozen=True)
class Woods:
    """Every wood the house knows by a key, and every note on health."""

    species: Mapping[str, Species]
    notes: tuple[HealthNote, ...]

    def by_name(self) -> tuple[str, ...]:
        """Every wood the house knows, in the order of its name."""
        own = {note.key for note in self._own_notes()}
        return tuple(sorted({*self.species, *own}, key=lambda key: (self.name(key).casefold(), key)))

    def knows(self, key: str) -> bool:
        """Whether the key stands for a wood at all; some woods have notes on health and no figures."""
        return key in self.species or any(key == own.key for own in self._own_notes())

    def name(self, key: str) -> str:
        """What the tables call it, the key itself for a wood that is in none."""
        if key in self.species:
            return self.species[key].label
        return next((own.wood for own in self._own_notes() if own.key == key), key)

    def group(self, key: str) -> WoodGroup:
        if key in self.species:
            return self.species[key].group
        groups = (WoodGroup(own.group) for own in self._own_notes() if own.key == key)
        return next(groups, WoodGroup.UNKNOWN)

    def _own_notes(self) -> Iterator[HealthNote]:
        """Notes on woods that the table of figures has not."""
        return (note for note in self.notes if note.key)

    def health(self, key: str) -> WoodHealth:
        """What is written about this wood, and what goes for every wood, listed or not."""
        own = tuple(note for note in self.notes if note.speaks_of(key))
        softwood = self.group(key) is WoodGroup.SOFTWOOD
        groups = {"", WoodGroup.SOFTWOOD if softwood else WoodGroup.HARDWOOD}
        general = (note for note in self.notes if note.is_general and note.group in groups)
        return WoodHealth(key, own, tuple(general))
