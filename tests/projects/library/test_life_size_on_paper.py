"""What a ruler finds on the printed sheet, read from the drawing operators of the PDF."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from club.base.printing import Paper, render_pdf
from club.base.quantities.length import LengthStyle
from projects.geometry.outline import extremes
from projects.library.domain.drawing.sheets import CROSS
from projects.library.domain.recipe import Recipe
from projects.library.drawing import life_size
from tests.paper import MM_A_POINT, read_pdf
from tests.paper import typesetting_is_quiet as typesetting_is_quiet
from tests.projects.library.examples import BOWL, KNOB, outline
from tests.projects.library.pdf_paths import OnPaper, paths_on
from tests.projects.library.pieces import random_recipe

pytestmark = pytest.mark.pdf
OURS = Path(__file__).parent / "templates"
EACH_PAPER = pytest.mark.parametrize("paper", list(Paper))
HEAVY, THIN = 0.5, 0.18  # mm
LONG = replace(KNOB, profile=outline(("0", "1"), ("7", "1 1/2"), ("15", "1/2")))
THICK = replace(BOWL, profile=outline(("0", "9"), ("2", "10")))


@pytest.fixture(autouse=True)
def our_templates(settings):
    """A sheet with the drawing alone."""
    (engine,) = settings.TEMPLATES
    settings.TEMPLATES = [{**engine, "DIRS": [*engine["DIRS"], OURS]}]


def printed(recipe: Recipe, paper: Paper = Paper.A4) -> bytes:
    life = life_size(recipe, LengthStyle.AS_TYPED, paper)
    return render_pdf("life_size_alone.html", {"life": life}, paper=paper)


def all_paths(pdf: bytes) -> list[list[OnPaper]]:
    return [paths_on(pdf, page) for page in range(len(read_pdf(pdf).pages))]


def drawn_with(pen: float, paths: list[OnPaper]) -> list[OnPaper]:
    return [path for path in paths if path.pen == pytest.approx(pen, abs=0.002)]


# ISO 32000-1, 8.3.2.3: the unit of a page is 1/72 in; so 100 mm are 283.46 and 4 in 288 units.
@EACH_PAPER
def test_the_check_bars_measure_100_mm_and_4_in(paper):
    (sheet,) = all_paths(printed(KNOB, paper))

    bars = [
        path for path in drawn_with(THIN, sheet) if path.bottom - path.top == pytest.approx(1.6, abs=0.01)
    ]

    assert [round((bar.right - bar.left) / MM_A_POINT, 2) for bar in bars] == [283.46, 288.0]


@EACH_PAPER
@pytest.mark.parametrize("recipe", [KNOB, BOWL, THICK, *map(random_recipe, range(6))])
def test_the_wood_is_as_long_and_thick_as_the_marks_say(recipe, paper):
    """Within 0.1 mm; of a piece too thick for the sheet it is the radius that is drawn."""
    found = extremes(recipe.profile.profile())
    is_half = life_size(recipe, LengthStyle.AS_TYPED, paper).half

    (sheet,) = all_paths(printed(recipe, paper))

    wood = drawn_with(HEAVY, sheet)
    length = max(path.right for path in wood) - min(path.left for path in wood)
    height = max(path.bottom for path in wood) - min(path.top for path in wood)
    assert length == pytest.approx(found.right.z - found.left.z, abs=0.1)
    assert height == pytest.approx(found.thickest.r if is_half else found.thickest.diameter, abs=0.1)


def level_lines_of_crosses(paths: list[OnPaper]) -> list[OnPaper]:
    level = [path for path in drawn_with(THIN, paths) if path.top == path.bottom]
    return [path for path in level if path.right - path.left == pytest.approx(2 * CROSS, abs=1e-3)]


@EACH_PAPER
@pytest.mark.parametrize("recipe", [LONG, THICK])
def test_register_marks_lie_within_the_margins(recipe, paper):
    """20 mm at the left to file it by, 12 mm at the right."""
    pdf = printed(recipe, paper)
    width = float(read_pdf(pdf).pages[0].mediabox.width) * MM_A_POINT

    crosses = [cross for sheet in all_paths(pdf) for cross in level_lines_of_crosses(sheet)]

    assert bool(crosses) is (recipe is LONG)
    assert all(cross.left >= 20 and cross.right <= width - 12 for cross in crosses)


@EACH_PAPER
def test_a_tiled_piece_laid_together_by_its_crosses_is_as_long_as_its_marks_say(paper):
    """From its left end to the first cross, from cross to cross, from the last cross to its right end."""
    sheets = all_paths(printed(LONG, paper))
    parts = [path for sheet in sheets for path in drawn_with(HEAVY, sheet)]
    crosses = [cross for sheet in sheets for cross in level_lines_of_crosses(sheet)]

    # Two crosses stand above each other at every cut, so in order across each part its cuts come in pairs.
    at = [(cross.left + cross.right) / 2 for cross in crosses][::2]

    first, *between, last = at[0], *zip(at[1:-1:2], at[2:-1:2], strict=True), at[-1]
    length = (first - parts[0].left) + sum(end - start for start, end in between) + (parts[-1].right - last)
    assert len(parts) == 3
    assert length == pytest.approx(15 * 25.4, abs=0.1)
