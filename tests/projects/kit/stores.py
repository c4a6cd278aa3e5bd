"""Lengths as they are typed, and small stocks and suppliers for the kits of these tests."""

from __future__ import annotations

import json
from typing import Any

from club.base.quantities.length import NM_PER_INCH, parse_length
from projects.kit.offers import Pack
from projects.kit.sawing import Stick
from tests.reference.tables import HERE

CASES: dict[str, dict[str, Any]] = {
    case["id"]: case
    for case in json.loads((HERE / "10_kit_and_cutting.json").read_text(encoding="utf-8"))["examples"]
}


def inch(text: str) -> int:
    """Whole nanometres of so many inches: `2 1/4`, `0.484`."""
    return parse_length(f"{text} in").nm


def mm(text: str) -> int:
    return parse_length(f"{text} mm").nm


def inches_of(number: float) -> int:
    """Of a number in a table, which is a whole number of nanometres."""
    return round(number * NM_PER_INCH)


def pack(holds: int, price: int, supplier: str = "north") -> Pack:
    return Pack(f"pack of {holds}", supplier, holds, price)


def sold(length: int, price: int, supplier: str = "north") -> Stick:
    return Stick(f"stick of {length}", length, price, supplier)


def held(length: int, limit: int = 1) -> Stick:
    return Stick(f"rest of {length}", length, limit=limit)
