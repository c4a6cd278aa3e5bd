"""From a recipe to its drawings: for the page, wide and narrow, and life size for paper."""

from __future__ import annotations

from dataclasses import dataclass

from django.utils.translation import gettext as _

from club.base.drawing.shapes import box_round
from club.base.drawing.sheet import Drawing, fitted
from club.base.printing import Paper
from club.base.quantities.length import Length, LengthStyle
from club.base.quantities.shown import NO_BREAK_SPACE
from projects.geometry.outline import largest_mm, length_mm
from projects.library.domain.drawing.callouts import PieceWords
from projects.library.domain.drawing.check_bars import check_bars
from projects.library.domain.drawing.lettered import numbered_piece, piece
from projects.library.domain.drawing.sheets import Tile, tiles
from projects.library.domain.drawn import DrawnBore, DrawnProfile
from projects.library.domain.recipe import Recipe
from projects.library.marks_table import MarkRow, mark_rows
from projects.library.sentences.lengths import Show, shown_in

# As wide as a page beside its facts, and as a phone of 360 px less the margins of page and sheet.
WIDE_PX, NARROW_PX = 720.0, 312.0
TALLEST_PX = 660.0
NM_PER_MM = 1_000_000
LETTER_MM = 3.2
UNITS = (f"{NO_BREAK_SPACE}mm", f"{NO_BREAK_SPACE}in")
# What a sheet has for a drawing beside its margins, its title block and the drawing's caption, mm.
ROOM = {Paper.A4: (177.0, 246.0), Paper.LETTER: (183.0, 228.0)}
# What the first sheet needs above and below the drawing: title, stop lines before power, check bars; mm.
FIRST_SHEET_TAKES = 80.0


@dataclass(frozen=True)
class DrawnPiece:
    """The drawing for a wide page and for a phone; `words` say it to who can't see it, `rows` in figures."""

    wide: Drawing
    narrow: Drawing
    words: str
    rows: tuple[MarkRow, ...]
    bore_rows: tuple[MarkRow, ...]
    is_section: bool
    unit: str


@dataclass(frozen=True)
class LifeSize:
    """The drawing at 1:1 on one sheet or more; `half` where only its upper half is drawn.

    The upper half says all of it, and the whole of a wide piece would leave the first sheet empty.
    """

    tiles: tuple[Tile, ...]
    bars: Drawing
    words: str
    half: bool
    unit: str

    @property
    def count(self) -> int:
        return len(self.tiles)


def drawn_piece(recipe: Recipe, lengths: LengthStyle) -> DrawnPiece:
    """Raises ProfileError for a drawing that no piece of wood can have."""
    show = shown_in(lengths, recipe)
    words = _words(recipe, show)
    return DrawnPiece(
        wide=fitted(lambda size: piece(recipe, words, size), WIDE_PX, tallest_px=TALLEST_PX),
        narrow=fitted(lambda size: numbered_piece(recipe, words, size), NARROW_PX, tallest_px=NARROW_PX),
        words=_spoken(recipe, show),
        rows=mark_rows(recipe.profile, show),
        bore_rows=mark_rows(recipe.profile.bore, show) if recipe.profile.bore else (),
        is_section=recipe.profile.bore is not None,
        unit=one_unit(recipe, show).strip(),
    )


def life_size(recipe: Recipe, lengths: LengthStyle, paper: Paper) -> LifeSize:
    """Raises ProfileError for a drawing that no piece of wood can have."""
    show = shown_in(lengths, recipe)
    width, height = ROOM[paper]
    words = _words(recipe, show)
    marks = piece(recipe, words, LETTER_MM)
    half = box_round(mark.box for mark in marks).height > height - FIRST_SHEET_TAKES
    if half:
        marks = piece(recipe, words, LETTER_MM, half=True)
    return LifeSize(
        tiles(marks, width, height), check_bars(), _spoken(recipe, show), half, one_unit(recipe, show).strip()
    )


def _words(recipe: Recipe, show: Show) -> PieceWords:
    unit = one_unit(recipe, show)

    def bare(length: Length) -> str:
        return show(length).removesuffix(unit)

    return PieceWords(
        bead=_("bead R %(measure)s"),
        cove=_("cove R %(measure)s"),
        v_cut=_("V-cut %(measure)s deep"),
        across_inside=_("%(across)s inside"),
        bead_inside=_("bead R %(measure)s inside"),
        cove_inside=_("cove R %(measure)s inside"),
        v_cut_inside=_("V-cut %(measure)s deep inside"),
        show=bare,
    )


def one_unit(recipe: Recipe, show: Show) -> str:
    """The unit in which every length of the drawing stands, with its blank before it; "" for several.

    Then it is said once, beside the drawing, and each number stands without it (ISO 129-1).
    """
    runs: list[DrawnProfile | DrawnBore] = [recipe.profile]
    runs += [recipe.profile.bore] if recipe.profile.bore else []
    lengths = [length for run in runs for mark in run.marks for length in (mark.at, mark.diameter)]
    lengths += [each for run in runs for shape in run.shapes for each in (shape.radius, shape.depth) if each]
    shown = {show(length) for length in lengths}
    return next((unit for unit in UNITS if all(text.endswith(unit) for text in shown)), "")


def _spoken(recipe: Recipe, show: Show) -> str:
    profile = recipe.profile.profile()
    length, across = (Length(round(found * NM_PER_MM)) for found in (length_mm(profile), largest_mm(profile)))
    values = {"title": recipe.title, "length": show(length), "across": show(across)}
    return _("%(title)s, %(length)s long, %(across)s across; every mark stands in the list below") % values
