"""How names are compared: pure text in, pure text out."""

from __future__ import annotations

import unicodedata


def sign_in_key(text: str) -> str:
    """A sign-in name as it is kept: ILSE, Ilse and ilse are one.

    Unicode's compatibility caseless match (The Unicode Standard, section 3.13, D146).
    """
    folded = unicodedata.normalize("NFD", text).casefold()
    return unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", folded).casefold())


def sought(text: str) -> str:
    """A name as it is looked for: without case, accents and double blanks, so that "asa" finds "Åsa"."""
    apart = unicodedata.normalize("NFKD", " ".join(text.split()).casefold())
    return "".join(letter for letter in apart if letter.isprintable() and not unicodedata.combining(letter))
