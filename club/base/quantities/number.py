"""Numbers as people type them: `1 1/4`, `1-1/4`, `1¼`, `1.25`, `1,25`. Exact, never below nought."""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

VULGAR = re.compile("[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]")
# What keyboards and word processors put in the place of the plain marks.
PLAIN_MARKS = str.maketrans(
    {
        **dict.fromkeys("\u2044\u2215", "/"),
        **dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2212", "-"),
        **dict.fromkeys("\u2033\u201c\u201d\u201e", '"'),
        **dict.fromkeys("\u2032\u2018\u2019", "'"),
        **dict.fromkeys("\u00d7\u2715", "x"),
        **dict.fromkeys("\u00a0\u2007\u2009\u202f", " "),
    }
)
# Nine digits either side hold every length and count of a workshop, and keep hostile numbers small.
WHOLE = r"[0-9]{1,9}"
FRACTION = rf"{WHOLE} ?/ ?{WHOLE}"
DECIMAL = rf"(?:{WHOLE}(?:[.,]{WHOLE})?|[.,]{WHOLE})"
NUMBER = re.compile(rf"(?:(?:(?P<whole>{WHOLE})(?: | ?- ?))?(?P<fraction>{FRACTION})|(?P<decimal>{DECIMAL}))")


class NumberError(ValueError):
    """The text is no number. Codes: not_a_number, over_zero."""

    def __init__(self, code: str, **values: object) -> None:
        self.code = code
        self.values = values
        super().__init__(code)


def plain_text(text: str) -> str:
    """Typed text with plain ASCII marks and single spaces: a typed `1¼` becomes `1 1/4`."""
    spelled = VULGAR.sub(lambda found: " " + unicodedata.normalize("NFKC", found[0]), text)
    return " ".join(spelled.translate(PLAIN_MARKS).split())


def parse_number(text: str) -> Fraction:
    """The exact value of a mixed number, fraction or decimal with point or comma; raises NumberError.

    `parse_number("2 3/4")`, `parse_number("2¾")` and `parse_number("2,75")` are `Fraction(11, 4)`.
    """
    found = NUMBER.fullmatch(plain_text(text))
    if found is None:
        raise NumberError("not_a_number", text=text)
    if found["decimal"]:
        return Fraction(found["decimal"].replace(",", "."))
    above, below = (int(part) for part in found["fraction"].split("/"))
    if below == 0:
        raise NumberError("over_zero", text=text)
    return int(found["whole"] or 0) + Fraction(above, below)
