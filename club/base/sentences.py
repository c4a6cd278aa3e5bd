"""What people read when a quantity is refused: what is wrong with it, and what would be accepted."""

from __future__ import annotations

from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.base.quantities.errors import QuantityError

# How each kind is called and written, with no-break spaces inside each example.
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
    "rim speed": _("how fast a rim runs"),
}
WRONG = {
    "empty": _("Nothing stands here yet."),
    "hidden_marks": _("There are marks in this that can't be seen."),
    "long_text": _("That is more than %(most)s characters."),
    "other_digits": _("Only the digits 0 to 9 are read here."),
    "no_number": _("There is no number in digits here."),
    "negative": _("This can't be below 0."),
    "over_zero": _("A fraction can't have 0 under the line."),
    "many_digits": _("That is more digits than anyone can measure."),
    "unreadable": _("This can't be read."),
    "two_readings": _("“%(number)s” can be read in two ways."),
    "no_unit": _("The unit is missing."),
    "unknown_unit": _("The unit “%(unit)s” isn't known here."),
    "other_kind": _("%(number)s\u00a0%(unit)s is %(found)s."),
    "nought": _("This can't be 0."),
    "too_much": _("This can't be more than %(most)s."),
    "not_whole": _("Only whole numbers are read here."),
    "decimals": _("%(currency)s has no more than %(most)s decimals."),
    "no_decimals": _("%(currency)s has no decimals."),
    "other_currency": _("Prices are in %(currency)s here."),
    "unknown_currency": _("“%(currency)s” isn't the ISO 4217 code of a currency."),
}
CURE = _("Write %(thing)s as %(example)s.")
# Cures that say more than an example can.
OWN_CURE = {
    ("no_unit", "length"): _("Write %(number)s\u00a0in or %(number)s\u00a0mm."),
    ("two_readings", "length"): _("Write %(many)s\u00a0%(unit)s or %(few)s\u00a0%(unit)s."),
    ("two_readings", "area"): _("Write %(many)s\u00a0%(unit)s or %(few)s\u00a0%(unit)s."),
    ("two_readings", "volume"): _("Write %(many)s\u00a0%(unit)s or %(few)s\u00a0%(unit)s."),
    ("two_readings", "mass"): _("Write %(many)s\u00a0%(unit)s or %(few)s\u00a0%(unit)s."),
    ("two_readings", "speed"): _("Write %(many)s."),
    ("two_readings", "price"): _("Leave out the mark for thousands, as in %(many)s."),
    ("unknown_currency", "price"): _("Write three capitals, as EUR or USD."),
}
OWN_WRONG = {
    ("no_unit", "length"): _("“%(number)s” could be inches or millimetres."),
}


def sentence(error: QuantityError, example: str = "") -> str:
    """What is wrong, and how to write it; `example` (`15 3/4 in or 400 mm`) replaces the kind's own."""
    kind = str(error.values["kind"])
    words = {"example": EXAMPLES[kind], "thing": NOUNS[kind], **error.values}
    if example:
        words["example"] = example
    if "found" in words:
        words["found"] = FOUND[str(words["found"])]
    wrong = OWN_WRONG.get((error.code, kind), WRONG[error.code])
    cure = OWN_CURE.get((error.code, kind), CURE)
    return gettext("%(wrong)s %(cure)s") % {"wrong": wrong % words, "cure": cure % words}
