"""The rows of the library: a small drawing of each piece, all to one scale, and what tells it from others."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from django.db.models import Count, Q, QuerySet

from club.base.drawing.sheet import Drawing
from club.base.quantities.length import LengthStyle
from projects.library.models import Edition
from projects.library.sentences.holding import blank_words, holding_name
from projects.library.sentences.lengths import shown_in
from projects.library.small_drawings import small_pieces


@dataclass(frozen=True)
class ProjectRow:
    edition: Edition
    drawing: Drawing
    words: str
    holdings: tuple[str, ...]
    blank: str
    minutes: int
    draft_beside: int | None


def rows_of(editions: Iterable[Edition], lengths: LengthStyle) -> list[ProjectRow]:
    listed, show = list(editions), shown_in(lengths)
    drawings = small_pieces([edition.recipe for edition in listed], show)
    return [
        ProjectRow(
            edition=edition,
            drawing=drawn.drawing,
            words=drawn.words,
            holdings=tuple(dict.fromkeys(holding_name(each.holding) for each in edition.recipe.mountings)),
            blank=blank_words(edition.recipe.blank, show),
            minutes=edition.recipe.time.hands_on,
            draft_beside=None if edition.is_draft else getattr(edition, "draft_number", None),
        )
        for edition, drawn in zip(listed, drawings, strict=True)
    ]


def counts_of(editions: QuerySet[Edition]) -> dict[str, int]:
    """How many projects there are, how many of them kept, and how many drafts are being written on."""
    drafts = Edition.objects.drafts().count()
    return editions.order_by().aggregate(
        total=Count("pk"), kept=Count("pk", filter=Q(state=Edition.State.KEPT))
    ) | {"drafts": drafts}
