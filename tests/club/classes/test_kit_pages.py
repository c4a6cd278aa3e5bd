"""The kit of a class and its order as pages and on paper. Prices are made up."""

from __future__ import annotations

import re
from datetime import timedelta
from typing import Any

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from club.base.access import Role
from club.base.printing import PrintingUnavailable
from club.base.quantities.length import parse_length
from club.classes.actions.classes import cancel_class
from club.classes.actions.lists import hold, sign_up
from club.classes.models import ClassSession, SignUp
from tests.club.classes.rows import people, planned, room
from tests.club.classes.shelves import SQUARE, article, evening_a
from tests.conftest import SignInAs
from tests.factories import HeldFactory, OfferFactory, SupplierFactory
from tests.paper import catalog, fonts, page_sizes, read_pdf

pytestmark = pytest.mark.django_db
A4, LETTER = (210.0, 297.0), (215.9, 279.4)


def plain(text: str) -> str:
    return " ".join(text.replace("\N{NO-BREAK SPACE}", " ").split())


def page(client: Client, session: ClassSession, name: str = "kit") -> str:
    answer = client.get(reverse(f"classes:{name}", args=[session.pk]))
    assert answer.status_code == 200
    return plain(re.sub(r"<[^>]+>", " ", answer.content.decode()))


def pdf(client: Client, session: ClassSession, paper: str = "a4") -> Any:
    return client.get(reverse("classes:order_pdf", args=[session.pk]), {"paper": paper})


def sheets(client: Client, session: ClassSession) -> list[str]:
    return [plain(sheet.extract_text()) for sheet in read_pdf(pdf(client, session).content).pages]


def knobs() -> ClassSession:
    """Twelve students: towels come from Reed Mill, sandpaper from Corn Yard, all else isn't sold."""
    evening_a()
    yard = SupplierFactory(name="Corn Yard")
    for grit in (120, 180, 240):
        sizes = {"width": "9 in", "length": "11 in"}
        paper = article(f"Sandpaper P{grit}", "sheet")
        OfferFactory(article=paper, supplier=yard, label="one sheet", price=90, **lengths(sizes))
    for need, kind in (("Wood glue", "adhesive"), ("Walnut oil", "liquid")):
        HeldFactory(article=article(need, kind), amount=10**12)
    return planned(kits_for=12)


def lengths(sizes: dict[str, str]) -> dict[str, Any]:
    return {name: parse_length(text) for name, text in sizes.items()}


