"""Amounts and prices in words. Units: 1 in = 25.4 mm and 1 ft = 12 in exactly (NIST SP 811, appendix B)."""

from __future__ import annotations

import pytest

from club.base.quantities.length import LengthStyle, parse_length
from club.stores.models import Article, Held, Offer, Supplier
from club.stores.sentences.amounts import held_amount, lying_there, pack_amount
from club.stores.sentences.prices import price_for_one

AS_TYPED, MM = LengthStyle.AS_TYPED, LengthStyle.MILLIMETRES


def offer(kind: str, price: int, holds: int = 1, **sizes: str) -> Offer:
    lengths = {name: parse_length(text) for name, text in sizes.items()}
    return Offer(article=Article(kind=kind), supplier=Supplier(), price=price, holds=holds, **lengths)


def held(kind: str, amount: int, typed: str = "", cut_for: str = "", **sizes: str) -> Held:
    lengths = {name: parse_length(text) for name, text in sizes.items()}
    return Held(
        article=Article(kind=kind), amount=amount, amount_typed=typed, cut_for=cut_for, fit=True, **lengths
    )


BOARD = {"thickness": "2 in", "width": "6 in", "length": "3 ft"}


@pytest.mark.parametrize(
    ("row", "words"),
    [
        (held("length_stock", 1, length="30 in"), "1 stick of 30 in"),
        (held("length_stock", 1200, length="1 m"), "1 200 sticks of 1 m"),
        (held("blank", 2, **BOARD), "2 boards of 2 in by 6 in by 3 ft"),
        (held("blank", 9, cut_for="Maple 2 in square"), "9 blanks cut for Maple 2 in square"),
        (held("sheet", 0, width="9 in", length="11 in"), "0 sheets of 9 in by 11 in"),
        (held("sheet", 1, cut_for="Sandpaper"), "1 piece cut for Sandpaper"),
        (held("liquid", 250_000_000, "¼ l"), "¼ l"),
        (held("adhesive", 400 * 10**9), "400 g"),
        (held("piece", 41), "41 pieces"),
        (held("consumed", 1), "1 piece"),
    ],
)
def test_an_amount_is_said_in_its_kind_s_own_unit(row, words):
    assert held_amount(row, str).replace("\u00a0", " ") == words


def test_a_pack_says_what_it_holds():
    assert pack_amount(offer("sheet", 1, 10, width="9 in", length="11 in"), str).startswith("10 sheets of")


def test_equal_sizes_lie_together_whoever_typed_them():
    rows = [held("length_stock", 1, length="1 m"), held("length_stock", 2, length="1000 mm")]

    assert lying_there(rows, str) == "3 sticks of 1\u00a0m"


def test_liquids_add_up():
    rows = [held("liquid", 250 * 10**6, "250 ml"), held("liquid", 10**9, "1 l")]

    assert lying_there(rows, str) == "1\u00a0250\u00a0ml"


def test_what_is_used_up_or_unfit_does_not_lie_there():
    unfit = held("piece", 5)
    unfit.fit = False

    assert lying_there([unfit, held("piece", 0)], str) == "nothing"


@pytest.mark.parametrize(
    ("sold", "lengths", "words"),
    [
        (offer("piece", 895, 50), AS_TYPED, "about 0.18 EUR a piece"),
        (offer("consumed", 1000, 100), AS_TYPED, "0.10 EUR a piece"),
        (offer("sheet", 500, 10), AS_TYPED, "0.50 EUR a sheet"),
        (offer("liquid", 900, 500_000_000), AS_TYPED, "18.00 EUR a litre"),
        (offer("adhesive", 310, 250 * 10**9), AS_TYPED, "12.40 EUR a kilogram"),
        (offer("length_stock", 360, length="36 in"), AS_TYPED, "1.20 EUR a foot"),
        (offer("length_stock", 100, length="½ ft"), AS_TYPED, "2.00 EUR a foot"),
        (offer("length_stock", 360, length="1200 mm"), AS_TYPED, "3.00 EUR a metre"),
        (offer("length_stock", 3048, length="10 ft"), MM, "10.00 EUR a metre"),
        # 2 in x 6 in x 36 in are 432 in³, three board feet of 144 in³.
        (offer("blank", 2400, 1, **BOARD), AS_TYPED, "8.00 EUR a board foot"),
        (
            offer("blank", 1000, thickness="50 mm", width="200 mm", length="1 m"),
            AS_TYPED,
            "1 000.00 EUR a cubic metre",
        ),
        (offer("blank", 1000), AS_TYPED, ""),
        (offer("length_stock", 1000), AS_TYPED, ""),
    ],
)
def test_offers_of_several_sizes_can_be_compared(sold, lengths, words):
    assert price_for_one(sold, lengths).replace("\u00a0", " ") == words
