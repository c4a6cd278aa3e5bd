from __future__ import annotations

import ast
import re
import subprocess
import sys
import time
import tomllib
from pathlib import Path

import pytest

import manage

HOUSE = Path(__file__).parent.parent
# The Python that .venv was made with: the system's, outside any environment.
SYSTEM_PYTHON = sys._base_executable  # type: ignore[attr-defined]


class TestAnOldPython:
    def test_gets_one_sentence(self, monkeypatch):
        monkeypatch.setattr(sys, "version_info", (3, 9, 2))

        with pytest.raises(SystemExit) as stopped:
            manage.main()

        assert stopped.value.code == "Handwheel needs Python 3.11 or newer; this one is 3.9."

    def test_can_read_manage_py(self):
        source = (HOUSE / "manage.py").read_text()

        tree = ast.parse(source, feature_version=(3, 6))

        imported = [node for node in tree.body if isinstance(node, ast.Import | ast.ImportFrom)]
        assert {alias.name for node in imported for alias in node.names} == {"os", "sys"}


def test_the_second_start_is_inside_in_under_two_seconds(tmp_path, monkeypatch):
    copied = ["manage.py", "pyproject.toml", ".ci/locked.txt", "club/__init__.py"]
    copied += [str(path.relative_to(HOUSE)) for path in (HOUSE / "club" / "start").glob("*.py")]
    for name in copied:
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text((HOUSE / name).read_text())
    monkeypatch.delenv("HANDWHEEL_VENV", raising=False)
    inside = tmp_path / ".venv" / "bin" / "python"
    inside.parent.mkdir(parents=True)
    inside.write_text('#!/bin/sh\necho "inside: $*"\n')
    inside.chmod(0o755)
    stamping = "from club.start import own_python; own_python._write_stamp('demo', {})"
    subprocess.run([SYSTEM_PYTHON, "-c", stamping], cwd=tmp_path, check=True)

    started = time.perf_counter()
    done = subprocess.run(
        [SYSTEM_PYTHON, tmp_path / "manage.py", "demo"], cwd="/", capture_output=True, text=True
    )
    took = time.perf_counter() - started

    assert f"inside: {tmp_path / 'manage.py'} demo\n" in done.stdout
    assert took < 2


class TestTheLock:
    def test_names_no_host(self):
        lock = (HOUSE / ".ci" / "locked.txt").read_text()

        assert re.findall(r"://|--index|--find-links|^-", lock, flags=re.MULTILINE) == []

    def test_holds_a_version_of_everything_listed(self):
        project = tomllib.loads((HOUSE / "pyproject.toml").read_text())["project"]
        lists = [project["dependencies"], *project["optional-dependencies"].values()]
        listed = {_name(requirement) for one in lists for requirement in one}

        locked = {
            _name(line) for line in (HOUSE / ".ci" / "locked.txt").read_text().splitlines() if "==" in line
        }

        assert listed - locked == set()


def _name(requirement: str) -> str:
    """The project's name as in PEP 503."""
    return re.sub(r"[-_.]+", "-", re.match(r"[\w.-]+", requirement)[0]).lower()  # type: ignore[index]


def test_nothing_names_this_machine_or_a_registry():
    """What is committed at the top and under .ci holds for every machine."""
    texts = [
        path.read_text()
        for path in [*(HOUSE / ".ci").glob("[lr]*"), *Path(HOUSE).glob("*.toml")]
        if path.is_file()
    ]

    assert [text for text in texts if re.search(r"/work/|/root/|index-url =|\.org/simple", text)] == []
