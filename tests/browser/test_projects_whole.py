"""The whole way: an instructor finds a project, mends its drawing, keeps the next edition and prints it."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import BrowserContext, expect

from club.home.demonstration import load_demonstration
from tests.browser.looking import SIDEWAYS
from tests.browser.walking import Coordinator, words_of_pdf

INSTRUCTOR = "pavo"


@pytest.fixture(params=[True, False], ids=["with scripts", "without scripts"])
def instructor(request: pytest.FixtureRequest, new_context: Any, live_server: Any) -> Coordinator:
    context: BrowserContext = new_context(base_url=live_server.url, java_script_enabled=request.param)
    walker = Coordinator(context)
    load_demonstration()
    walker.sign_in(INSTRUCTOR)
    return walker


@pytest.mark.pdf
def test_an_instructor_mends_a_drawing_keeps_the_edition_and_prints_a_handout(instructor: Coordinator):
    finds_the_dibber(instructor)
    mass = fact(instructor, "mass")
    begins_the_next_edition(instructor)
    makes_it_thicker(instructor)
    keeps_it(instructor)

    assert fact(instructor, "mass") != mass
    sees_what_differs(instructor)
    prints_the_handout(instructor)


def finds_the_dibber(instructor: Coordinator) -> None:
    page = instructor.page
    page.get_by_role("link", name="Projects", exact=True).first.click()
    instructor.sees_heading("Projects")
    expect(page.locator("#projects tbody tr")).to_have_count(8)
    page.get_by_label("Words").press_sequentially("depth")
    page.get_by_role("button", name="Show these").click()
    expect(page.locator("#projects tbody tr")).to_have_count(1)
    instructor.follow("Garden dibber")
    instructor.sees_heading("Garden dibber")
    assert page.evaluate(SIDEWAYS) == 0


def fact(instructor: Coordinator, name: str) -> str:
    """The value that stands beside this name in what follows from the drawing."""
    row = instructor.page.locator(".facts dt", has_text=name).first
    return row.locator("xpath=following-sibling::dd[1]").inner_text()


def begins_the_next_edition(instructor: Coordinator) -> None:
    instructor.press("Begin the next edition")
    expect(instructor.page.get_by_role("heading", name="Drawing").first).to_be_visible()


def makes_it_thicker(instructor: Coordinator) -> None:
    """The blade from 28 to 29 mm across, as one types it into the table of marks."""
    page = instructor.page
    instructor.follow("Write the marks")
    across = page.locator("input[name$='diameter']")
    thick = [number for number in range(across.count()) if across.nth(number).input_value() == "28 mm"]
    across.nth(thick[-1]).fill("29 mm")
    instructor.press("Save the drawing")


def keeps_it(instructor: Coordinator) -> None:
    instructor.follow("Keep as edition 2")
    instructor.press("Keep as edition 2")
    expect(instructor.page.get_by_role("status").first).to_contain_text("edition 2 is kept")
    instructor.sees_heading("Garden dibber")


def sees_what_differs(instructor: Coordinator) -> None:
    instructor.follow("What differs")
    expect(instructor.page.locator("main")).to_contain_text("29")
    instructor.page.go_back()


def prints_the_handout(instructor: Coordinator) -> None:
    words = words_of_pdf(instructor.take_away("Print the handout, A4"))

    assert "Garden dibber" in words
    assert "100 mm" in words
    assert "Full face shield" in words
    assert "not above" in words
