"""What tests need to read paper: a fixture that hears typesetting complain, and the facts of a PDF."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from typing import Any

import pytest
from pypdf import PdfReader

MM_A_POINT = 25.4 / 72


@pytest.fixture(autouse=True)
def typesetting_is_quiet(caplog: pytest.LogCaptureFixture) -> Iterator[None]:
    """Bad style and missing pictures are logged, not raised; on paper any such word is a failure."""
    yield
    told = [
        record.getMessage()
        for phase in ("setup", "call")
        for record in caplog.get_records(phase)
        if record.name.startswith(("weasyprint", "fontTools")) and record.levelname not in {"DEBUG", "INFO"}
    ]
    assert told == []


def read_pdf(pdf: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(pdf))


def catalog(pdf: bytes) -> Any:
    """The root of the document."""
    return read_pdf(pdf).trailer["/Root"]


def page_sizes(pdf: bytes) -> list[tuple[float, float]]:
    """Width and height of each page, in millimetres."""
    boxes = [page.mediabox for page in read_pdf(pdf).pages]
    return [(float(box.width) * MM_A_POINT, float(box.height) * MM_A_POINT) for box in boxes]


def structure(pdf: bytes) -> Iterator[dict[str, Any]]:
    """Every element of the structure tree."""
    waiting = [catalog(pdf)["/StructTreeRoot"]]
    while waiting:
        element = waiting.pop().get_object()
        if isinstance(element, list):
            waiting.extend(element)
        elif isinstance(element, dict):
            yield element
            if "/K" in element:
                waiting.append(element["/K"])


def figures_without_words(pdf: bytes) -> int:
    """How many pictures a reader of the PDF would pass over in silence."""
    return sum(1 for element in structure(pdf) if element.get("/S") == "/Figure" and not element.get("/Alt"))


def fonts(pdf: bytes) -> set[str]:
    """Names of the fonts on all pages; a font that isn't embedded has a star in front."""
    found = set()
    for page in read_pdf(pdf).pages:
        for font in page["/Resources"]["/Font"].values():  # type: ignore[index]
            whole = font.get_object()
            inner = whole["/DescendantFonts"][0].get_object() if "/DescendantFonts" in whole else whole
            descriptor = inner["/FontDescriptor"].get_object()
            embedded = any(key.startswith("/FontFile") for key in descriptor)
            found.add(("" if embedded else "*") + str(whole["/BaseFont"]).removeprefix("/"))
    return found


def colours(pdf: bytes) -> set[str]:
    """Every colour that is filled or drawn with, as #rrggbb."""
    found = set()
    for page in read_pdf(pdf).pages:
        for data in _streams(page):
            for red, green, blue in re.findall(rb"([\d.]+) ([\d.]+) ([\d.]+) (?:rg|RG|scn|SCN)\b", data):
                found.add("#" + "".join(f"{round(float(part) * 255):02x}" for part in (red, green, blue)))
    return found


def _streams(holder: Any) -> Iterator[bytes]:
    """The drawing instructions of a page and of the forms it places."""
    contents = holder.get_contents() if hasattr(holder, "get_contents") else holder
    yield contents.get_data()
    for kind in ("/XObject", "/Pattern"):
        for inner in holder.get("/Resources", {}).get(kind, {}).values():
            placed = inner.get_object()
            if hasattr(placed, "get_data") and placed.get("/Subtype") != "/Image":
                yield from _streams(placed)