class TestTheKitPage:
    def test_shows_each_line_with_how_it_was_worked_out(self, as_instructor):
        words = page(as_instructor, knobs())

        assert "15 10 % spare, counted on students and demonstrations, rounded up" in words
        assert "12 students + 1 demonstration + 2 spare = 15 kits, 1 each = 15." in words
        assert "15 of 2 1/4 in" in words
        assert "rest 1 3/16 in" in words
        assert "A saw can catch a short piece and throw it" in words
        assert "A sheet of 9 in by 11 in gives 8 pieces." in words

    def test_sums_up_the_class(self, as_instructor):
        """Towels 3.20, two sheets of each grit at 0.90: 5.40; delivery 4.50; 13.10 over 12 is 1.0917."""
        words = page(as_instructor, knobs())

        assert "Goods 8.60 EUR" in words
        assert "Delivery 4.50 EUR" in words
        assert "Cost of the class 13.10 EUR" in words
        assert "1.10 EUR" in words
        assert "Prices with tax." in words

    def test_says_when_prices_have_no_tax_in_them(self, as_instructor, settings):
        settings.PRICES_WITH_TAX = False

        assert "Prices without tax." in page(as_instructor, knobs())

    def test_leads_to_where_one_chooses_what_meets_a_line(self, as_instructor):
        session = planned(kits_for=3)

        answer = as_instructor.get(reverse("classes:kit", args=[session.pk])).content.decode()

        asked = "?kind=length_stock&amp;specification=Maple%20dowel%201%2F2%20in"
        back = f"&amp;next=%2Fclasses%2F{session.pk}%2Fkit%2F"
        assert reverse("stores:meets_add") + asked + back in answer

    def test_leads_nobody_there_who_may_not_write(self, sign_in_as: SignInAs):
        session = planned(kits_for=3)

        assert "Choose what meets it" not in page(sign_in_as(Role.HELPER), session)

    def test_says_when_more_people_are_on_the_list_than_kits_are_made_for(self, as_instructor):
        session = planned(kits_for=1)
        now = timezone.now()
        for person, ahead in zip(people(2), (None, timedelta(hours=1)), strict=True):
            hold(None, session, person, now, now + ahead) if ahead else sign_up(None, session, person, now)

        said = "Kits are made for 1 student, and 2 people are on the list."
        assert said in page(as_instructor, session)
        assert said in page(as_instructor, session, "class")
        SignUp.objects.filter(state="held").update(until=now - timedelta(hours=1))
        assert "people are on the list" not in page(as_instructor, session)

    def test_says_by_how_much_an_order_is_too_small(self, as_instructor):
        """The goods are 3.20, the least order is 10.00."""
        session = knobs()

        for name in ("kit", "class"):
            assert "The goods come to 3.20 EUR, 6.80 EUR too little." in page(as_instructor, session, name)

    @pytest.mark.parametrize("name", ["kit", "order"])
    def test_says_that_a_class_is_cancelled(self, name: str, as_instructor):
        session = planned(kits_for=3)
        cancel_class(None, session, session.revision)

        assert "This class is cancelled" in page(as_instructor, session, name)

    def test_names_what_is_missing(self, as_instructor):
        words = page(as_instructor, planned(kits_for=3))

        assert "Not all of it can be had" in words
        assert SQUARE in words

    def test_isnt_shown_to_staff_of_another_workshop(self, sign_in_as: SignInAs):
        session = planned(kits_for=3)

        answer = sign_in_as(Role.HELPER, room()).get(reverse("classes:kit", args=[session.pk]))

        assert answer.status_code == 404

    def test_hostile_text_of_the_stores_is_only_text(self, as_instructor):
        HeldFactory(article=article("Paper towel", "consumed", name="<script>alert(1)</script>"), amount=5)

        answer = as_instructor.get(reverse("classes:kit", args=[planned(kits_for=3).pk]))

        assert "<script>alert" not in answer.content.decode()


class TestTheOrderPage:
    def test_has_each_suppliers_lines_and_sums(self, as_instructor):
        words = page(as_instructor, knobs(), "order")

        assert "Reed Mill Our customer number: K 211" in words
        assert "Paper towel roll of 50 1 3.20 EUR 3.20 EUR" in words
        assert "Sandpaper P120 one sheet 2 0.90 EUR 1.80 EUR" in words
        assert "Sum of this order 7.70 EUR" in words
        assert "Sum of this order 5.40 EUR" in words

    def test_says_by_how_much_an_order_is_too_small(self, as_instructor):
        """The goods are 3.20, the least order is 10.00."""
        words = page(as_instructor, knobs(), "order")

        assert (
            "Reed Mill takes orders from 10.00 EUR. The goods come to 3.20 EUR, 6.80 EUR too little." in words
        )

    def test_with_nothing_to_buy_says_so(self, as_instructor):
        session = planned(kits_for=0, demonstrations=0)

        words = page(as_instructor, session, "order")

        assert "Nothing has to be ordered: all that is needed lies on the shelf." in words

    def test_lists_what_nobody_sells(self, as_instructor):
        words = page(as_instructor, planned(kits_for=3), "order")

        assert "Nothing can be ordered: nobody sells what is still needed." in words
        assert "Not in the order" in words
        assert "Wood glue" in words

    def test_an_unknown_paper_is_answered_beside_the_field(self, as_instructor):
        answer = pdf(as_instructor, planned(kits_for=3), "slate")

        assert answer.status_code == 422
        assert "Choose A4 or Letter." in answer.content.decode()

    def test_without_the_type_setting_library_the_page_names_the_cure(self, as_instructor, monkeypatch):
        def unavailable(*_args: object, **_more: object) -> None:
            raise PrintingUnavailable

        monkeypatch.setattr("club.classes.views.kit.render_pdf", unavailable)

        answer = pdf(as_instructor, planned(kits_for=3))

        assert answer.status_code == 503
        assert "libpango-1.0-0" in answer.content.decode()


