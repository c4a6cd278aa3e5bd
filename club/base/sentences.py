"""What people read when a quantity is refused: what is wrong with it, and what would be accepted."""

from __future__ import annotations

from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.base.quantities.errors import QuantityError

# How each thing is called and written, with no-break spaces inside each example.
NOUNS = {
    "length": _("the length"),
    "area": _("the area"),
    "volume": _("the volume"),
    "mass": _("the weight"),
    "speed": _("the speed"),
    "price": _("the price"),
}
EXAMPLES = {
    "length": _("1/2\u00a0in, 0.5\u00a0in or 12.7\u00a0mm"),
    "area": _("12\u00a0in², 75\u00a0cm² or 0.5\u00a0m²"),
    "volume": _("250\u00a0ml, 0.25\u00a0l or 8\u00a0fl\u00a0oz"),
    "mass": _("250\u00a0g, 1.5\u00a0kg or 8\u00a0oz"),
    "speed": _("450 or 1\u00a0450\u00a0rpm"),
    "price": _("12.50"),
}
FOUND = {
    "length": _("a length"),
    "area": _("an area"),
    "volume": _("a volume"),
    "mass": _("a weight"),
    "speed": _("a speed"),
    "rim speed": _("a speed of the rim"),
}
CURE = _("Write %(thing)s as %(example)s.")

WRONG = {
    "empty": _("Nothing stands here yet."),
    "hidden_marks": _("There are marks in this that can't be seen. Type it anew."),
    "long_text": _("That is more than %(most)s characters."),
    "other_digits": _("Only the digits 0 to 9 are read here."),
    "no_number": _("The number has to stand first and in digits."),
    "negative": _("This can't be below 0."),
    "over_zero": _("A fraction can't have 0 under the line."),
    "many_digits": _("That is more digits than anyone can measure."),
    "unreadable": _("This can't be read as one number with its unit."),
    "no_unit": _("The unit is missing."),
    "unknown_unit": _("The unit “%(unit)s” isn't known here."),
    "other_kind": _("%(number)s\u00a0%(unit)s is %(found)s."),
    "nought": _("This can't be 0."),
    "too_much": _("This can't be more than %(most)s."),
    "not_whole": _("This is a whole number."),
    "two_readings": _("“%(number)s” can be read in two ways."),
}
# Codes whose sentence holds its own cure, by kind.
OWN_CURE = {
    ("no_unit", "length"): _(
        "“%(number)s” could be inches or millimetres. Write %(number)s\u00a0in or %(number)s\u00a0mm."
    ),
    ("two_readings", "length"): _(
        "“%(number)s” can be read in two ways. Write %(many)s or %(few)s, and the unit."
    ),
    ("two_readings", "speed"): _("“%(number)s” can be read in two ways. Write the speed as %(many)s."),
    ("unreadable", "speed"): _("This can't be read as a speed. Write it as %(example)s."),
}


def sentence(error: QuantityError, example: str = "") -> str:
    """What is wrong, and how to write it; `example` (`15 3/4 in or 400 mm`) replaces the kind's own."""
    kind = str(error.values["kind"])
    words = {**error.values, "thing": NOUNS[kind], "example": example or EXAMPLES[kind]}
    if "found" in words:
        words["found"] = FOUND[str(words["found"])]
    own = OWN_CURE.get((error.code, kind))
    if own is not None:
        return own % words
    return gettext("%(wrong)s %(cure)s") % {"wrong": WRONG[error.code] % words, "cure": CURE % words}
