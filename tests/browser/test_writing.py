"""Writing a draft by keyboard alone, with scripts and without."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from django.test import Client
from playwright.sync_api import Browser, Page, expect

from club.base.roles import Role
from projects.library.models import Edition
from tests.browser.looking import signed_in
from tests.factories import AccountFactory, RoleGrantFactory
from tests.projects.library.rows import draft

DRAFT = "/projects/drawer-knob/draft/"
MARKS = f"{DRAFT}marks/"


@pytest.fixture
def client(transactional_db: None) -> Client:
    draft()
    account = AccountFactory()
    RoleGrantFactory(person=account.person, role=Role.INSTRUCTOR.value)
    client = Client()
    client.force_login(account)
    return client


@pytest.fixture
def page(browser: Browser, live_server: Any, client: Client) -> Iterator[Page]:
    with signed_in(browser, live_server.url, client) as context:
        yield context.new_page()


@pytest.fixture
def plain_page(browser: Browser, live_server: Any, client: Client) -> Iterator[Page]:
    """A browser without scripts."""
    session = client.cookies["sessionid"]
    with browser.new_context(base_url=live_server.url, java_script_enabled=False) as context:
        context.add_cookies([{"name": session.key, "value": session.value, "url": live_server.url}])
        yield context.new_page()


def write_over(page: Page, text: str) -> None:
    page.keyboard.press("Control+A")
    page.keyboard.type(text)
    page.keyboard.press("Tab")


def test_the_drawing_and_the_facts_follow_what_is_typed_and_the_keyboard_goes_on(page: Page):
    page.goto(MARKS)
    page.locator("#id_outside-3-at").focus()

    write_over(page, "2 in")

    expect(page.locator("#follows-facts")).to_contain_text("2 in")
    expect(page.locator("#id_outside-3-diameter")).to_be_focused()
    expect(page.locator("#id_outside-3-at")).to_have_value("2 in")


def test_what_is_wrong_comes_beside_its_row_and_goes_once_it_is_right(page: Page):
    page.goto(MARKS)
    page.locator("#id_outside-1-measure").focus()

    write_over(page, "3 mm")
    expect(page.locator("#why-outside-1 .why")).to_be_visible()
    page.locator("#id_outside-1-measure").focus()
    page.keyboard.press("Control+A")
    page.keyboard.press("Delete")
    page.keyboard.press("Tab")

    expect(page.locator("#why-outside-1 .why")).to_have_count(0)
    expect(page.locator("#follows svg").first).to_be_visible()


def test_a_new_row_comes_under_the_one_that_is_typed_in_and_is_typed_in_next(page: Page):
    page.goto(MARKS)
    page.locator("#id_outside-1-at").focus()

    page.get_by_role("button", name="Row under it").focus()
    page.keyboard.press("Enter")

    expect(page.locator("#id_outside-2-at")).to_be_focused()
    expect(page.locator("#id_outside-2-at")).to_have_value("")
    expect(page.locator("#id_outside-3-at")).to_have_value("1 in")


def test_an_entry_goes_up_as_often_as_enter_is_pressed(page: Page):
    page.goto(DRAFT)
    page.locator("button[name=up][value='materials.3']").focus()

    for at in (2, 1):
        page.keyboard.press("Enter")
        expect(page.locator(f"button[name=up][value='materials.{at}']")).to_be_focused()
    page.keyboard.press("Enter")

    expect(page.locator("button[name=down][value='materials.0']")).to_be_focused()
    assert Edition.objects.get().recipe.materials[0].key == "oil"


def test_without_scripts_an_entry_goes_up_as_often_as_enter_is_pressed(plain_page: Page):
    plain_page.goto(DRAFT)
    plain_page.locator("button[name=up][value='materials.3']").focus()

    for at in (2, 1):
        plain_page.keyboard.press("Enter")
        expect(plain_page.locator(f"button[name=up][value='materials.{at}']")).to_be_focused()


def test_without_scripts_enter_shows_the_drawing_and_a_press_saves_it(plain_page: Page):
    plain_page.goto(MARKS)

    plain_page.fill("#id_outside-3-at", "2 in")
    plain_page.locator("#id_outside-3-at").press("Enter")
    expect(plain_page.locator("#follows-facts")).to_contain_text("2 in")
    plain_page.get_by_role("button", name="Save the drawing").press("Enter")

    expect(plain_page.get_by_text("The drawing is saved.")).to_be_visible()
    assert Edition.objects.get().recipe.profile.marks[3].at.typed == "2 in"


def test_without_scripts_the_number_of_a_row_chooses_it(plain_page: Page):
    plain_page.goto(MARKS)

    plain_page.get_by_role("radio", name="mark 2, this row").check()
    plain_page.get_by_role("button", name="Take it out").press("Enter")

    expect(plain_page.locator("#id_outside-1-at")).to_have_value("1 in")
    expect(plain_page.locator("#id_outside-3-at")).to_have_count(0)
