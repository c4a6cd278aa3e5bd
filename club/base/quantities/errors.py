"""The one error of this package. `club.base.sentences` turns its code into words for people."""

from __future__ import annotations


class QuantityError(ValueError):
    """What was typed is not what belongs here. `code` says why, `values` with what.

    Every error carries `kind`, what should have stood there (a `Kind` or "price"). Codes: empty,
    hidden_marks, long_text, other_digits, no_number, negative, over_zero, many_digits, unreadable,
    two_readings, no_unit, unknown_unit, other_kind, nought, too_much, not_whole, decimals, no_decimals,
    other_currency, unknown_currency.
    """

    def __init__(self, code: str, /, **values: object) -> None:
        self.code = code
        self.values = values
        super().__init__(code)
