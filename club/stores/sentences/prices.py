"""What one of a thing comes to, so that offers of several sizes can be compared."""

from __future__ import annotations

import re
from fractions import Fraction

from django.utils.translation import gettext as _

from club.base.quantities.length import Length, LengthStyle
from club.base.quantities.money import show_money
from club.base.quantities.shown import round_half_away, with_about
from club.stores.kinds import Kind
from club.stores.models import Offer
from club.stores.money import own_currency
from projects.kit.boards import board_feet

# As people type inches, feet and yards.
INCHES = re.compile(r"(?<![a-z])(?:in|inch|inches|ft|foot|feet|yd|yards?)\b|[\"'\u2032\u2033]", re.IGNORECASE)
NL_PER_L = 10**9
NG_PER_KG = 10**12
NM_PER_M = 10**9
# 12 in of 25.4 mm.
NM_PER_FOOT = 304_800_000


def price_for_one(offer: Offer, lengths: LengthStyle) -> str:
    """For a piece, a sheet, a litre, a kilogram; sticks by the metre or the foot, boards by m³ or board foot.

    Inches are counted where the reader likes them or the supplier sells by them. Rounded to the currency's
    smallest coin, and says so.
    """
    kind = offer.article.kind
    if kind == Kind.LIQUID:
        return _each(_("%(price)s a litre"), offer.price, Fraction(offer.holds, NL_PER_L))
    if kind == Kind.ADHESIVE:
        return _each(_("%(price)s a kilogram"), offer.price, Fraction(offer.holds, NG_PER_KG))
    if kind == Kind.LENGTH_STOCK:
        return _stick(offer, lengths)
    if kind == Kind.BLANK:
        return _board(offer, lengths)
    sentence = _("%(price)s a sheet") if kind == Kind.SHEET else _("%(price)s a piece")
    return _each(sentence, offer.price, Fraction(offer.holds))


def _stick(offer: Offer, lengths: LengthStyle) -> str:
    if offer.length is None:
        return ""
    if _in_inches(offer.length, lengths):
        return _each(_("%(price)s a foot"), offer.price, Fraction(offer.length.nm, NM_PER_FOOT))
    return _each(_("%(price)s a metre"), offer.price, Fraction(offer.length.nm, NM_PER_M))


def _board(offer: Offer, lengths: LengthStyle) -> str:
    sizes = offer.thickness, offer.width, offer.length
    if offer.thickness is None or offer.width is None or offer.length is None:
        return ""
    nm = [size.nm for size in sizes if size is not None]
    if _in_inches(offer.length, lengths):
        return _each(_("%(price)s a board foot"), offer.price, board_feet(*nm))
    return _each(_("%(price)s a cubic metre"), offer.price, Fraction(nm[0] * nm[1] * nm[2], NM_PER_M**3))


def _in_inches(length: Length, lengths: LengthStyle) -> bool:
    if lengths is LengthStyle.AS_TYPED:
        return INCHES.search(length.typed) is not None
    return lengths is not LengthStyle.MILLIMETRES


def _each(sentence: str, price: int, many: Fraction) -> str:
    """Nothing in words for nothing."""
    if not many:
        return ""
    exact = Fraction(price) / many
    shown = show_money(round_half_away(exact), own_currency())
    return sentence % {"price": with_about(shown, exact.denominator == 1, _("about"))}
