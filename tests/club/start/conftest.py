from __future__ import annotations

import os
import subprocess
import sys

import pytest

from club.start import debian, launch, own_python


class Became(Exception):  # noqa: N818
    """In place of os.execv, which doesn't come back."""


@pytest.fixture
def house(tmp_path, monkeypatch):
    """An empty house: nothing is made or installed, what would have been run is written down."""
    (tmp_path / "locked.txt").write_text("django==5.2.19\n")
    (tmp_path / "pyproject.toml").write_text(
        '[project]\ndependencies = ["Django~=5.2.0"]\n'
        '[project.optional-dependencies]\ntest = ["pytest~=9.2"]\n'
    )
    venv = tmp_path / ".venv"
    monkeypatch.setattr(own_python, "HOUSE", tmp_path)
    monkeypatch.setattr(own_python, "PYPROJECT", tmp_path / "pyproject.toml")
    monkeypatch.setattr(own_python, "LOCK", tmp_path / "locked.txt")
    monkeypatch.setattr(own_python, "VENV", venv)
    monkeypatch.setattr(own_python, "PYTHON", venv / "bin" / "python")
    monkeypatch.setattr(own_python, "STAMP", venv / "handwheel.json")
    monkeypatch.setattr(sys, "prefix", sys.base_prefix)
    monkeypatch.setattr(debian, "NEEDS", {"demo": (debian.VENV,), "test": (debian.VENV,)})
    return tmp_path


@pytest.fixture
def ran(house, monkeypatch):
    """The commands run; the one that makes .venv leaves a Python there."""
    commands = []

    def run(command, **_options):
        commands.append(command)
        if "venv" in command:
            (house / ".venv" / "bin").mkdir(parents=True, exist_ok=True)
            (house / ".venv" / "bin" / "python").touch()
        return subprocess.CompletedProcess(command, 0, stdout="", stderr="")

    monkeypatch.setattr(subprocess, "run", run)
    return commands


@pytest.fixture
def became(monkeypatch):
    """What the process would have become."""
    words = []

    def execv(_path, arguments):
        words.extend(arguments)
        raise Became

    monkeypatch.setattr(os, "execv", execv)
    return words


@pytest.fixture
def start(became):
    """start("demo", ...): what was typed after manage.py, up to where the process becomes another."""

    def launched(*words):
        became.clear()
        with pytest.raises(Became):
            launch.launch(list(words))

    return launched
