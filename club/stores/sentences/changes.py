"""How the rows of an article read in its log of changes, each in one line; lengths as they were typed."""

from __future__ import annotations

from collections.abc import Iterator

from django.utils.translation import gettext as _

from club.base.changes import Snapshot, snapshot
from club.stores.models import Held, MetSpecification, Offer, Supplier
from club.stores.money import money
from club.stores.sentences.amounts import held_amount, pack_amount


def supplier_lines(supplier: Supplier) -> Snapshot:
    """All of a supplier, money with its currency."""
    in_words = {_("delivery"): money(supplier.delivery), _("least order"): money(supplier.least_order)}
    return {**snapshot(supplier), **in_words}


def offer_lines(offer: Offer) -> Snapshot:
    """`{"offer of Reed and Rush, bag": "50 pieces, 8.95 EUR"}`."""
    name = _("offer of %(supplier)s, %(pack)s") % {"supplier": offer.supplier.name, "pack": offer.label}
    holds = {"amount": pack_amount(offer, str), "price": money(offer.price)}
    return {name: _("%(amount)s, %(price)s") % holds}


def held_lines(held: Held) -> Snapshot:
    """`{"on the shelf, R1": "3 sticks of 36 in, 12.6 mm across, rack 2"}`."""
    name = _("on the shelf, %(label)s") % {"label": held.label} if held.label else _("on the shelf")
    return {name: ", ".join((held_amount(held, str), *_particulars(held)))}


def met_lines(met: MetSpecification) -> Snapshot:
    return {_("meets"): met.specification}


def _particulars(held: Held) -> Iterator[str]:
    if held.across is not None:
        yield _("%(across)s across") % {"across": held.across}
    if held.moisture is not None:
        yield _("%(moisture)s %% moisture") % {"moisture": held.moisture}
    if held.where:
        yield held.where
    if not held.fit:
        yield _("not fit for use")
