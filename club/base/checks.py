"""What is set wrongly for this installation, found at start and named with its cure."""

from __future__ import annotations

import zoneinfo
from typing import Any
from urllib.parse import urlsplit

from django.conf import settings
from django.core.checks import CheckMessage, Error

from club.base.quantities.money import DECIMALS

# As Django's own check for deployment has it (security.W009).
SHORTEST_KEY = 50
FEWEST_CHARACTERS = 5


def check_installation(**_options: Any) -> list[CheckMessage]:
    """Every knob whose value makes no sense; an empty list when all do."""
    found = (
        _address(settings.ADDRESS),
        _time_zone(settings.TIME_ZONE),
        _currency(settings.CURRENCY),
        _secret_key(),
    )
    return [problem for problem in found if problem]


def _address(address: str) -> Error | None:
    """An address is a scheme, a host and perhaps a port: QR codes and links begin with it."""
    if not address or _is_address(address):
        return None
    return Error(
        f"HANDWHEEL_ADDRESS is {address!r}, which no browser can open.",
        hint="Write it as in https://turners.example or http://192.0.2.7:8000, with nothing after the host.",
        id="club.E001",
    )


def _is_address(address: str) -> bool:
    try:
        parts = urlsplit(address)
        port = parts.port
    except ValueError:
        return False
    host = parts.hostname or ""
    bare = f"{parts.scheme}://{parts.netloc}"
    return (
        parts.scheme in {"http", "https"}
        and address == bare
        and bool(host)
        and not set(host) & set(" \t<>\"'\\")
        and "@" not in parts.netloc
        and port != 0
    )


def _time_zone(name: str) -> Error | None:
    try:
        zoneinfo.ZoneInfo(name)
    except (zoneinfo.ZoneInfoNotFoundError, ValueError, OSError):
        return Error(
            f"HANDWHEEL_TIME_ZONE is {name!r}, which is no time zone.",
            hint="Write a name of the tz database, as in Europe/London or America/Chicago.",
            id="club.E002",
        )
    return None


def _currency(code: str) -> Error | None:
    if code in DECIMALS:
        return None
    return Error(
        f"HANDWHEEL_CURRENCY is {code!r}, which is no currency.",
        hint="Write its three letters as in ISO 4217: EUR, GBP, USD.",
        id="club.E003",
    )


def _secret_key() -> Error | None:
    """The key itself is never told."""
    key = settings.SECRET_KEY
    if len(key) >= SHORTEST_KEY and len(set(key)) >= FEWEST_CHARACTERS:
        return None
    return Error(
        f"HANDWHEEL_SECRET_KEY is too easy to guess: it needs {SHORTEST_KEY} characters drawn by chance.",
        hint="Leave it out, and a good one is made and kept beside the data.",
        id="club.E004",
    )
