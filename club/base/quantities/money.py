"""Money: whole minor units of the one currency of an installation."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from club.base.quantities.errors import QuantityError
from club.base.quantities.shown import NO_BREAK_SPACE, thousands
from club.base.quantities.typed import checked_text, plain

# ISO 4217 as published in 2025, without funds, metals and codes for testing.
NO_DECIMALS = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF"
TWO_DECIMALS = """
    AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY
    COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR
    ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK
    MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP
    SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VED VES WST XCD XCG YER
    ZAR ZMW ZWG
"""
THREE_DECIMALS = "BHD IQD JOD KWD LYD OMR TND"
DECIMALS: Mapping[str, int] = {
    code: decimals
    for decimals, codes in ((0, NO_DECIMALS), (2, TWO_DECIMALS), (3, THREE_DECIMALS))
    for code in codes.split()
}

PRICE = "price"
# How a price is written, by the decimals of its currency.
EXAMPLES = {0: "1250", 2: "12.50", 3: "12.500"}
MOST = 10_000_000
PRICED = re.compile(r"(?P<before>[a-z]{3})? ?(?P<number>[0-9.,][0-9., ]*?) ?(?P<after>[a-z]{3})?")
GROUPS = r"[0-9]{1,3}(?:%s[0-9]{3}){1,2}"
WHOLE = re.compile(rf"(?P<whole>[0-9]{{1,9}}|{GROUPS % ' '})(?:[.,](?P<part>[0-9]+))?")
ONLY_PART = re.compile(r"(?P<whole>)[.,](?P<part>[0-9]+)")
# Two different marks leave no doubt: the first groups, the last is the decimal one.
GROUPED = re.compile(rf"(?:(?P<whole>{GROUPS % ','})\.|(?P<pointed>{GROUPS % '[.]'}),)(?P<part>[0-9]+)")
TWO_READINGS = re.compile(r"(?!0+[.,])(?P<before>[0-9]{1,3})(?P<mark>[.,])(?P<after>[0-9]{3})")


@dataclass(frozen=True)
class Currency:
    """An ISO 4217 code and how many decimals its amounts have: 0, 2 or 3."""

    code: str
    decimals: int

    @property
    def minor_in_one(self) -> int:
        return int(10**self.decimals)


@dataclass(frozen=True)
class Price:
    """Whole minor units, and whether tax is in them."""

    minor: int
    tax_in: bool


def currency_called(code: str) -> Currency:
    """The currency of an ISO 4217 code such as `EUR`; raises QuantityError `unknown_currency`."""
    if code not in DECIMALS:
        raise QuantityError("unknown_currency", kind=PRICE, currency=code[:10])
    return Currency(code, DECIMALS[code])


def parse_money(text: str, currency: Currency) -> int:
    """Whole minor units from `12.50`, `12,50`, `1 250`, `1,250.00` or `12.50 EUR`; raises QuantityError.

    Nought is an amount, as for a thing that was given. More decimals than the currency has are refused.
    """
    try:
        return _minor_of(text, currency)
    except QuantityError as error:
        example = EXAMPLES[currency.decimals]
        raise QuantityError(error.code, **error.values, example=example) from error


def _minor_of(text: str, currency: Currency) -> int:
    number = _number_of(plain(checked_text(text, PRICE)), currency)
    _check_readings(number, currency)
    whole, part = _parts_of(number)
    if len(part) > currency.decimals:
        code = "decimals" if currency.decimals else "no_decimals"
        raise QuantityError(code, kind=PRICE, currency=currency.code, most=currency.decimals)
    minor = int(whole + part.ljust(currency.decimals, "0"))
    most = MOST * currency.minor_in_one
    if minor > most:
        raise QuantityError("too_much", kind=PRICE, most=show_money(most, currency))
    return minor


def _number_of(text: str, currency: Currency) -> str:
    """The number without the currency's code, which may stand on either side."""
    if text.startswith("-") or " -" in text:
        raise QuantityError("negative", kind=PRICE)
    found = PRICED.fullmatch(text)
    if found is None or (found["before"] and found["after"]):
        raise QuantityError("unreadable", kind=PRICE)
    code = (found["before"] or found["after"] or currency.code).upper()
    if code != currency.code:
        raise QuantityError("other_currency", kind=PRICE, typed=code, currency=currency.code)
    return found["number"]


def _check_readings(number: str, currency: Currency) -> None:
    """Refuse `1,250`, unless three decimals after a point are what the currency has."""
    found = TWO_READINGS.fullmatch(number)
    if found and not (currency.decimals == 3 and found["mark"] == "."):
        raise QuantityError("two_readings", kind=PRICE, number=number, many=found["before"] + found["after"])


def _parts_of(number: str) -> tuple[str, str]:
    """The digits before and after the decimal mark."""
    if found := GROUPED.fullmatch(number):
        whole = found["whole"] or found["pointed"]
        return re.sub("[.,]", "", whole), found["part"]
    found = WHOLE.fullmatch(number) or ONLY_PART.fullmatch(number)
    if found is None:
        raise QuantityError("unreadable", kind=PRICE)
    return found["whole"].replace(" ", ""), found["part"] or ""


def show_money(minor: int, currency: Currency) -> str:
    """`1 250.00 EUR`, with no-break spaces; below nought with a minus sign, as a refund is."""
    whole, part = divmod(abs(minor), currency.minor_in_one)
    decimals = f".{part:0{currency.decimals}d}" if currency.decimals else ""
    sign = "-" if minor < 0 else ""
    return f"{sign}{thousands(whole)}{decimals}{NO_BREAK_SPACE}{currency.code}"
