"""The rows of the published tables beside this file."""

from __future__ import annotations

import csv
from fractions import Fraction
from pathlib import Path

HERE = Path(__file__).parent


def rows(name: str) -> list[dict[str, str]]:
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def half_of_last_digit(printed: str) -> Fraction:
    """How far a value may be from what was printed of it: `0.2175` stands for 0.21745 to 0.21755."""
    decimals = len(printed.partition(".")[2])
    return Fraction(1, 2 * 10**decimals)
