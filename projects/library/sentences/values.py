"""A single value of a recipe, or a whole thing in it, as a sentence about it says it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from club.base.quantities.area import Area, show_area
from club.base.quantities.length import Length, LengthStyle, show_length, write_length
from club.base.quantities.shown import thousands
from club.base.quantities.volume import Volume, show_volume
from projects.library.domain.blank import Blank
from projects.library.domain.coats import Coat
from projects.library.domain.drawn import DrawnBore, DrawnMark, DrawnProfile, DrawnShape
from projects.library.domain.holding import Holding, Tailstock
from projects.library.domain.keys import skill_words
from projects.library.domain.materials import Need, Spares
from projects.library.domain.mountings import DrillHole, Mounting, Step
from projects.library.domain.preparation import GlueUp, Task
from projects.library.domain.quantity_form import QUANTITIES
from projects.library.domain.recipe import Caution, End, Recipe, Variant
from projects.library.sentences.holding import blank_words, holding_words, species_words
from projects.library.sentences.materials import spares_words
from projects.library.sentences.words import kind_label, word_for
from projects.library.tables import finishes

# Signs of the base units, for amounts that read alike in any greater one.
BASE_SIGNS: Mapping[type, str] = {Area: "µm²", Volume: "nl"}
# Grades, not counts: they are written without a blank in them.
GRADES = frozenset({"grit", "grits"})
# Empty until an edition is kept; then the tables of woods and finishes fill them.
FROM_TABLES = frozenset({"density_kg_per_m3", "spread_cm2_per_ml"})


@dataclass(frozen=True)
class Speech:
    """How one reader is told values: lengths in their style, things by the titles that stand for keys."""

    lengths: LengthStyle
    titles: Mapping[tuple[str, str], str]

    def length(self, length: Length) -> str:
        return show_length(length, self.lengths, _("about"))

    def value(self, field: str, value: object) -> str:
        """`8`, `1/2 in`, `bowl gouge`, `“Sand it.”`, `120, 180`; nothing for what is left out."""
        match value:
            case None:
                return _("as the table says") if field in FROM_TABLES else ""
            case bool():
                return _("yes") if value else _("no")
            case Enum():
                return word_for(value)
            case tuple():
                return ", ".join(self.value(field, each) for each in value)
            case int():
                return str(value) if field in GRADES else thousands(value)
            case str():
                return self._text(field, value)
        return self._quantity(value)

    def alike(self, field: str, one: object, other: object) -> bool:
        """Whether a reader could not tell these two apart, or only by what rounding left off."""
        if isinstance(one, Length) and isinstance(other, Length):
            plain, also = (show_length(each, self.lengths, "").strip() for each in (one, other))
            return plain == also
        return self.value(field, one) == self.value(field, other)

    def exactly(self, field: str, value: object) -> str:
        """The same to the last digit or sign, for two values that read alike."""
        match value:
            case Length():
                return write_length(Length(value.nm))
            case Area() | Volume():
                amount = QUANTITIES[type(value)].amount(value)
                return f"{thousands(amount)}\u00a0{BASE_SIGNS[type(value)]}"
            case str():
                return _quoted(value)
            case tuple():
                return ", ".join(self.exactly(field, each) for each in value)
        return self.value(field, value)

    def _text(self, field: str, text: str) -> str:
        match field:
            case "species":
                return species_words(text)
            case "finish":
                return finishes()[text].name if text in finishes() else skill_words(text)
            case "skill" | "skills" | "key":
                return skill_words(text)
            case "away_from" | "leaves_out":
                return self._title("steps", text)
            case "after":
                return self._title("preparation", text)
            case "parts" | "adhesive":
                return self._title("materials", text)
        return _quoted(text) if text else ""

    def _title(self, of: str, key: str) -> str:
        return self.titles.get((of, key), skill_words(key))

    def _quantity(self, value: object) -> str:
        match value:
            case Length():
                return self.length(value)
            case Area():
                return show_area(value)
            case Volume():
                return show_volume(value)
        raise TypeError(value)

    def thing(self, thing: object) -> str:
        """What people know a thing by, in a few words."""
        match thing:
            case Mounting():
                return _mounting(thing)
            case Step() | Caution():
                return thing.text
            case Task() | GlueUp() | Variant():
                return thing.title
            case Coat():
                return self.value("finish", thing.finish)
            case Tailstock():
                return word_for(thing.centre)
            case DrawnMark() | DrawnShape() | DrawnBore() | DrawnProfile() | End() | DrillHole():
                return self._drawn(thing)
        return self._of_kind(thing)

    def _of_kind(self, thing: object) -> str:
        if isinstance(thing, Spares):
            return spares_words(thing)
        if isinstance(thing, Blank):
            return blank_words(thing, self.length)
        if isinstance(thing, Holding):
            return holding_words(thing, self.length)
        if isinstance(thing, Need):
            return _("%(kind)s, %(what)s") % {
                "kind": kind_label(type(thing)),
                "what": thing.specification,
            }
        raise TypeError(thing)

    def _drawn(self, thing: object) -> str:
        match thing:
            case DrawnMark(at, diameter):
                values = {"at": self.length(at), "across": self.length(diameter)}
                return _("at %(at)s, %(across)s across") % values
            case DrawnShape(kind, radius, depth):
                return ", ".join([word_for(kind), *map(self.length, filter(None, (radius, depth)))])
            case End(kind, diameter, length):
                values = {
                    "kind": word_for(kind),
                    "across": self.length(diameter),
                    "long": self.length(length),
                }
                return _("%(kind)s, %(across)s across, %(long)s long") % values
            case DrillHole(diameter, depth):
                values = {"across": self.length(diameter), "deep": self.length(depth)}
                return _("%(across)s across, %(deep)s deep") % values
            case DrawnBore(marks=marks) | DrawnProfile(marks=marks):
                return ngettext("%(count)d mark", "%(count)d marks", len(marks)) % {"count": len(marks)}
        raise TypeError(thing)


def speech(lengths: LengthStyle, *recipes: Recipe) -> Speech:
    """With the titles of these recipes; where two give one key a title, the last one's holds."""
    titles = {of: title for recipe in recipes for of, title in _titles(recipe).items()}
    return Speech(lengths, titles)


def _titles(recipe: Recipe) -> dict[tuple[str, str], str]:
    steps = {
        ("steps", step.key): _("step %(step)s of mounting %(mounting)s") % {"step": at, "mounting": place}
        for place, mounting in enumerate(recipe.mountings, 1)
        for at, step in enumerate(mounting.steps, 1)
    }
    beforehand = {("preparation", each.key): _quoted(each.title) for each in _beforehand(recipe)}
    needs = {("materials", need.key): _quoted(need.specification) for need in recipe.materials}
    return steps | beforehand | needs


def _beforehand(recipe: Recipe) -> tuple[GlueUp | Task, ...]:
    return (*recipe.glue_ups, *recipe.preparation)


def _mounting(mounting: Mounting) -> str:
    count = len(mounting.steps)
    words = ngettext("%(title)s, %(count)d step", "%(title)s, %(count)d steps", count)
    return words % {"title": mounting.title, "count": count}


def _quoted(text: str) -> str:
    return _("“%(text)s”") % {"text": text}