@pytest.mark.pdf
class TestTheOrderOnPaper:
    @pytest.mark.parametrize(("paper", "size"), [("a4", A4), ("letter", LETTER)])
    def test_is_tagged_and_of_the_size_that_was_asked_for(self, as_instructor, paper, size):
        made = pdf(as_instructor, knobs(), paper).content

        assert {tuple(round(side, 1) for side in found) for found in page_sizes(made)} == {size}
        assert catalog(made)["/MarkInfo"]["/Marked"].value is True
        assert not any(font.startswith("*") for font in fonts(made))

    def test_has_one_sheet_for_each_supplier_in_the_order_of_their_names(self, as_instructor):
        yard, mill = sheets(as_instructor, knobs())

        assert "Corn Yard" in yard
        assert "Reed Mill Weir Lane 3 Quernby" in mill
        assert "Reed Mill" not in yard
        assert "Corn Yard" not in mill

    def test_has_the_numbers_of_the_page(self, as_instructor):
        session = knobs()

        money = re.compile(r"\d+\.\d\d EUR")
        paper = money.findall(" ".join(sheets(as_instructor, session)))
        shown = money.findall(page(as_instructor, session, "order"))

        # The club's own remarks stay off the paper: the sum of all, and what the least order lacks.
        assert sorted({*paper, "13.10 EUR", "6.80 EUR", "10.00 EUR"}) == sorted(set(shown))
        for amount in ("1.80 EUR", "5.40 EUR", "3.20 EUR", "4.50 EUR", "7.70 EUR"):
            assert amount in paper

    def test_carries_the_title_block_the_day_and_our_number(self, as_instructor):
        yard, mill = sheets(as_instructor, knobs())

        assert "Material order" in yard
        assert "Drawer knob, 7 March 2030" in yard
        assert f"{timezone.localdate():%d}".lstrip("0") in yard
        assert yard.endswith("1 / 2")
        assert mill.endswith("2 / 2")
        assert "Our customer number: K 211" in mill
        assert "too little" not in mill
        assert "Prices with tax." in mill

    def test_says_where_it_goes_for_which_day_and_whom_to_ask(self, as_instructor):
        session = knobs()
        session.workshop.address = "Above the Tile Works\nQuernby"
        session.workshop.save()

        yard, _mill = sheets(as_instructor, session)

        assert f"deliver to {session.workshop} Above the Tile Works Quernby" in yard
        assert "For a class on Thursday 7 March 2030" in yard
        assert f"Ask for {as_instructor.account.person}" in yard

    def test_of_a_cancelled_class_is_not_made(self, as_instructor):
        session = knobs()
        cancel_class(None, session, session.revision)

        answer = pdf(as_instructor, session)

        assert answer.status_code == 422
        assert "This class is cancelled" in answer.content.decode()
        assert "Print it" not in answer.content.decode()

    def test_with_nothing_to_buy_is_one_sheet_that_says_so(self, as_instructor):
        (sheet,) = sheets(as_instructor, planned(kits_for=0, demonstrations=0))

        assert "Nothing has to be ordered" in sheet

    def test_drops_nothing_that_nobody_sells(self, as_instructor):
        evening_a()

        *_orders, last = sheets(as_instructor, planned(kits_for=12))

        assert "Not in the order" in last
        assert "3.9 g short: nobody is known to sell it." in last
