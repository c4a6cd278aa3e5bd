"""How a pack and what lies on the shelf are called away from their article's page."""

from __future__ import annotations

from django.utils.translation import gettext

from club.stores.models import Held, Offer


def offer_name(offer: Offer) -> str:
    """An offer away from its article's page: `Maple dowel 1/2 in, 36 in`."""
    return gettext("%(article)s, %(pack)s") % {"article": offer.article.name, "pack": offer.label}


def held_name(held: Held) -> str:
    """What lies there, away from its article's page, with its mark if it has one."""
    if not held.label:
        return held.article.name
    return gettext("%(article)s, marked %(label)s") % {"article": held.article.name, "label": held.label}
