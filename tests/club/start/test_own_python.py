from __future__ import annotations

import json
import subprocess

import pytest

from club.start import launch, own_python


def interrupted(requirements):
    raise KeyboardInterrupt


class TestSettingUp:
    @pytest.mark.parametrize(
        ("command", "requirements"), [("demo", ["Django~=5.2.0"]), ("test", ["Django~=5.2.0", "pytest~=9.2"])]
    )
    def test_installs_what_pyproject_lists_at_the_versions_of_the_lock(
        self, house, start, ran, became, command, requirements
    ):
        start(command)

        made, installed = ran
        assert made[1:] == ["-m", "venv", "--clear", str(house / ".venv")]
        assert installed[0] == str(house / ".venv" / "bin" / "python")
        assert installed[installed.index("-c") + 1 :] == [str(house / "locked.txt"), *requirements]

    def test_goes_on_inside_with_the_words_typed(self, house, start, ran, became):
        start("demo", "127.0.0.1:8765")

        python, manage_py = house / ".venv" / "bin" / "python", house / "manage.py"
        assert became == [str(python), str(manage_py), "demo", "127.0.0.1:8765"]

    def test_is_done_once(self, start, ran, became):
        start("demo")
        ran.clear()

        start("demo")

        assert ran == []

    def test_for_the_tests_serves_the_demonstration_too(self, start, ran, became):
        start("test")
        ran.clear()

        start("demo")

        assert ran == []

    def test_for_the_demonstration_does_not_serve_the_tests(self, start, ran, became):
        start("demo")
        ran.clear()

        start("test")

        assert [command[-1] for command in ran] == ["pytest~=9.2"]

    @pytest.mark.parametrize("changed", ["locked.txt", "pyproject.toml"])
    def test_is_done_again_when_a_list_changes(self, house, start, ran, became, changed):
        start("demo")
        ran.clear()
        path = house / changed
        path.write_text(path.read_text().replace("5.2", "5.3"))

        start("demo")

        assert [command[1:3] for command in ran] == [["-m", "pip"]]

    def test_with_another_python_makes_the_folder_anew(self, start, ran, became, monkeypatch):
        start("demo")
        ran.clear()
        monkeypatch.setattr(own_python, "VERSION", "3.99")

        start("demo")

        assert [command[1:3] for command in ran] == [["-m", "venv"], ["-m", "pip"]]

    def test_makes_the_folder_anew_when_its_python_is_gone(self, house, start, ran, became):
        start("demo")
        ran.clear()
        (house / ".venv" / "bin" / "python").unlink()

        start("demo")

        assert [command[1:3] for command in ran] == [["-m", "venv"], ["-m", "pip"]]

    def test_that_was_interrupted_is_done_over(self, start, ran, monkeypatch):
        with monkeypatch.context() as patched:
            patched.setattr(own_python, "_install", interrupted)
            with pytest.raises(KeyboardInterrupt):
                launch.launch(["demo"])
        ran.clear()

        start("demo")

        assert [command[1:3] for command in ran] == [["-m", "venv"], ["-m", "pip"]]

    def test_that_was_interrupted_while_mending_leaves_no_stamp(self, house, start, ran, became, monkeypatch):
        start("demo")
        (house / "locked.txt").write_text("django==5.2.20\n")
        monkeypatch.setattr(own_python, "_install", interrupted)

        with pytest.raises(KeyboardInterrupt):
            launch.launch(["demo"])

        assert not (house / ".venv" / "handwheel.json").exists()

    def test_that_fails_says_so_in_one_sentence(self, house, start, ran, became, monkeypatch):
        monkeypatch.setattr(subprocess, "run", lambda command, **_: subprocess.CompletedProcess(command, 1))

        with pytest.raises(SystemExit, match="for the reason above"):
            launch.launch(["demo"])

        assert became == []

    def test_survives_a_stamp_that_cannot_be_read(self, house, start, ran, became):
        start("demo")
        (house / ".venv" / "handwheel.json").write_text("[")

        start("demo")

        assert json.loads((house / ".venv" / "handwheel.json").read_text())["python"] == own_python.VERSION
