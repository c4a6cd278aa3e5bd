"""Paper: a template becomes the bytes of a tagged PDF (ISO 14289-1, PDF/UA-1)."""

from __future__ import annotations

import logging
from enum import StrEnum
from typing import Any

from django.conf import settings
from django.template.loader import render_to_string

logger = logging.getLogger(__name__)

PANGO_PACKAGES = "libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"


class Paper(StrEnum):
    """A sheet that a club's printer may hold; ISO 216 A4, or ANSI Letter (8 1/2 in by 11 in)."""

    A4 = "a4"
    LETTER = "letter"


class PrintingUnavailable(Exception):  # noqa: N818
    """The libraries that set type are missing on this machine. The message names the cure."""

    def __init__(self) -> None:
        msg = f"Printing needs three Debian packages that are missing here: {PANGO_PACKAGES}"
        super().__init__(msg)


def render_pdf(template: str, context: dict[str, Any], *, paper: Paper) -> bytes:
    """Bytes of the PDF that this template gives on this paper.

    The template extends print/base.html. Equal input gives equal bytes: no clock goes in.

    Raises:
        PrintingUnavailable: Pango is missing on this machine.
    """
    html = render_to_string(template, {"club_name": settings.CLUB_NAME, **context, "paper": paper.value})
    try:
        from club.base.typesetting import typeset
    except OSError as error:
        logger.warning("No paper: %s", error)
        raise PrintingUnavailable from error
    return typeset(html)
