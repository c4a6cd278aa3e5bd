from __future__ import annotations

import builtins
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from django.conf import settings
from django.templatetags.static import static
from django.test import override_settings
from django.utils import translation

from club.base.printing import PANGO_PACKAGES, Paper, PrintingUnavailable, render_pdf
from club.templatetags.marks import SHAPES
from tests.paper import catalog, colours, figures_without_words, fonts, page_sizes, read_pdf, structure

pytestmark = pytest.mark.pdf
OURS = Path(__file__).parent / "templates"
TRUE_TEMPLATES: Any = settings.TEMPLATES[0]
WITH_OURS = [{**TRUE_TEMPLATES, "DIRS": [*TRUE_TEMPLATES["DIRS"], OURS]}]


@pytest.fixture(autouse=True)
def our_templates():
    with override_settings(TEMPLATES=WITH_OURS):
        yield


def sheet(paper: Paper = Paper.A4, **context: Any) -> bytes:
    return render_pdf("everything.html", {"kinds": list(SHAPES), **context}, paper=paper)


# ISO 216: A4 is 210 mm by 297 mm. ANSI/ASME Y14.1: size A ("Letter") is 8.5 in by 11 in.
@pytest.mark.parametrize(
    ("paper", "width", "height"), [(Paper.A4, 210, 297), (Paper.LETTER, 8.5 * 25.4, 11 * 25.4)]
)
def test_a_sheet_is_as_large_as_its_paper(paper, width, height):
    ((wide, high),) = page_sizes(sheet(paper))

    assert wide == pytest.approx(width, abs=0.1)
    assert high == pytest.approx(height, abs=0.1)


def test_a_sheet_is_tagged_and_says_its_title_and_language():
    pdf = sheet()

    root, metadata = catalog(pdf), read_pdf(pdf).metadata
    assert root["/Lang"] == "en"
    assert root["/MarkInfo"]["/Marked"].value is True
    assert root["/ViewerPreferences"]["/DisplayDocTitle"].value is True
    assert metadata is not None
    assert metadata.title == "Everything a card may hold"


# ISO 14289-1 (PDF/UA-1), clause 5: the identification pdfuaid:part stands in the XMP metadata.
def test_a_sheet_says_that_it_keeps_to_pdf_ua_1():
    metadata = catalog(sheet())["/Metadata"].get_object().get_data()

    assert b"pdfuaid" in metadata
    assert b"part>1<" in metadata or b'part="1"' in metadata


def test_the_language_of_a_sheet_is_the_one_in_use():
    with translation.override("de"):
        pdf = sheet()

    assert catalog(pdf)["/Lang"] == "de"


def test_every_picture_on_a_sheet_has_words():
    pdf = sheet()

    pictures = [element for element in structure(pdf) if element.get("/S") == "/Figure"]
    assert len(pictures) == len(SHAPES) + 3
    assert figures_without_words(pdf) == 0


def test_a_sheet_is_set_in_our_own_embedded_fonts():
    names = fonts(sheet())

    assert names
    assert all("Atkinson-Hyperlegible-Next" in name.replace(" ", "-") for name in names), names
    assert all(name[6] == "+" for name in names), "embedded as a subset, which carries a tag of six letters"


def test_a_sheet_reads_in_grey_because_it_is_ink_on_white():
    assert colours(sheet()) <= {"#14253b", "#ffffff", "#000000"}


def test_equal_input_gives_equal_bytes():
    assert sheet() == sheet()


def test_a_static_picture_is_printed():
    with_picture = sheet(picture=static("pictures/handwheel.svg"))

    assert len(with_picture) > len(sheet())


@pytest.mark.parametrize(
    "address",
    [
        "http://turners.example/static/css/print.css",
        "https://turners.example/x.png",
        "file:///etc/hostname",
        "data:image/png;base64,iVBORw0KGgo=",
        "/media/x.png",
        "/static/css/../../manage.py",
        "/static/css/%2e%2e/%2e%2e/manage.py",
        "/static/css/print.css?x=1",
        "/static/not-there.svg",
        "ftp://turners.example/x.png",
    ],
)
def test_anything_but_our_static_files_is_refused(address):
    from weasyprint.urls import FatalURLFetchingError  # type: ignore[import-untyped]

    with pytest.raises(FatalURLFetchingError, match="Error fetching"):
        sheet(picture=address)


def test_without_pango_printing_says_which_packages_are_missing(monkeypatch):
    monkeypatch.delitem(sys.modules, "club.base.typesetting", raising=False)
    true_import = builtins.__import__

    def without_pango(name: str, *args: Any, **kwargs: Any) -> Any:
        if name == "weasyprint":
            raise OSError("cannot load library 'libpango-1.0-0'")
        return true_import(name, *args, **kwargs)

    monkeypatch.setattr(builtins, "__import__", without_pango)

    with pytest.raises(PrintingUnavailable, match=re.escape(PANGO_PACKAGES)):
        sheet()


def test_printing_loads_no_typesetting_before_something_is_printed():
    code = "import sys, club.base.printing; print('weasyprint' in sys.modules)"

    told = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, cwd=settings.BASE_DIR, check=True
    )

    assert told.stdout.strip() == "False"
