from __future__ import annotations

import os
import subprocess
import sys

import pytest

from club.start import debian, launch


class TestDebianPackages:
    @pytest.fixture
    def needs(self):
        missing = debian.Need(("chromium",), lambda: False, "tests with a browser are skipped")
        there = debian.Need(("poppler-utils",), lambda: True, "nothing")
        return [missing, there]

    @pytest.fixture
    def root(self, monkeypatch):
        monkeypatch.setattr(os, "geteuid", lambda: 0)
        monkeypatch.setattr("shutil.which", lambda program: f"/usr/bin/{program}")
        monkeypatch.delenv("HANDWHEEL_NO_APT", raising=False)

    def test_that_are_missing_are_installed_for_root_after_an_update(self, needs, root, ran, capsys):
        debian.supply(needs)

        assert [command[len(debian.APT) :] for command in ran] == [["update"], ["install", "chromium"]]
        assert "--no-install-recommends" in ran[1]
        assert (
            capsys.readouterr().out
            == "Installing from Debian: chromium (HANDWHEEL_NO_APT=1 turns this off).\n"
        )

    def test_are_not_installed_when_that_is_turned_off(self, needs, root, ran, monkeypatch):
        monkeypatch.setenv("HANDWHEEL_NO_APT", "1")

        debian.supply(needs)

        assert ran == []

    def test_are_not_installed_for_anybody_but_root(self, needs, root, ran, monkeypatch):
        monkeypatch.setattr(os, "geteuid", lambda: 1000)

        debian.supply(needs)

        assert ran == []

    def test_that_stay_missing_are_named_in_one_command(self, needs, capsys):
        debian.name_missing(needs)

        assert capsys.readouterr().out == (
            "For now tests with a browser are skipped. To change that, type as root: "
            "apt-get install --no-install-recommends chromium\n"
        )

    def test_that_fail_to_install_stop_nothing(self, needs, root, house, monkeypatch, capsys):
        failed = subprocess.CompletedProcess([], 100, stdout="", stderr="no network")
        monkeypatch.setattr(subprocess, "run", lambda command, **_: failed)

        debian.supply(needs)

        assert "apt-get install chromium failed: no network" in capsys.readouterr().out

    def test_without_a_way_to_make_the_folder_nothing_starts(self, house, ran, became, monkeypatch, capsys):
        no_venv = debian.Need(("python3-venv",), lambda: False, "nothing can start")
        monkeypatch.setattr(debian, "VENV", no_venv)
        monkeypatch.setattr(debian, "NEEDS", {"demo": (no_venv,)})
        monkeypatch.setenv("HANDWHEEL_NO_APT", "1")

        with pytest.raises(SystemExit):
            launch.launch(["demo"])

        assert "apt-get install --no-install-recommends python3-venv" in capsys.readouterr().out
        assert ran == []

    def test_for_a_browser_include_what_drives_it(self, monkeypatch):
        monkeypatch.setenv("CHROMIUM", "/usr/bin/chromium")
        monkeypatch.setattr("ctypes.CDLL", no_such_library)

        assert not debian.BROWSER.is_met()

    def test_of_a_library_are_not_asked_for_elsewhere_than_on_linux(self, monkeypatch):
        monkeypatch.setattr(sys, "platform", "darwin")
        monkeypatch.setattr("ctypes.CDLL", no_such_library)

        assert debian.PAPER.is_met()


def no_such_library(name):
    raise OSError(name)
