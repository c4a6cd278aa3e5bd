"""The whole way: from the sign-in to the material order and a handout for every student of the next class.

Presses are counted, and the numbers on paper are those a careful person gets by hand.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any

import pytest
from django.utils import timezone
from playwright.sync_api import BrowserContext, Page, expect
from pypdf import PdfReader

from club.classes.models import ClassSession, SignUp
from club.classes.sentences import day_words
from club.home.demonstration import load_demonstration
from tests.browser.walking import Coordinator, words_of_pdf

INSTRUCTOR = "pavo"
MOST_PRESSES = 10
# Counts whatever a hand presses: a click of the mouse or the key that sends a form.
COUNTER = """
() => {
  window.addEventListener("click", (event) => event.isTrusted && event.detail && window.pressed(), true);
  window.addEventListener("keydown", (event) => event.key === "Enter" && window.pressed(), true);
}
"""


class Presses:
    """How often the mouse was clicked or Enter pressed, on every page of a context."""

    def __init__(self, context: BrowserContext) -> None:
        self.count = 0
        context.expose_function("pressed", self.press)
        context.add_init_script(f"({COUNTER})()")

    def press(self) -> None:
        self.count += 1


@pytest.fixture
def context_here(new_context: Any, live_server: Any) -> BrowserContext:
    context: BrowserContext = new_context(base_url=live_server.url)
    return context


@pytest.fixture
def next_class(live_server: Any) -> ClassSession:
    load_demonstration()
    return ClassSession.objects.planned().coming(timezone.now()).whole()[0]


def people_in(session: ClassSession) -> list[SignUp]:
    return [row for row in session.sign_ups.all() if row.state == SignUp.State.IN]


@pytest.mark.pdf
def test_within_ten_presses_of_the_sign_in_there_are_order_and_handouts(
    context_here: BrowserContext, next_class: ClassSession
):
    presses = Presses(context_here)
    instructor = Coordinator(context_here)

    instructor.sign_in(INSTRUCTOR)
    instructor.sees_heading(f"What is left before {day_words(next_class.day)}")
    instructor.page.get_by_role("link", name="See the order").click()
    order = prints(instructor.page, "Print it")
    instructor.page.locator("header.rail").get_by_role("link", name="Handwheel").click()
    instructor.follow("Print the handouts")
    handouts = prints(instructor.page, "Print them all")

    assert 3 <= presses.count <= MOST_PRESSES
    assert_order_adds_up(order)
    assert_each_student_has_a_handout(handouts, next_class)


def prints(page: Page, button: str) -> bytes:
    """What comes when this button is pressed, as a file: Chromium shows a PDF where no test can read it."""
    page.route("**/*.pdf?*", _as_a_download)
    with page.expect_download(timeout=300_000) as coming:
        page.get_by_role("button", name=button, exact=True).click(no_wait_after=True, timeout=300_000)
    return coming.value.path().read_bytes()


def _as_a_download(route: Any) -> None:
    answer = route.fetch(timeout=300_000)
    route.fulfill(response=answer, headers={**answer.headers, "content-disposition": "attachment"})


def assert_order_adds_up(order: bytes) -> None:
    """On each sheet, goods (how many times the price) and delivery make the sum."""
    sheets = [page.extract_text() for page in PdfReader(io.BytesIO(order)).pages]
    assert len(sheets) >= 2
    for sheet in sheets:
        assert "Material order" in sheet
        lines = list(priced_lines(sheet))
        assert lines
        for count, price, total in lines:
            assert count * price == total
        goods = sum(total for _, _, total in lines)
        assert amount_after(sheet, "Sum") == goods + amount_after(sheet, "Delivery")


def priced_lines(sheet: str) -> Iterator[tuple[int, int, int]]:
    """How many, price of one and sum, in minor units, of every line with two prices."""
    for line in sheet.splitlines():
        prices = [minor(word) for word in line.split() if is_price(word)]
        if len(prices) == 2:
            yield int(line.split()[0]), prices[0], prices[1]


def is_price(word: str) -> bool:
    whole, _, part = word.partition(".")
    return whole.isdecimal() and len(part) == 2 and part.isdecimal()


def minor(word: str) -> int:
    return int(word.replace(".", ""))


def amount_after(sheet: str, name: str) -> int:
    """The price on the line that begins with this word; nought where there is none."""
    lines = [line for line in sheet.splitlines() if line.split()[:1] == [name]]
    prices = [minor(word) for line in lines for word in line.split() if is_price(word)]
    return prices[-1] if prices else 0


def assert_each_student_has_a_handout(handouts: bytes, session: ClassSession) -> None:
    sheets = [" ".join(page.extract_text().split()) for page in PdfReader(io.BytesIO(handouts)).pages]
    people = people_in(session)
    assert people
    for row in people:
        own = [sheet for sheet in sheets if row.person.name in sheet]
        assert own, row.person.name
        assert all(f"kit {row.kit}" in sheet for sheet in own)
        assert row.place is None or all(row.place.name in sheet for sheet in own)
    assert len(sheets) % len(people) == 0


@pytest.mark.pdf
def test_a_student_finds_lathe_and_kit_on_the_list_on_the_wall_and_on_the_page(
    context_here: BrowserContext, next_class: ClassSession
):
    """The instructor holds the page out to the student; the printed list hangs at the door."""
    instructor = Coordinator(context_here)
    instructor.sign_in(INSTRUCTOR)
    instructor.follow("Open the class")
    instructor.page.get_by_role("link", name="Print the class list").click()
    words = words_of_pdf(prints(instructor.page, "Print the list"))

    for row in people_in(next_class):
        line = instructor.page.locator("main tr", has_text=row.person.name)
        expect(line).to_have_count(1)
        assert row.place
        assert row.lathe
        for said in (row.place.name, f"lathe {row.lathe.number}", f"kit {row.kit}"):
            expect(line).to_contain_text(said)
        after = words[words.index(row.person.name) :][:120]
        assert f"{row.person.name} {row.place.name} lathe {row.lathe.number}" in after
        assert f"kit {row.kit}" in after


def test_an_instructor_plans_a_class_signs_somebody_up_and_moves_them(
    context_here: BrowserContext, next_class: ClassSession
):
    instructor = Coordinator(context_here)
    page = instructor.page
    instructor.sign_in(INSTRUCTOR)
    instructor.goes_to("Classes")
    instructor.follow("Plan a class")
    page.get_by_label("Project").select_option(label="Garden dibber, edition 1")
    page.get_by_label("Workshop").select_option(label="Sluice Room")
    instructor.press("Go on")
    page.get_by_label("Day").fill("2031-03-06")
    page.get_by_label("Begins").fill("18:30")
    page.get_by_label("Instructor").select_option(label="Pavo Lind")
    expect(page.get_by_text("Time, sittings and lathes stand as they were on")).to_be_visible()
    instructor.press("Plan the class")
    instructor.sees_heading("Garden dibber")

    page.get_by_role("link", name="free").first.click()
    place = page.get_by_label("Place").input_value()
    person = page.get_by_label("Person")
    person.select_option(index=1)
    name = person.locator("option:checked").inner_text()
    instructor.press("Sign them up")
    expect(page.get_by_text(f"{name} is in: place {place}, kit 1.")).to_be_visible()

    page.get_by_role("link", name=name).first.click()
    free = page.get_by_label("To the free place")
    free.select_option(index=1)
    other = free.input_value()
    instructor.press("Move there")
    expect(page.get_by_text(f"{name} now has place {other}.")).to_be_visible()
    row = SignUp.objects.get(class_session__day="2031-03-06")
    assert other != place
    assert (row.place and row.place.name, row.kit) == (other, 1)
