from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from club.start import debian, launch, own_python

HOUSE = own_python.HOUSE


class TestWhatDebianLacks:
    @pytest.fixture(autouse=True)
    def no_chromium(self, house, monkeypatch):
        lacking = debian.Need(("chromium",), lambda: False, "tests with a browser are skipped")
        monkeypatch.setattr(debian, "NEEDS", {"test": (debian.VENV, lacking)})

    def test_is_supplied_once_and_named_at_every_start(self, start, ran, monkeypatch, capsys):
        supplied: list[debian.Need] = []
        monkeypatch.setattr(debian, "supply", supplied.extend)

        start("test")
        start("test")

        assert [need.packages for need in supplied] == [("python3-venv",), ("chromium",)]
        assert capsys.readouterr().out.count("--no-install-recommends chromium\n") == 2


class TestAnyOtherCommand:
    def test_goes_on_inside_and_installs_nothing(self, house, start, ran, became):
        (house / ".venv" / "bin").mkdir(parents=True)
        (house / ".venv" / "bin" / "python").touch()

        start("migrate", "--plan")

        assert became[2:] == ["migrate", "--plan"]
        assert ran == []

    def test_without_a_folder_says_which_commands_make_it(self, house):
        with pytest.raises(SystemExit, match=r"There is no \.venv yet"):
            launch.launch(["migrate"])


class TestAnActiveEnvironment:
    @pytest.fixture(autouse=True)
    def active(self, house, monkeypatch):
        monkeypatch.setattr(sys, "prefix", "/somewhere/else")
        monkeypatch.chdir(house)

    def test_is_left_alone(self, start, ran, became):
        start("test", "tests/test_manage.py", "-k", "left")

        assert ran == []
        assert became == [sys.executable, "-m", "pytest", "tests/test_manage.py", "-k", "left"]

    def test_runs_the_suite_from_the_house(self, house, tmp_path_factory, start, monkeypatch):
        monkeypatch.chdir(tmp_path_factory.mktemp("elsewhere"))

        start("test")

        assert Path.cwd() == house

    def test_that_lacks_django_is_named(self, monkeypatch):
        monkeypatch.setattr("importlib.util.find_spec", lambda name: None)

        with pytest.raises(SystemExit, match="lacks django"):
            launch.launch(["demo"])

    def test_with_settings_that_make_no_sense_gets_the_sentence(self):
        environment = {**os.environ, "HANDWHEEL_DEBUG": "perhaps"}

        done = subprocess.run(
            [sys.executable, HOUSE / "manage.py", "check"], env=environment, capture_output=True, text=True
        )

        assert done.stderr == "Settings: HANDWHEEL_DEBUG is 'perhaps': write 1 or 0.\n"


class TestTheWholeSuite:
    @pytest.mark.parametrize(("cores", "workers"), [(2, "2"), (64, str(launch.MOST_WORKERS))])
    def test_runs_in_as_many_processes_as_pay(self, monkeypatch, cores, workers):
        monkeypatch.setattr(os, "cpu_count", lambda: cores)

        assert launch._workers([])[:2] == ["-n", workers]

    @pytest.mark.parametrize("argument", ["tests/test_manage.py", "--pdb", "-n", "--numprocesses=1"])
    def test_does_not_when_a_part_or_one_process_is_asked_for(self, monkeypatch, argument):
        monkeypatch.setattr(os, "cpu_count", lambda: 2)

        assert launch._workers(["-x", argument]) == []

    def test_does_not_on_one_core(self, monkeypatch):
        monkeypatch.setattr(os, "cpu_count", lambda: 1)

        assert launch._workers([]) == []
