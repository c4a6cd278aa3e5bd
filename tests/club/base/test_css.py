from __future__ import annotations

import re
from pathlib import Path

import pytest
from django.conf import settings

from club.templatetags.marks import INK

CSS = Path(settings.BASE_DIR) / "static" / "css"
TOKENS = dict(re.findall(r"--(\w+): (#[0-9a-f]{6});", (CSS / "tokens.css").read_text()))


def luminance(colour: str) -> float:
    """Relative luminance of #rrggbb, as WCAG 2.2 defines it (w3.org/TR/WCAG22, "relative luminance")."""
    parts = [int(colour[first : first + 2], 16) / 255 for first in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio after WCAG 2.2, from 1 to 21."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def test_contrast_is_reckoned_as_wcag_does():
    # Black on white is 21 by definition; #767676 is the lightest grey that passes on white (from memory).
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)


# WCAG 2.2, success criterion 1.4.3: text 4.5.
@pytest.mark.parametrize("text", ["ink", "pencil", "oxide", "leaf"])
@pytest.mark.parametrize("ground", ["paper", "sheet"])
def test_text_stands_out_from_its_ground(text, ground):
    assert contrast(TOKENS[text], TOKENS[ground]) >= 4.5


def test_reversed_text_and_ink_on_wood_stand_out():
    assert contrast(TOKENS["sheet"], TOKENS["ink"]) >= 4.5
    assert contrast(TOKENS["ink"], TOKENS["wood"]) >= 4.5


# WCAG 2.2, success criterion 1.4.11: what isn't text 3.0.
@pytest.mark.parametrize("ground", ["paper", "sheet"])
def test_thin_rules_stand_out_from_their_ground(ground):
    assert contrast(TOKENS["rule"], TOKENS[ground]) >= 3.0


def test_the_ink_written_on_marks_is_the_ink_of_the_tokens():
    assert TOKENS["ink"] == INK


@pytest.mark.parametrize("sheet", sorted(CSS.glob("*.css")), ids=lambda sheet: sheet.name)
def test_a_style_sheet_names_no_colour_but_tokens_and_white(sheet):
    if sheet.name == "tokens.css":
        return
    named = set(re.findall(r"#[0-9a-fA-F]{3,8}\b", sheet.read_text()))

    assert named <= {"#fff"}


@pytest.mark.parametrize("sheet", sorted(CSS.glob("*.css")), ids=lambda sheet: sheet.name)
def test_every_file_a_style_sheet_asks_for_is_there(sheet):
    for address in re.findall(r'url\("([^"]+)"\)', sheet.read_text()):
        assert (CSS / address).resolve().is_file(), address


def test_nothing_is_rounded_but_discs_and_nothing_throws_a_shadow():
    for sheet in CSS.glob("*.css"):
        style = sheet.read_text()
        assert "box-shadow" not in style
        assert set(re.findall(r"border-radius: ([^;]+);", style)) <= {"0", "50%"}, sheet.name
