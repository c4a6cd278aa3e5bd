"""The tree is as DEVELOPERS.md says, and the contracts in pyproject.toml keep it so."""

from __future__ import annotations

import importlib
import inspect
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from django.conf import settings
from django.db.models import Model

import club.models
import projects.models

HOUSE = settings.BASE_DIR
PACKAGES = ("club", "projects", "safety")
TOP = {
    *("README.md", "DEVELOPERS.md", "manage.py", "pyproject.toml"),
    *("club", "projects", "safety", "templates", "static", "tests"),
}
CONTRACTS = {
    contract["id"]: contract
    for contract in tomllib.loads((HOUSE / "pyproject.toml").read_text())["tool"]["importlinter"]["contracts"]
}
# Where an import may not stand, and the contract that says so.
BREACHES = [
    ("downwards", "safety/topics/lathe_card.py", "import club.home.views"),
    ("downwards", "club/lathes/access.py", "import safety.topics"),
    ("listed", "club/base/roles.py", "from club.people import names"),
    ("listed", "club/attic/__init__.py", ""),
    ("downwards", "projects/library/access.py", "import club.lathes.access"),
    ("projects", "projects/geometry/blank.py", "import projects.library.domain.words"),
    ("projects", "projects/library/domain/recipe.py", "import projects.kit.packs"),
    ("projects", "projects/attic/__init__.py", ""),
    ("inside", "club/lathes/models/lathe.py", "import club.lathes.forms"),
    ("inside", "club/people/forms.py", "import club.people.views"),
    ("downwards", "safety/topics/lathe_card.py", "import club.classes.domain.places"),
    ("pure", "club/classes/domain/queue.py", "import time"),
    ("pure", "club/lathes/domain/lathe_row.py", "import django.utils.timezone"),
    ("pure", "club/base/quantities/number.py", "import time"),
    ("pure", "club/base/drawing/hatch.py", "import random"),
    ("pure", "projects/geometry/blank.py", "import os"),
    ("pure", "projects/kit/packs.py", "import projects.library.models"),
    ("pure", "projects/kit/packs.py", "import projects.kit.sentences.findings"),
    ("pure", "projects/library/domain/recipe.py", "import django.utils.timezone"),
    ("pure", "club/base/quantities/number.py", "import club.base.models"),
    ("first", "club/start/debian.py", "import club.base.roles"),
    ("first", "club/start/own_python.py", "import django"),
]


def rooms() -> set[str]:
    """Every folder of a package that holds Python, Django's own folders apart."""
    folders = {path.parent for package in PACKAGES for path in (HOUSE / package).glob("*/__init__.py")}
    return {module_of(folder) for folder in folders} - {
        *("club.management", "club.migrations", "club.start", "club.templatetags", "projects.migrations")
    }


def module_of(path: Path) -> str:
    return ".".join(path.relative_to(HOUSE).with_suffix("").parts).removesuffix(".__init__")


# Pure through and through, though no room's domain.
PURE = {"club.base.drawing", "club.base.quantities", "projects.geometry", "projects.kit"}


def pure_packages() -> set[str]:
    """Of the kit, which has sentences beside its computing, each module by itself."""
    kit = {module_of(path) for path in (HOUSE / "projects" / "kit").glob("*.py") if path.stem != "__init__"}
    domains = {module_of(path) for package in PACKAGES for path in (HOUSE / package).glob("*/domain")}
    return (PURE - {"projects.kit"}) | kit | domains


def pure_files() -> set[Path]:
    places = [HOUSE / name.replace(".", "/") for name in pure_packages()]
    return {path for place in places for path in (*place.rglob("*.py"), place.with_suffix(".py"))}


def lint_imports(house: Path, *options: str) -> subprocess.CompletedProcess[str]:
    calling = "from importlinter.cli import lint_imports_command; lint_imports_command()"
    command = [sys.executable, "-c", calling, "--no-cache", *options]
    return subprocess.run(command, cwd=house, capture_output=True, text=True, check=False)


def test_the_top_of_the_tree_holds_nothing_else():
    there = {path.name for path in HOUSE.iterdir() if not path.name.startswith(".")}

    assert there - TOP - {"__pycache__"} == set()


def test_the_folders_of_packages_say_nothing_in_init():
    """Only the rows are gathered there, because Django looks for them in one module."""
    inits = [path for package in PACKAGES for path in (HOUSE / package).rglob("__init__.py")]

    assert [module_of(path) for path in inits if path.read_text() and path.parent.name != "models"] == []


@pytest.mark.parametrize("gathered", [club.models, projects.models], ids=["club", "projects"])
def test_every_row_on_disk_is_loaded_by_its_package(gathered):
    """A room left out there is overlooked by makemigrations, which then says that nothing has changed."""
    package = HOUSE / gathered.__package__
    files = [*package.rglob("models.py"), *package.rglob("models/*.py")]
    modules = [importlib.import_module(module_of(path)) for path in files if path.parent != package]
    rows = [
        row
        for module in modules
        for row in vars(module).values()
        if inspect.isclass(row) and issubclass(row, Model) and row.__module__ == module.__name__
        if not row._meta.abstract
    ]

    assert len(rows) > 2
    assert [row for row in rows if getattr(gathered, row.__name__, None) is not row] == []


def test_pure_modules_load_without_django():
    modules = sorted(module_of(path) for path in pure_files() if path.exists())
    importing = "import importlib, sys\nfor name in sys.argv[1:]: importlib.import_module(name)\n"
    listing = "print(*sorted({name.split('.')[0] for name in sys.modules}))"

    done = subprocess.run(
        [sys.executable, "-c", importing + listing, *modules],
        cwd=HOUSE,
        capture_output=True,
        text=True,
        check=True,
    )

    assert {"django", "weasyprint"} & set(done.stdout.split()) == set()


class TestTheContracts:
    def test_hold(self):
        done = lint_imports(HOUSE)

        assert done.returncode == 0, done.stdout
        assert all(f"{contract['name']} KEPT" in done.stdout for contract in CONTRACTS.values())

    def test_speak_of_every_room(self):
        inside = set(CONTRACTS["inside"]["containers"]) | PURE
        levels = {name.strip(" ()") for line in CONTRACTS["downwards"]["layers"] for name in line.split(":")}

        assert inside == rooms() | PURE
        assert {name if name.startswith("club.") else name.split(".")[0] for name in rooms()} <= levels

    def test_speak_of_every_pure_package(self):
        assert set(CONTRACTS["pure"]["source_modules"]) == pure_packages()

    @pytest.mark.parametrize(("contract", "where", "line"), BREACHES)
    def test_fail_when_broken(self, tmp_path, contract, where, line):
        shutil.copy(HOUSE / "pyproject.toml", tmp_path)
        for package in PACKAGES:
            shutil.copytree(HOUSE / package, tmp_path / package, ignore=shutil.ignore_patterns("__pycache__"))
        broken = tmp_path / where
        broken.parent.mkdir(exist_ok=True)
        with broken.open("a") as source:
            source.write(f"\n{line}\n")

        done = lint_imports(tmp_path, "--contract", contract)

        assert done.returncode == 1
        assert f"{CONTRACTS[contract]['name']} BROKEN" in done.stdout

    def test_are_each_broken_once(self):
        assert {contract for contract, _where, _line in BREACHES} == set(CONTRACTS)
