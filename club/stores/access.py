"""The only way a view gets something of the stores: the access check is in the query.

The stores belong to the whole club, so whoever may do this in one workshop may do it here.
"""

from __future__ import annotations

from django.db.models import QuerySet
from django.shortcuts import get_object_or_404

from club.base.access import Bearer, may
from club.stores.models import Article, Held, MetSpecification, Offer, Supplier


def articles_for(account: Bearer, address: str, method: str = "GET") -> QuerySet[Article]:
    return Article.objects.all() if may(account, address, method) else Article.objects.none()


def article_for(account: Bearer, pk: int, address: str, method: str = "GET") -> Article:
    return get_object_or_404(articles_for(account, address, method), pk=pk)


def whole_article_for(account: Bearer, pk: int, address: str, method: str = "GET") -> Article:
    """The article with all that its page shows, in four queries."""
    whole = articles_for(account, address, method).prefetch_related("held", "offers__supplier", "met")
    return get_object_or_404(whole, pk=pk)


def suppliers_for(account: Bearer, address: str, method: str = "GET") -> QuerySet[Supplier]:
    return Supplier.objects.all() if may(account, address, method) else Supplier.objects.none()


def supplier_for(account: Bearer, pk: int, address: str, method: str = "GET") -> Supplier:
    return get_object_or_404(suppliers_for(account, address, method), pk=pk)


def offer_for(account: Bearer, article_pk: int, pk: int, address: str, method: str = "GET") -> Offer:
    found = Offer.objects.filter(article__in=articles_for(account, address, method))
    return get_object_or_404(found.select_related("article", "supplier"), pk=pk, article_id=article_pk)


def held_for(account: Bearer, article_pk: int, pk: int, address: str, method: str = "GET") -> Held:
    found = Held.objects.filter(article__in=articles_for(account, address, method))
    return get_object_or_404(found.select_related("article"), pk=pk, article_id=article_pk)


def met_for(account: Bearer, article_pk: int, pk: int, address: str, method: str = "GET") -> MetSpecification:
    found = MetSpecification.objects.filter(article__in=articles_for(account, address, method))
    return get_object_or_404(found.select_related("article"), pk=pk, article_id=article_pk)
