"""The list of articles: narrowed down, by kind, each with what lies there and what it lacks."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from django.db.models import Case, Count, Exists, OuterRef, Q, QuerySet, Value, When

from club.stores.models import Article, Held, MetSpecification, Offer
from club.stores.sentences.amounts import Show, lying_there

# The order of kinds in the list, which is not that of their words in the database.
BY_KIND = Case(*(When(kind=kind, then=Value(place)) for place, kind in enumerate(Article.Kind.values)))
LACKING = {"shelf": "lies", "supplier": "is_sold", "specification": "meets"}


@dataclass(frozen=True)
class ArticleLine:
    """One article as the list shows it."""

    article: Article
    lying: str
    sellers: tuple[str, ...]
    met: int


def with_lacks(articles: QuerySet[Article]) -> QuerySet[Article]:
    """Each with whether something fit lies there, somebody sells it, and it meets anything."""
    mine = {"article": OuterRef("pk")}
    return articles.annotate(
        lies=Exists(Held.objects.filter(**mine, fit=True, amount__gt=0)),
        is_sold=Exists(Offer.objects.filter(**mine)),
        meets=Exists(MetSpecification.objects.filter(**mine)),
    )


def counts_of(articles: QuerySet[Article]) -> dict[str, int]:
    """How many there are in all, and how many lack what."""
    lacking = {name: Count("pk", filter=Q(**{has: False})) for name, has in LACKING.items()}
    return with_lacks(articles).order_by().aggregate(total=Count("pk"), **lacking)


def narrowed_down(articles: QuerySet[Article], wanted: dict[str, str]) -> QuerySet[Article]:
    """Those that fit what could be read of the form, by kind and name, with all that a line shows."""
    if words := wanted.get("q"):
        articles = articles.filter(
            Q(name__icontains=words) | Q(note__icontains=words) | Q(met__specification__icontains=words)
        ).distinct()
    if kind := wanted.get("kind"):
        articles = articles.filter(kind=kind)
    if lacks := wanted.get("lacks"):
        articles = with_lacks(articles).filter(**{LACKING[lacks]: False})
    return articles.order_by(BY_KIND, "name").prefetch_related("held", "offers__supplier", "met")


def lines_of(articles: Iterable[Article], show: Show) -> list[ArticleLine]:
    """What the list says of each."""
    return [
        ArticleLine(
            article,
            lying_there(article.held.all(), show),
            tuple(dict.fromkeys(offer.supplier.name for offer in article.offers.all())),
            len(article.met.all()),
        )
        for article in articles
    ]
