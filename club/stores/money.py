"""Money in the one currency of this installation."""

from __future__ import annotations

from django.conf import settings

from club.base.quantities.money import Currency, currency_called, show_money


def own_currency() -> Currency:
    """The installation's currency; a check at the start refuses one that isn't known."""
    return currency_called(settings.CURRENCY)


def money(minor: int) -> str:
    """Minor units as `12.50 EUR`."""
    return show_money(minor, own_currency())
