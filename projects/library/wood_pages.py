"""Woods as their pages show them: what tables print, how far to trust it, what the wood does to people."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from django.utils.functional import Promise
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from club.base.quantities.shown import decimal
from projects.library.domain.sourced import Confidence, Figure
from projects.library.domain.species import Species, WoodGroup, Woods
from projects.library.domain.wood_health import HealthNote
from projects.library.sentences.sourced import CONFIDENCES
from projects.library.sentences.woods import GROUPS

# What stands beside a number that isn't simply published, short enough for a list.
MARKS: Mapping[Confidence, Promise] = {
    Confidence.RECALLED: gettext_lazy("recalled"),
    Confidence.COMMON_PRACTICE: gettext_lazy("common practice"),
    Confidence.ESTIMATED: gettext_lazy("estimated"),
}


@dataclass(frozen=True)
class ShownFigure:
    """`value` is "" for what no table prints; `mark` is "" for a number that is simply published."""

    name: str
    value: str = ""
    unit: str = ""
    mark: str = ""
    confidence: str = ""
    source: str = ""


@dataclass(frozen=True)
class WoodRow:
    """A line of the list. `effects` is "" for a wood that no list of harmful woods has."""

    key: str
    name: str
    scientific_name: str
    group: WoodGroup
    group_name: str
    gravity: ShownFigure
    density: ShownFigure
    hardness: ShownFigure
    effects: str
    forbidden: bool

    @property
    def words(self) -> str:
        """What a search looks through."""
        return f"{self.name} {self.scientific_name} {self.group_name} {self.effects}".casefold()


@dataclass(frozen=True)
class ShownNote:
    """A note on health; `potency` goes from 1 to 4, None where the list doesn't know."""

    wood: str
    effects: str
    sites: str
    parts: str
    incidence: str
    potency: int | None
    text: str
    confidence: str
    source: str


@dataclass(frozen=True)
class WoodPage:
    row: WoodRow
    note: str
    figures: tuple[ShownFigure, ...]
    notes: tuple[ShownNote, ...]
    general: tuple[ShownNote, ...]


def wood_rows(woods: Woods) -> tuple[WoodRow, ...]:
    """Every wood with figures or a note on health, by name."""
    return tuple(wood_row(woods, key) for key in woods.by_name())


def wood_row(woods: Woods, key: str) -> WoodRow:
    wood, health, group = woods.species.get(key), woods.health(key), woods.group(key)
    effects = dict.fromkeys(effect for note in health.notes for effect in note.effects)
    return WoodRow(
        key=key,
        name=woods.name(key),
        scientific_name=wood.scientific_name if wood else "",
        group=group,
        group_name=str(GROUPS.get(group, "")),
        gravity=_gravity(wood),
        density=_figure(_("density, dry"), wood.density_dry if wood else None, 0, "kg/m\u00b3"),
        hardness=_figure(_("side hardness"), wood.hardness_lbf if wood else None, 0, "lbf"),
        effects="; ".join(effects),
        forbidden=any(note.forbids for note in health.notes),
    )


def wood_page(woods: Woods, key: str) -> WoodPage:
    """The wood with everything that is written about it, and what goes for every wood."""
    wood, health = woods.species.get(key), woods.health(key)
    row = wood_row(woods, key)
    shrinkages = _shrinkages(wood) if wood else ()
    return WoodPage(
        row=row,
        note=wood.note if wood else "",
        figures=(row.gravity, _green(wood), row.density, row.hardness, *shrinkages) if wood else (),
        notes=tuple(map(_note, health.notes)),
        general=tuple(map(_note, health.general)),
    )


def _gravity(wood: Species | None) -> ShownFigure:
    return _figure(_("specific gravity at 12 % moisture"), wood.gravity_dry if wood else None, 2)


def _green(wood: Species) -> ShownFigure:
    return _figure(_("specific gravity, green"), wood.gravity_green, 2)


def _shrinkages(wood: Species) -> tuple[ShownFigure, ...]:
    return (
        _figure(_("shrinkage to oven-dry, radial"), wood.shrinkage_radial, 1, "%"),
        _figure(_("shrinkage to oven-dry, tangential"), wood.shrinkage_tangential, 1, "%"),
        _figure(_("shrinkage to oven-dry, of volume"), wood.shrinkage_volumetric, 1, "%"),
    )


def _figure(name: str, figure: Figure | None, places: int, unit: str = "") -> ShownFigure:
    if figure is None:
        return ShownFigure(name)
    return ShownFigure(
        name,
        value=decimal(figure.value, places, fixed=True),
        unit=unit,
        mark=str(MARKS.get(figure.confidence, "")),
        confidence=str(CONFIDENCES[figure.confidence]),
        source=figure.source,
    )


def _note(note: HealthNote) -> ShownNote:
    return ShownNote(
        wood=note.wood,
        effects="; ".join(note.effects),
        sites=", ".join(note.sites),
        parts=", ".join(note.parts),
        incidence=note.incidence,
        potency=note.potency,
        text=note.note,
        confidence=str(CONFIDENCES[note.confidence]),
        source=note.source,
    )
