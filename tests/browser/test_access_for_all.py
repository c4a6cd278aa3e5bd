"""Every page for everybody: by eye and by ear, on a desk and a phone, by finger and by keyboard."""

from __future__ import annotations

from typing import Any

import pytest
from django.core.management import call_command
from playwright.sync_api import Browser

from tests.browser.furnished import furnish, furnish_nothing
from tests.browser.looking import Look, look_at_all
from tests.browser.pages import EMPTY_CLUB, SAMPLES

ALL = (*SAMPLES, *EMPTY_CLUB)


@pytest.fixture(scope="module")
def looks(
    browser: Browser, live_server: Any, django_db_setup: None, django_db_blocker: Any
) -> dict[str, Look]:
    """What was found on every page, by its sample's name; each is opened once."""
    found: dict[str, Look] = {}
    with django_db_blocker.unblock():
        for samples, set_up in ((EMPTY_CLUB, furnish_nothing), (SAMPLES, furnish)):
            try:
                found |= look_at_all(browser, live_server.url, samples, set_up())
            finally:
                call_command("flush", verbosity=0, interactive=False)
    return found


def told(looks: dict[str, Look], kind: str) -> str:
    """What was found of this kind, a line to each."""
    return "\n".join(f"{name}: {line}" for name, look in looks.items() for line in getattr(look, kind))


def test_every_page_was_seen_in_the_state_its_sample_is_about(looks: dict[str, Look]):
    assert {name: look.status for name, look in looks.items()} == {s.name: s.status for s in ALL}


# Rules of axe-core for WCAG 2.2 (W3C), levels A and AA.
def test_axe_finds_nothing_on_any_page(looks: dict[str, Look]):
    found = told(looks, "violations")

    assert not found, found


# WCAG 2.2 (W3C), 1.4.10 Reflow: down to 320 px.
def test_no_page_scrolls_sideways(looks: dict[str, Look]):
    found = told(looks, "sideways")

    assert not found, found


def test_whatever_can_be_pressed_is_large_enough_for_a_finger(looks: dict[str, Look]):
    found = told(looks, "small")

    assert not found, found


def test_only_these_links_stand_in_a_line_of_text(looks: dict[str, Look]):
    assert {words for look in looks.values() for words in look.in_line} == {"where to measure"}


def test_no_page_complains_to_the_console(looks: dict[str, Look]):
    found = told(looks, "complaints")

    assert not found, found


def test_no_page_asks_another_host(looks: dict[str, Look]):
    found = told(looks, "outside")

    assert not found, found
