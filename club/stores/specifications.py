"""Which specification is meant, however somebody spaced it or held the shift key."""

from __future__ import annotations

import unicodedata

from club.base.quantities.number import plain_text

# As wide as the column that keeps it.
LONGEST_KEY = 200


def specification_key(text: str) -> str:
    """The text without case and spacing: `Maple  dowel 1½ in` and `maple dowel 1 1/2 IN` have one key.

    Compatibility forms of Unicode fall together (NFKC, UAX #15), and marks that keyboards put in the place of
    plain ones.
    """
    compatible = unicodedata.normalize("NFKC", plain_text(text)).casefold()
    return " ".join(unicodedata.normalize("NFKC", compatible).split())[:LONGEST_KEY].rstrip()
