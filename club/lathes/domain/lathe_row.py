"""One line of a lathe list: from a row of words to the fields of a lathe's form, and back.

A column that is missing leaves the measure as it was; a column that is there and empty clears it.
Words nobody knows stay as they are, so that the form says what would be accepted.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

COLUMNS: Mapping[str, str] = {
    "workshop": "workshop",
    "number": "number",
    "maker's plate": "plate",
    "headstock taper": "headstock_taper",
    "tailstock taper": "tailstock_taper",
    "nose thread": "nose_thread",
    "register diameter": "register_diameter",
    "register length": "register_length",
    "through bore": "through_bore",
    "nose to handwheel face": "nose_to_handwheel",
    "swing over bed": "swing_over_bed",
    "swing over banjo": "swing_over_banjo",
    "between centres greatest": "centres_greatest",
    "between centres least": "centres_least",
    "speeds": "speeds",
    "plate speed": "plate_speed",
    "reverse": "reverse",
    "spindle lock": "spindle_lock",
    "no-volt release": "no_volt_release",
    "low stand": "low_stand",
    "draw bars": "draw_bars",
    "condition": "condition",
    "reason": "condition_reason",
}
NEEDED = ("workshop", "number")
LENGTH_FIELDS = frozenset(
    {
        "register_diameter",
        "register_length",
        "through_bore",
        "nose_to_handwheel",
        "swing_over_bed",
        "swing_over_banjo",
        "centres_greatest",
        "centres_least",
    }
)
UNIT_IN_HEADING = re.compile(r"(?P<column>.+?) ?[(\[](?P<unit>mm|cm|in|inch|inches)[)\]]")
BARE_NUMBER = re.compile(r"[0-9.,/ \u00bc-\u00be\u215b-\u215e-]*[0-9\u00bc-\u00be\u215b-\u215e]")
CONDITION_WORDS = {"in service": "in_service", "limited": "limited", "out of service": "out", "out": "out"}
YES_NO_FIELDS = frozenset({"reverse", "spindle_lock", "no_volt_release", "low_stand"})
TAPER_FIELDS = frozenset({"headstock_taper", "tailstock_taper"})
YES_NO_WORDS = {"yes": "yes", "y": "yes", "no": "no", "n": "no", "not known": "", "?": ""}


def unknown_headings(headings: Iterable[str]) -> tuple[str, ...]:
    return tuple(heading for heading in headings if heading not in COLUMNS)


def missing_headings(headings: Iterable[str]) -> tuple[str, ...]:
    found = set(headings)
    return tuple(heading for heading in NEEDED if heading not in found)


def plain_heading(heading: str) -> tuple[str, str]:
    """`through bore (mm)` is the column `through bore`, whose bare numbers are millimetres."""
    found = UNIT_IN_HEADING.fullmatch(heading)
    if found and COLUMNS.get(found["column"]) in LENGTH_FIELDS:
        return found["column"], found["unit"]
    return heading, ""


def with_unit(cell: str, unit: str) -> str:
    """A bare number with the unit its heading names; what has a unit of its own keeps it."""
    return f"{cell} {unit}" if unit and cell and BARE_NUMBER.fullmatch(cell) else cell


def form_fields(cells: Mapping[str, str]) -> dict[str, str]:
    """What a person would have typed into the form for this line: `{"headstock_taper": "MT2", ...}`."""
    return {COLUMNS[heading]: _as_typed(COLUMNS[heading], cell) for heading, cell in cells.items()}


def _as_typed(field: str, cell: str) -> str:
    word = " ".join(cell.split()).casefold()
    if field in YES_NO_FIELDS:
        return YES_NO_WORDS.get(word, cell)
    if field in TAPER_FIELDS:
        return _taper_key(word, cell)
    if field == "condition":
        return CONDITION_WORDS.get(word, cell or "in_service")
    return cell


def _taper_key(word: str, cell: str) -> str:
    """`Morse No. 2`, `morse 2`, `MT2`, `2MT`, `MK 2` are one taper."""
    if word in {"none", "no taper"}:
        return "none"
    bare = word.replace("no.", "").replace("morse", "mt").replace("mk", "mt").replace(" ", "")
    size = bare.replace("mt", "")
    return f"MT{size}" if "mt" in bare and len(size) == 1 and size in "0123456" else cell


def words_of(fields: Mapping[str, str]) -> dict[str, str]:
    """The row a list shows for a lathe's form fields: the way back of `form_fields`."""
    return {heading: _as_word(field, fields.get(field, "")) for heading, field in COLUMNS.items()}


def _as_word(field: str, value: str) -> str:
    if field in TAPER_FIELDS and value.startswith("MT"):
        return f"Morse No. {value.removeprefix('MT')}"
    if field in TAPER_FIELDS and value == "none":
        return "no taper"
    if field == "condition":
        return {"in_service": "in service", "limited": "limited", "out": "out of service"}[value]
    return value
