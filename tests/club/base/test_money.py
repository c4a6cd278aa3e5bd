from __future__ import annotations

import dataclasses

import pytest
from hypothesis import given
from hypothesis import strategies as st

from club.base.quantities.errors import QuantityError
from club.base.quantities.money import (
    DECIMALS,
    MOST,
    Currency,
    Price,
    currency_called,
    parse_money,
    show_money,
)
from club.base.sentences import sentence
from tests.reference.tables import rows

EUR, JPY, KWD = (currency_called(code) for code in ("EUR", "JPY", "KWD"))
ISO_4217 = {row["code"]: row["minor_unit"] for row in rows("09d_currencies.csv")}
currencies = st.sampled_from([EUR, JPY, KWD])


@pytest.mark.parametrize("code", sorted(ISO_4217))
def test_currencies_have_the_decimals_of_iso_4217(code):
    if ISO_4217[code] in {"0", "2", "3"}:
        assert currency_called(code) == Currency(code, int(ISO_4217[code]))
    else:
        assert code not in DECIMALS


def test_no_currency_is_made_up():
    assert DECIMALS.keys() <= ISO_4217.keys()


@pytest.mark.parametrize("code", ["EURO", "eur", "", "XAU", "CLF"])
def test_a_currency_nobody_pays_with_is_refused(code):
    with pytest.raises(QuantityError) as refused:
        currency_called(code)

    assert sentence(refused.value) == (
        f"“{code}” isn't the ISO 4217 code of a currency. Write three capitals, as EUR or USD."
    )


@pytest.mark.parametrize(
    ("text", "currency", "minor"),
    [
        ("12.50", EUR, 1250),
        ("12,50", EUR, 1250),
        ("12.5", EUR, 1250),
        ("12", EUR, 1200),
        (".50", EUR, 50),
        ("0", EUR, 0),
        (" 1 250.00 ", EUR, 125_000),
        ("1\u00a0250,00", EUR, 125_000),
        ("1,250.00", EUR, 125_000),
        ("1.250,00", EUR, 125_000),
        ("12.50 EUR", EUR, 1250),
        ("eur 12.50", EUR, 1250),
        ("1250", JPY, 1250),
        ("1.250", KWD, 1250),
        ("1 250.5", KWD, 1_250_500),
        ("10000000", EUR, 10**9),
    ],
)
def test_a_price_is_read_in_minor_units(text, currency, minor):
    assert parse_money(text, currency) == minor


@pytest.mark.parametrize(
    ("text", "currency", "words"),
    [
        ("", EUR, "Nothing stands here yet. Write the price as 12.50."),
        ("-3", EUR, "This can't be below 0. Write the price as 12.50."),
        ("\u22123", EUR, "This can't be below 0. Write the price as 12.50."),
        ("twelve", EUR, "This can't be read. Write the price as 12.50."),
        ("1e3", EUR, "This can't be read. Write the price as 12.50."),
        ("1/2", EUR, "This can't be read. Write the price as 12.50."),
        ("1 2", EUR, "This can't be read. Write the price as 12.50."),
        ("EUR 3 EUR", EUR, "This can't be read. Write the price as 12.50."),
        ("9" * 30, EUR, "This can't be read. Write the price as 12.50."),
        ("1,250", EUR, "“1,250” can be read in two ways. Leave out the mark for thousands, as in 1250."),
        ("1.250", EUR, "“1.250” can be read in two ways. Leave out the mark for thousands, as in 1250."),
        ("1,250", KWD, "“1,250” can be read in two ways. Leave out the mark for thousands, as in 1250."),
        ("0.125", EUR, "EUR has no more than 2 decimals. Write the price as 12.50."),
        ("12.5", JPY, "JPY has no decimals. Write the price as 1250."),
        ("1.2345", KWD, "KWD has no more than 3 decimals. Write the price as 12.500."),
        ("12.50 USD", EUR, "Prices are in EUR here. Write the price as 12.50."),
        (
            "10000000.01",
            EUR,
            "This can't be more than 10\u00a0000\u00a0000.00\u00a0EUR. Write the price as 12.50.",
        ),
        ("12\u200b.50", EUR, "There are marks in this that can't be seen. Write the price as 12.50."),
        ("\uff11\uff12", EUR, "Only the digits 0 to 9 are read here. Write the price as 12.50."),
    ],
)
def test_what_is_no_price_gets_one_sentence_with_its_cure(text, currency, words):
    with pytest.raises(QuantityError) as refused:
        parse_money(text, currency)

    assert sentence(refused.value) == words


@pytest.mark.parametrize(
    ("minor", "currency", "shown"),
    [
        (1250, EUR, "12.50\u00a0EUR"),
        (5, EUR, "0.05\u00a0EUR"),
        (125_000, EUR, "1\u00a0250.00\u00a0EUR"),
        (-50, EUR, "-0.50\u00a0EUR"),
        (1250, JPY, "1\u00a0250\u00a0JPY"),
        (1250, KWD, "1.250\u00a0KWD"),
    ],
)
def test_money_is_shown_with_all_its_decimals(minor, currency, shown):
    assert show_money(minor, currency) == shown


@given(currencies, st.integers(0, MOST))
def test_what_was_shown_reads_back(currency, minor):
    assert parse_money(show_money(minor, currency), currency) == minor


@given(currencies, st.text(max_size=45))
def test_any_text_at_all_is_a_price_or_gets_a_sentence(currency, text):
    assert is_price_or_refused_with_a_cure(text, currency)


def is_price_or_refused_with_a_cure(text: str, currency: Currency) -> bool:
    try:
        minor = parse_money(text, currency)
    except QuantityError as refused:
        return sentence(refused).endswith(".")
    return type(minor) is int and 0 <= minor <= MOST * currency.minor_in_one


def test_a_price_says_whether_tax_is_in_and_stays_as_it_is():
    price = Price(1250, tax_in=True)

    with pytest.raises(dataclasses.FrozenInstanceError):
        price.minor = 1  # type: ignore[misc]
    assert price != Price(1250, tax_in=False)
