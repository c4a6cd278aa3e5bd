"""The folder .venv: made with the Python that runs this, filled with what pyproject.toml lists.

The stamp in it is written last. A .venv without one was interrupted, and is made anew.
"""

from __future__ import annotations

import fcntl
import hashlib
import json
import os
import subprocess
import sys
import tomllib
from pathlib import Path

HOUSE = Path(__file__).resolve().parents[2]
PYPROJECT = HOUSE / "pyproject.toml"
LOCK = HOUSE / ".ci" / "locked.txt"
# A second Python keeps its things in a folder beside the first one's.
VENV = HOUSE / os.environ.get("HANDWHEEL_VENV", ".venv")
PYTHON = VENV / "bin" / "python"
STAMP = VENV / "handwheel.json"

# Which lists of pyproject.toml each command needs, beside [project].dependencies.
EXTRAS = {"demo": (), "test": ("test",)}
VERSION = "{}.{}".format(*sys.version_info[:2])


def requirements_for(command: str) -> list[str]:
    """What pyproject.toml lists for this command, as pip takes it."""
    project = tomllib.loads(PYPROJECT.read_text(encoding="utf-8"))["project"]
    lists = [project["dependencies"], *(project["optional-dependencies"][extra] for extra in EXTRAS[command])]
    return [requirement for one in lists for requirement in one]


def is_ready(command: str) -> bool:
    """Whether .venv holds what this command needs, at the versions of the lock, for this Python."""
    return PYTHON.exists() and _stamp().get(command) == _fingerprint(command)


def make_ready(command: str) -> None:
    """Make .venv if need be and install; stops the process with a sentence when that fails."""
    with PYPROJECT.open() as only_one_at_a_time:
        fcntl.flock(only_one_at_a_time, fcntl.LOCK_EX)
        if is_ready(command):
            return
        known = _stamp()
        if not PYTHON.exists() or known.get("python") != VERSION:
            known = {}
            _make()
        STAMP.unlink(missing_ok=True)
        _install(requirements_for(command))
        _write_stamp(command, known)


def _fingerprint(command: str) -> str:
    facts = [VERSION, LOCK.read_text(encoding="utf-8"), *requirements_for(command)]
    return hashlib.sha256("\n".join(facts).encode()).hexdigest()


def _stamp() -> dict[str, str]:
    try:
        stamp = json.loads(STAMP.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return stamp if isinstance(stamp, dict) else {}


def _write_stamp(command: str, known: dict[str, str]) -> None:
    """Whoever has what `test` needs has what `demo` needs."""
    covered = {other for other, extras in EXTRAS.items() if set(extras) <= set(EXTRAS[command])}
    stamp = known | {"python": VERSION} | {other: _fingerprint(other) for other in covered}
    STAMP.write_text(json.dumps(stamp, indent=1), encoding="utf-8")


def _make() -> None:
    print(f"Making {VENV.name} with Python {VERSION}.", flush=True)
    _run([sys.executable, "-m", "venv", "--clear", str(VENV)], "the folder could not be made")


def _install(requirements: list[str]) -> None:
    print(f"Installing what pyproject.toml lists into {VENV.name}: once, about a minute.", flush=True)
    pip = [str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--no-input"]
    _run([*pip, "-c", str(LOCK), *requirements], "not everything could be installed")


def _run(command: list[str], failure: str) -> None:
    done = subprocess.run(command, check=False)
    if done.returncode:
        sys.exit(f"{failure.capitalize()}, for the reason above. Once it is mended, type the same again.")
