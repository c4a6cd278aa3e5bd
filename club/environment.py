"""Typed readers for the environment: nonsense is refused loudly, at start."""

from __future__ import annotations

import os

from django.core.exceptions import ImproperlyConfigured

TRUE = {"1", "true", "yes", "on"}
FALSE = {"0", "false", "no", "off", ""}


def env_text(name: str, default: str) -> str:
    return os.environ.get(name, default).strip()


def env_bool(name: str, default: bool) -> bool:
    value = os.environ.get(name)
    if value is None:
        return default
    if value.strip().lower() in TRUE:
        return True
    if value.strip().lower() in FALSE:
        return False
    msg = f"{name} is {value!r}: write 1 or 0."
    raise ImproperlyConfigured(msg)


def env_list(name: str, default: str) -> list[str]:
    return [part.strip() for part in env_text(name, default).split(",") if part.strip()]


def env_int(name: str, default: int) -> int:
    value = env_text(name, str(default))
    if value.isascii() and value.isdecimal():
        return int(value)
    msg = f"{name} is {value!r}: write a whole number, as {default}."
    raise ImproperlyConfigured(msg)
