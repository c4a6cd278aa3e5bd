"""The one error of recipes. The room's sentences turn its code into words for people."""

from __future__ import annotations


class RecipeError(ValueError):
    """Data that is no recipe. `code` says why, `path` where, `values` with what.

    The path is written as `mountings[1].steps[3].tool`; it is "" where the whole is meant.

    Codes for a whole file: huge, not_text, broken, too_deep, foreign, newer_version.
    Codes for a place in it: unknown_field (field), missing_field (field), wrong_type (wanted), unknown_word
    (words), unreadable_text, short_text (least), long_text (most), too_small (least), too_large (most),
    too_few (least), too_many (most), unreadable_quantity (reason, a QuantityError), twice (key),
    unknown_reference (key), bad_profile (reason, an error of the drawing).
    """

    def __init__(self, code: str, /, *, path: str = "", **values: object) -> None:
        self.code = code
        self.path = path
        self.values = values
        super().__init__(code)
