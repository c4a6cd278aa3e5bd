"""A coordinator at a browser, one step after another, with scripts or without."""

from __future__ import annotations

import io
import re
from pathlib import Path

from playwright.sync_api import BrowserContext, FilePayload, Locator, Route, expect
from pypdf import PdfReader

from club.home.demonstration import PASSWORD

# How many units of a drawing one pixel shows: the same for every lathe of a list.
SCALES = """
svgs => svgs.map(svg => svg.viewBox.baseVal.width / svg.getBoundingClientRect().width)
"""


class Coordinator:
    """Reads and presses what stands on the page, and types as a hand does."""

    def __init__(self, context: BrowserContext) -> None:
        self.page = context.new_page()

    def sign_in(self, name: str, password: str = PASSWORD) -> None:
        self.page.goto("/")
        self.page.get_by_label("Sign-in name").press_sequentially(name)
        self.page.get_by_label("Password").press_sequentially(password)
        self.page.keyboard.press("Enter")
        expect(self.page.get_by_role("button", name="Sign out").first).to_be_visible()

    def goes_to(self, way: str) -> None:
        """By the rail."""
        self.page.locator("header.rail").get_by_role("link", name=way, exact=True).first.click()
        self.sees_heading(way)

    def sees_heading(self, words: str) -> None:
        expect(self.page.get_by_role("heading", level=1)).to_have_text(words)

    def follow(self, words: str) -> None:
        self.page.locator("main").get_by_role("link", name=words, exact=True).click()

    def press(self, words: str) -> None:
        self.page.get_by_role("button", name=words, exact=True).click()

    def type(self, label: str, text: str) -> None:
        """In place of what stands in the field."""
        self.page.get_by_label(label).fill("")
        self.page.get_by_label(label).press_sequentially(text)

    @property
    def lathes(self) -> Locator:
        """The rows of the list of lathes."""
        return self.page.locator("#lathes tbody tr")

    @property
    def alert(self) -> Locator:
        return self.page.get_by_role("alert")

    def scales(self) -> list[float]:
        """The scale of each lathe that is drawn in the list."""
        scales: list[float] = self.page.locator("#lathes svg.small").evaluate_all(SCALES)
        return scales

    def add_workshop(self, name: str, address: str, zone: str) -> None:
        self.page.goto("/lathes/workshops/")
        self.follow("Add a workshop")
        self.type("Name", name)
        self.page.get_by_label("Address").fill(address)
        self.type("Time zone", zone)
        self.press("Save the workshop")
        self.sees_heading(name)

    def choose_file(self, content: bytes) -> None:
        chosen = FilePayload(name="lathes.csv", mimeType="text/csv", buffer=content)
        self.page.get_by_label("File").set_input_files(chosen)

    def take_away(self, link: str) -> bytes:
        """What comes down when the link is followed."""
        self.page.route("**/*.pdf?*", as_a_download)
        with self.page.expect_download() as coming:
            self.follow(link)
        return Path(coming.value.path()).read_bytes()


def as_a_download(route: Route) -> None:
    """Chromium would show a PDF in a viewer that no test can read."""
    answer = route.fetch()
    route.fulfill(response=answer, headers={**answer.headers, "content-disposition": "attachment"})


def words_of_pdf(pdf: bytes) -> str:
    """All its words, with single spaces between."""
    pages = PdfReader(io.BytesIO(pdf)).pages
    return " ".join(" ".join(page.extract_text().split()) for page in pages)


def address_on_card(words: str) -> str:
    """The path that is printed at a card's foot, to be typed by hand."""
    found = re.search(r"localhost:\d+(/\S+)", words)
    assert found, f"no address on the card: {words}"
    return found[1]
