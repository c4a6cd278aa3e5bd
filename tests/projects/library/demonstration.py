"""The demonstration club's projects, read straight from the file they come in."""

from __future__ import annotations

import json
from pathlib import Path

from club import management
from projects.library.domain.json_form import from_json

FILE = Path(management.__path__[0]) / "demonstration" / "library.json"
LIBRARY = json.loads(FILE.read_text(encoding="utf-8"))
RECIPES = [from_json(entry["recipe"]) for entry in LIBRARY["editions"]]
# The newest kept edition of each project.
PROJECTS = {
    recipe.key: recipe for recipe, entry in zip(RECIPES, LIBRARY["editions"], strict=True) if entry["kept"]
}
(COURSE,) = LIBRARY["courses"]
