"""Classes whose kit is looked at, and how tests read what is said of it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from club.base.quantities.length import LengthStyle
from club.classes.kit import KitPage, kit_of
from club.classes.kit_rows import KitRow
from club.classes.models import ClassSession
from projects.library.domain.materials import PieceNeed, SpareCount
from tests.club.classes.rows import kept_edition, planned
from tests.projects.library.examples import KNOB

CORK = PieceNeed("cork", "Cork")


def knobs(students: int = 12, **facts: Any) -> ClassSession:
    return planned(kits_for=students, **facts)


def corks(students: int = 12, key: str = "corks", **facts: Any) -> ClassSession:
    """A class that needs nothing but a cork a head, without spares."""
    recipe = replace(KNOB, key=key, title="Stopper", materials=(CORK,), spares=SpareCount(0))
    return planned(edition=kept_edition(recipe), kits_for=students, **facts)


def kit(session: ClassSession, lengths: LengthStyle = LengthStyle.AS_TYPED) -> KitPage:
    return kit_of(session, lengths)


def row(page: KitPage, key: str) -> KitRow:
    return next(each for each in page.rows if each.key == key)


def plain(text: str) -> str:
    return text.replace("\N{NO-BREAK SPACE}", " ")


def said(words: tuple[str, ...]) -> str:
    return plain(" ".join(words))
