"""The rules of the reference, and words that make one of them fire."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from projects.library.domain.rule_words import RuleWords
from tests.reference.tables import HERE

REFERENCE: list[dict[str, Any]] = json.loads((HERE / "08_safety_rules.json").read_text(encoding="utf-8"))[
    "rules"
]
LISTS = (
    *("tools", "holding", "finishes", "finish_properties"),
    *("woods", "wood_groups", "wood_conditions", "operations"),
)


def words(**used: tuple[str, ...]) -> RuleWords:
    return RuleWords(**{among: frozenset(used.get(among, ())) for among in LISTS})


def asked(row: Mapping[str, Any]) -> dict[str, tuple[str, ...]]:
    """The lists of a rule's trigger that ask for something."""
    return {among: tuple(row["trigger"][among]) for among in LISTS if row["trigger"][among]}
