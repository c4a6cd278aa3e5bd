"""From the system's Python into .venv, and from there to pytest or to a command of the house.

This package runs before anything is installed: it imports nothing but the standard library,
save in the one function that hands over to Django.
"""

from __future__ import annotations

import importlib.util
import os
import sys
from typing import NoReturn

from club.start import debian, own_python

# More processes than this cost more to start than they save.
MOST_WORKERS = 4
# A file's tests stay together, since some of them share what one look at every page found; in the order of
# the folders, so that the browser's long ones come first and not last.
BY_FILE = ("--dist", "loadfile", "--no-loadscope-reorder")
# With one of these pytest must stay in one process.
ALONE = {"--pdb", "--trace", "-n", "--numprocesses", "--collect-only", "--co", "--fixtures", "--markers"}


def launch(words: list[str]) -> None:
    """Do what was typed after manage.py; from a Python outside any venv this goes on inside .venv."""
    if sys.prefix != sys.base_prefix:
        _run(words)
        return
    command = words[0] if words else ""
    if command in own_python.EXTRAS:
        _set_up(command)
    elif not own_python.PYTHON.exists():
        sys.exit(
            f"There is no {own_python.VENV.name} yet. python3 manage.py demo makes it, and so does test."
        )
    _become([str(own_python.PYTHON), str(own_python.HOUSE / "manage.py"), *words])


def _set_up(command: str) -> None:
    needs = debian.NEEDS[command]
    if not own_python.is_ready(command):
        debian.supply(needs)
        if not debian.VENV.is_met():
            debian.name_missing(needs)
            sys.exit(1)
        own_python.make_ready(command)
    # Whoever has .venv needs nothing more to make it.
    debian.name_missing(needs[1:])


def _run(words: list[str]) -> None:
    command = words[0] if words else ""
    needed = "pytest" if command == "test" else "django"
    if importlib.util.find_spec(needed) is None:
        sys.exit(f"This Python environment lacks {needed}. Leave it (deactivate) and type the same again.")
    if command == "test":
        os.chdir(own_python.HOUSE)
        _become([sys.executable, "-m", "pytest", *_workers(words[1:]), *words[1:]])
    _run_django(words)


def _workers(arguments: list[str]) -> list[str]:
    """Several processes for the whole suite; one for a part of it, which is done before they have started."""
    is_part = any(argument.startswith("tests") or argument.split("=")[0] in ALONE for argument in arguments)
    workers = min(os.cpu_count() or 1, MOST_WORKERS)
    return [] if is_part or workers == 1 else ["-n", str(workers), *BY_FILE]


def _run_django(words: list[str]) -> None:
    from django.conf import settings
    from django.core.exceptions import ImproperlyConfigured
    from django.core.management import execute_from_command_line

    try:
        settings.INSTALLED_APPS  # noqa: B018  # reads the settings, which refuse nonsense here
    except (ImproperlyConfigured, ValueError) as error:
        sys.exit(f"Settings: {error}")
    execute_from_command_line(["manage.py", *words])


def _become(words: list[str]) -> NoReturn:
    sys.stdout.flush()
    os.execv(words[0], words)
