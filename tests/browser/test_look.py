"""What only a browser shows of the look: folding, jumping, and a request that fails."""

from __future__ import annotations

from typing import Any

import pytest
from django.conf import settings
from playwright.sync_api import Page, expect

from club.base.access import Role
from tests.conftest import SignInAs


@pytest.fixture
def staff(page: Page, live_server: Any, sign_in_as: SignInAs) -> Page:
    """A browser in which a coordinator has signed in."""
    client = sign_in_as(Role.COORDINATOR)
    session = client.cookies[settings.SESSION_COOKIE_NAME].value
    page.context.add_cookies(
        [{"name": settings.SESSION_COOKIE_NAME, "value": session, "url": live_server.url}]
    )
    return page


def test_a_request_that_fails_is_said_where_messages_stand(staff, live_server):
    staff.goto(f"{live_server.url}/lathes/workshops/")

    staff.evaluate("htmx.ajax('GET', '/nowhere/', '#main').catch(() => {})")

    expect(staff.locator("#messages")).to_contain_text("No answer")
    expect(staff.locator("#messages .care.caution[role=alert]")).to_have_count(1)
    expect(staff.get_by_role("heading", level=1)).to_have_text("Workshops")


def test_a_server_that_is_gone_is_said_too(staff, live_server):
    staff.goto(f"{live_server.url}/lathes/workshops/")
    staff.context.set_offline(True)

    staff.evaluate("htmx.ajax('GET', '/lathes/', '#main').catch(() => {})")

    expect(staff.locator("#messages")).to_contain_text("No answer")


def test_on_a_phone_the_ways_fold_into_go_to(staff, live_server):
    staff.set_viewport_size({"width": 360, "height": 740})
    staff.goto(f"{live_server.url}/lathes/workshops/")
    people = staff.get_by_role("link", name="People", exact=True)
    expect(people).to_have_count(0)

    staff.get_by_text("Go to", exact=True).click()

    expect(people).to_be_visible()
    expect(staff.get_by_role("button", name="Sign out")).to_be_visible()


def test_the_first_key_leads_past_the_rail(staff, live_server):
    staff.goto(f"{live_server.url}/lathes/workshops/")

    staff.keyboard.press("Tab")
    expect(staff.get_by_role("link", name="To the page")).to_be_in_viewport()
    staff.keyboard.press("Enter")

    expect(staff.locator("main")).to_be_focused()


def test_the_message_on_top_leads_to_the_wrong_field(staff, live_server):
    staff.goto(f"{live_server.url}/lathes/workshops/new/")
    staff.get_by_role("button", name="Save the workshop").click()

    staff.get_by_role("alert").get_by_role("link", name="Name").click()

    expect(staff.get_by_label("Name")).to_be_focused()


@pytest.mark.parametrize("width", [320, 360, 1280])
def test_no_page_scrolls_sideways_in_large_type(staff, live_server, width):
    staff.set_viewport_size({"width": width, "height": 740})
    staff.goto(f"{live_server.url}/lathes/workshops/new/")
    staff.evaluate("document.documentElement.style.setProperty('font-size', '200%')")

    over = staff.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")

    assert over == 0
