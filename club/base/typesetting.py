"""WeasyPrint, kept in: it sees one page of HTML and the files under static, and nothing else.

Import this module only where something is printed: without Pango the import itself raises OSError.
"""

from __future__ import annotations

from pathlib import Path
from urllib.parse import unquote, urlsplit

from django.conf import settings
from django.contrib.staticfiles import finders
from weasyprint import CSS, HTML  # type: ignore[import-untyped]
from weasyprint.urls import URLFetcher, URLFetcherResponse  # type: ignore[import-untyped]

# No such host can exist (RFC 2606), so a reference that slips through leads nowhere.
BASE = "http://paper.invalid/"
# Where a document holds several parts on pages of one name, each part counts its sheets from 1. The rule
# stands here because checkers of style sheets don't know page groups of CSS paged media yet.
PARTS = "".join(
    f"@page :nth(1 of {name}) {{ counter-reset: page 1 }}" for name in ("a4-handout", "letter-handout")
)
TYPES = {".css": "text/css", ".woff2": "font/woff2", ".svg": "image/svg+xml"}


class RefusedAddressError(Exception):
    """Paper asked for something that isn't one of our static files."""


class StaticFilesOnly(URLFetcher):  # type: ignore[misc]
    """Serves our static files and refuses every other address: network, disk, data inside the page."""

    def __init__(self) -> None:
        super().__init__(fail_on_errors=True)

    def fetch(self, url: str, headers: dict[str, str] | None = None) -> URLFetcherResponse:
        path = static_path(url)
        kind = TYPES.get(path.suffix, "application/octet-stream")
        return URLFetcherResponse(url, path.read_bytes(), {"Content-Type": kind})


def static_path(url: str) -> Path:
    """The file behind an address under STATIC_URL. Raises RefusedAddressError for any other address."""
    prefix = BASE.rstrip("/") + settings.STATIC_URL
    parts = urlsplit(url)
    if not url.startswith(prefix) or parts.query:
        raise RefusedAddressError(url)
    found = finders.find(unquote(parts.path.removeprefix(settings.STATIC_URL)))
    if not isinstance(found, str):
        raise RefusedAddressError(url)
    return Path(found)


def typeset(html: str) -> bytes:
    """The tagged PDF of one page of HTML."""
    document = HTML(string=html, base_url=BASE, url_fetcher=StaticFilesOnly())
    pdf: bytes = document.write_pdf(pdf_variant="pdf/ua-1", stylesheets=[CSS(string=PARTS)])
    return pdf
