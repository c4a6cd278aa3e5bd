"""What follows from the drawing of a recipe, each fact with how it came about; the words stand elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from types import MappingProxyType

from club.base.quantities.area import Area
from club.base.quantities.length import Length
from club.base.quantities.mass import Mass
from club.base.quantities.volume import Volume
from projects.geometry.blank import BlankError, largest_nm, shavings_share
from projects.geometry.outline import smallest_mm
from projects.geometry.profile import Profile, check
from projects.geometry.solids import end_grain_mm2, mass_g, surface_mm2, volume_mm3
from projects.library.domain.blank import Blank
from projects.library.domain.recipe import Recipe
from projects.library.domain.slender_mountings import WARN_ABOVE, MountingSlenderness, slender_mountings
from projects.library.domain.sourced import Confidence, Figure
from projects.library.domain.species import Woods
from projects.library.domain.words import Operation

SOLIDS = "closed forms: frusta of cones, the theorems of Pappus for arcs"
BENDING = "stiffness of round bars; common practice"
NM_PER_MM = 1_000_000
UM2_PER_MM2 = 1_000_000
NL_PER_MM3 = 1_000
NG_PER_G = 10**9


@dataclass(frozen=True)
class Working:
    """How a fact came about: a code for its formula, the values that went in, where the formula is from."""

    code: str
    values: Mapping[str, object]
    source: str


@dataclass(frozen=True)
class Surface:
    """What is sanded and finished: the turned outside, the inside, the flat faces at both ends."""

    outside: Area
    inside: Area
    ends: Area

    @property
    def total(self) -> Area:
        return Area(self.outside.um2 + self.inside.um2 + self.ends.um2)


@dataclass(frozen=True)
class Facts:
    """Of the finished piece, dry. Mass and density are None for a wood that no table has, `shavings_percent`
    for a blank that doesn't hold the piece. `workings` go by the name of the fact; of a slenderness it is
    `slenderness:` and the key of its mounting."""

    blank: Blank
    species: str
    species_label: str
    length: Length
    largest: Length
    smallest: Length
    volume: Volume
    surface: Surface
    end_grain_percent: Fraction
    density: Figure | None
    mass: Mass | None
    shavings_percent: Fraction | None
    slenderness: tuple[MountingSlenderness, ...]
    at_lathe_minutes: int
    beside_minutes: int
    workings: Mapping[str, Working] = field(default_factory=dict)


def facts(recipe: Recipe, woods: Woods) -> Facts:
    """Every fact of a recipe; raises ProfileError for a drawing that no piece of wood can have.

    A cylinder of 20 mm, 100 mm long, has a volume of 31 416 mm³ and a surface of 6 912 mm².
    """
    profile, blank = recipe.profile.profile(), recipe.blank
    check(profile)
    mm3, areas = volume_mm3(profile), surface_mm2(profile)
    grain_mm2 = end_grain_mm2(profile, grain_across=blank.grain_across).total
    density = _density(blank, woods)
    beside = _beside(recipe)
    found = Facts(
        blank=blank,
        species=blank.species,
        species_label=woods.name(blank.species),
        length=Length(profile.marks[-1].at - profile.marks[0].at),
        largest=Length(largest_nm(profile)),
        smallest=Length(round(smallest_mm(profile) * NM_PER_MM)),
        volume=_volume(mm3),
        surface=Surface(_area(areas.outside), _area(areas.inside), _area(areas.ends)),
        end_grain_percent=_percent(grain_mm2 / areas.total),
        density=density,
        mass=Mass(round(mass_g(mm3, float(density.value)) * NG_PER_G)) if density else None,
        shavings_percent=_shavings(profile, blank),
        slenderness=slender_mountings(recipe),
        at_lathe_minutes=_minutes(recipe) - beside,
        beside_minutes=beside,
    )
    return replace(found, workings=MappingProxyType(dict(_workings(recipe, found, _area(grain_mm2)))))


def _density(blank: Blank, woods: Woods) -> Figure | None:
    """What the edition keeps, which came from the table as far as that has one; else what the table has."""
    species = woods.species.get(blank.species)
    table = species.density_dry if species else None
    if (kept := blank.density_kg_per_m3) is None:
        return table
    if table is None:
        return Figure(Fraction(kept), "", Confidence.ESTIMATED)
    return replace(table, value=Fraction(kept))


def _shavings(profile: Profile, blank: Blank) -> Fraction | None:
    try:
        return _percent(shavings_share(profile, blank.size))
    except BlankError:
        return None


def _minutes(recipe: Recipe) -> int:
    return sum(mounting.minutes for mounting in recipe.mountings) + sum(
        step.minutes for step in recipe.steps()
    )


def _beside(recipe: Recipe) -> int:
    """Minutes of finishing away from the lathe: only where every coat is put on there."""
    if not recipe.finish or any(coat.on_the_lathe for coat in recipe.finish):
        return 0
    return sum(step.minutes for step in recipe.steps() if step.operation is Operation.FINISHING)


def _workings(recipe: Recipe, found: Facts, grain: Area) -> Iterator[tuple[str, Working]]:
    yield "volume", Working("volume", {"bored": recipe.profile.bore is not None}, SOLIDS)
    surface = found.surface
    parts = {"outside": surface.outside, "inside": surface.inside, "ends": surface.ends}
    yield "surface", Working("surface", parts, SOLIDS)
    across = {"grain_across": found.blank.grain_across, "end_grain": grain, "surface": surface.total}
    yield "end_grain", Working("end_grain", across, "integral of |n . grain| over the surface")
    if density := found.density:
        weighed = {"volume": found.volume, "density": density.value, "confidence": density.confidence}
        yield "mass", Working("mass", weighed, density.source)
    if found.shavings_percent is not None:
        blank = _volume(found.blank.size.volume_mm3)
        yield "shavings", Working("shavings", {"blank": blank, "piece": found.volume}, "")
    spent = {"mountings": len(recipe.mountings), "beside": found.beside_minutes, "all": _minutes(recipe)}
    yield "minutes", Working("minutes", spent, "")
    for each in found.slenderness:
        if each.unsupported and each.bar:
            values = {"unsupported": each.unsupported, "bar": each.bar, "overhung": each.overhung}
            limit = {"warn_above": WARN_ABOVE}
            yield f"slenderness:{each.mounting}", Working("slenderness", values | limit, BENDING)


def _area(mm2: float) -> Area:
    return Area(round(mm2 * UM2_PER_MM2))


def _volume(mm3: float) -> Volume:
    return Volume(round(mm3 * NL_PER_MM3))


def _percent(share: float) -> Fraction:
    """To a thousandth of a per cent; no table of wood is as good as that."""
    return Fraction(round(share * 100_000), 1_000)
