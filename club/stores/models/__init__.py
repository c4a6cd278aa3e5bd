from __future__ import annotations

from club.stores.models.article import Article, MetSpecification
from club.stores.models.held import Held
from club.stores.models.offer import Offer
from club.stores.models.supplier import Supplier

__all__ = ["Article", "Held", "MetSpecification", "Offer", "Supplier"]
