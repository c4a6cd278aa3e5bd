"""All by keyboard: every action has its turn, in the order it is read, and one sees whose turn it is."""

from __future__ import annotations

from typing import Any

import pytest
from django.test import Client
from playwright.sync_api import Page, expect

from club.home.demonstration import load_demonstration
from club.lathes.models import Lathe
from club.people.models import Account
from tests.browser.furnished import COORDINATOR
from tests.browser.looking import signed_in

# Gives each thing that can be pressed, typed in or scrolled its number, in the order of the page; how many.
# Of a group of rings the keyboard stops at the chosen one, and goes on to the others with the arrows.
NUMBER = """
() => {
  const stops = [...document.querySelectorAll(
    'a[href], button, input, select, textarea, summary, [tabindex="0"]')]
    .filter(thing => thing.checkVisibility() && !thing.matches('[type=hidden], [type=radio]:not(:checked)'));
  stops.forEach((thing, number) => thing.dataset.stop = number);
  return stops.length;
}
"""
# Where the focus is now: the number, its outline in px, and whether anything covers it.
HERE = """
() => {
  const here = document.activeElement, box = here.getBoundingClientRect(), style = getComputedStyle(here);
  const near = length => Math.min(length, 20) / 2;
  const over = document.elementFromPoint(box.x + near(box.width), box.y + near(box.height));
  return {
    number: 'stop' in here.dataset ? Number(here.dataset.stop) : null,
    outline: style.outlineStyle === 'none' ? 0 : parseFloat(style.outlineWidth),
    covered: !(here.contains(over) || over?.contains(here)),
    name: here.textContent.trim() || here.name,
  };
}
"""


@pytest.fixture
def staff(browser: Any, live_server: Any) -> Any:
    """A page on which the coordinator of the demonstration has signed in."""
    load_demonstration()
    client = Client()
    client.force_login(Account.objects.get(name=COORDINATOR))
    with signed_in(browser, live_server.url, client) as context:
        yield context.new_page()


@pytest.fixture
def lathe(staff: Page) -> Lathe:
    found: Lathe = Lathe.objects.get(workshop__name="Sluice Room", number=5)
    return found


def stops(page: Page) -> list[dict[str, Any]]:
    """Each place where the Tab key stops, once round the page."""
    found = []
    for _ in range(page.evaluate(NUMBER)):
        page.keyboard.press("Tab")
        found.append(page.evaluate(HERE))
    return found


def tab_to(page: Page, role: Any, name: str) -> None:
    """Press Tab until this has the focus."""
    wanted = page.get_by_role(role, name=name, exact=True)
    for _ in range(100):
        page.keyboard.press("Tab")
        if wanted.evaluate("thing => thing === document.activeElement"):
            return
    pytest.fail(f"Tab never comes to the {role} {name}")


@pytest.mark.parametrize(
    "path", ["/lathes/", "/lathes/new/", "/lathes/{pk}/", "/lathes/{pk}/mend/", "/people/"]
)
def test_tab_stops_at_everything_in_the_order_it_is_read(staff: Page, lathe: Lathe, path: str):
    staff.goto(path.format(pk=lathe.pk))

    found = stops(staff)

    assert [stop["number"] for stop in found] == list(range(len(found)))


# WCAG 2.2 (W3C), 2.4.7 Focus Visible and 2.4.11 Focus Not Obscured; 2.4.13 asks for an outline of 2 px.
@pytest.mark.parametrize("path", ["/lathes/", "/lathes/{pk}/mend/"])
def test_one_sees_where_the_keyboard_is(staff: Page, lathe: Lathe, path: str):
    staff.goto(path.format(pk=lathe.pk))

    found = stops(staff)

    assert [stop for stop in found if stop["outline"] < 2 or stop["covered"]] == []


def test_the_first_stop_skips_what_every_page_has(staff: Page):
    staff.goto("/lathes/")

    staff.keyboard.press("Tab")
    expect(staff.get_by_role("link", name="To the page")).to_be_in_viewport()
    staff.keyboard.press("Enter")
    staff.keyboard.press("Tab")

    expect(staff.locator("main :focus")).to_have_count(1)


def test_a_lathe_is_found_and_mended_by_keyboard_alone(staff: Page):
    staff.goto("/lathes/")
    tab_to(staff, "textbox", "Number or words")
    staff.keyboard.type("60533")
    expect(staff.locator("#lathes tbody tr")).to_have_count(1)
    tab_to(staff, "link", "Lathe 5, Sluice Room")
    staff.keyboard.press("Enter")
    tab_to(staff, "link", "Mend this lathe")
    staff.keyboard.press("Enter")

    tab_to(staff, "radio", "limited")
    staff.keyboard.press("ArrowUp")
    tab_to(staff, "textbox", "Reason, or what to mind may be left empty")
    staff.keyboard.press("ControlOrMeta+A")
    staff.keyboard.press("Delete")
    tab_to(staff, "button", "Save the lathe")
    staff.keyboard.press("Enter")

    expect(staff.get_by_role("heading", level=1)).to_have_text("Lathe 5")
    expect(staff.locator(".block .state")).to_have_text("in service")
