"""Debian's packages beneath the Python ones: installed where we may, else named in one command to type."""

from __future__ import annotations

import ctypes
import importlib.util
import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterable
from dataclasses import dataclass

APT = [
    *("apt-get", "-qq", "-y", "--no-install-recommends"),
    *("-o", "DPkg::Lock::Timeout=120", "-o", "Dpkg::Use-Pty=0"),
]


@dataclass(frozen=True)
class Need:
    """Packages that are there or not, and what one does without meanwhile."""

    packages: tuple[str, ...]
    is_met: Callable[[], bool]
    without: str


def _can_make_venv() -> bool:
    importlib.invalidate_caches()
    return importlib.util.find_spec("ensurepip") is not None


def _loads(*libraries: str) -> bool:
    """Whether these can be loaded; elsewhere than on Linux they have other names, and we don't ask."""
    try:
        for library in libraries if sys.platform == "linux" else ():
            ctypes.CDLL(library)
    except OSError:
        return False
    return True


def _can_set_type() -> bool:
    return _loads("libpango-1.0.so.0", "libpangoft2-1.0.so.0", "libharfbuzz-subset.so.0")


def _has(program: str) -> Callable[[], bool]:
    return lambda: shutil.which(program) is not None


def chromium() -> str | None:
    """The path of the browser that the tests drive."""
    return os.environ.get("CHROMIUM") or shutil.which("chromium")


def _can_drive_a_browser() -> bool:
    """The program that drives it comes with Playwright, but not what that is linked to."""
    return chromium() is not None and _loads("libatomic.so.1")


def _can_check_html() -> bool:
    """The checker itself is no package of Debian's; whoever has none needs no Java."""
    return "VNU_JAR" not in os.environ or shutil.which("java") is not None


VENV = Need(("python3-venv",), _can_make_venv, "nothing can start")
PAPER = Need(
    ("libpango-1.0-0", "libpangoft2-1.0-0", "libharfbuzz-subset0"),
    _can_set_type,
    "cards come as pages, not on paper",
)
BROWSER = Need(("chromium", "libatomic1"), _can_drive_a_browser, "tests with a browser are skipped")
READING = Need(("poppler-utils",), _has("pdftotext"), "tests that read paper are skipped")
JAVA = Need(("default-jre-headless",), _can_check_html, "the check of the HTML is skipped")

# What each command needs, first what it can't do without.
NEEDS = {"demo": (VENV, PAPER), "test": (VENV, PAPER, BROWSER, READING, JAVA)}


def supply(needs: Iterable[Need]) -> None:
    """Install what is missing if this is root on a Debian; HANDWHEEL_NO_APT=1 turns that off."""
    missing = [need for need in needs if not need.is_met()]
    if missing and _may_install():
        names = _names(missing)
        print(f"Installing from Debian: {names} (HANDWHEEL_NO_APT=1 turns this off).", flush=True)
        _apt("update")
        for need in missing:
            _apt("install", *need.packages)


def name_missing(needs: Iterable[Need]) -> None:
    """One line for all that is still missing: what one does without, and the one command to type."""
    missing = [need for need in needs if not need.is_met()]
    if missing:
        without = ", ".join(need.without for need in missing)
        names = _names(missing)
        command = f"apt-get install --no-install-recommends {names}"
        print(f"For now {without}. To change that, type as root: {command}", flush=True)


def _may_install() -> bool:
    wanted = os.environ.get("HANDWHEEL_NO_APT", "") in {"", "0"}
    return wanted and os.geteuid() == 0 and shutil.which("apt-get") is not None


def _names(needs: Iterable[Need]) -> str:
    return " ".join(package for need in needs for package in need.packages)


def _apt(*words: str) -> None:
    """Quiet unless it fails; a failure stops nothing, since the caller asks again what is there."""
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    done = subprocess.run(
        [*APT, *words], env=environment, stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False
    )
    if done.returncode:
        print("apt-get", *words, "failed:", done.stderr.strip(), flush=True)
