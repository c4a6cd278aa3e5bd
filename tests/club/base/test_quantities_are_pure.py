from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest
from django.conf import settings

PACKAGE = Path(settings.BASE_DIR) / "club" / "base" / "quantities"
MODULES = sorted(PACKAGE.glob("*.py"))


def test_quantities_need_no_django():
    names = ", ".join(f"club.base.quantities.{path.stem}" for path in MODULES if path.stem != "__init__")
    code = f"import {names}, sys; sys.exit('django' in sys.modules)"

    assert subprocess.run([sys.executable, "-c", code], cwd=settings.BASE_DIR, check=False).returncode == 0


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.stem)
def test_no_float_is_written_in_quantities(path):
    nodes = list(ast.walk(ast.parse(path.read_text(encoding="utf-8"))))

    assert not [
        node.value for node in nodes if isinstance(node, ast.Constant) and isinstance(node.value, float)
    ]
    assert not [node for node in nodes if isinstance(node, ast.Name) and node.id == "float"]


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.stem)
def test_only_the_registry_touches_pint(path):
    imported = {
        alias.name
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Import)
        for alias in node.names
    }

    assert ("pint" in imported) == (path.stem == "registry")
