"""The whole way: lathes come in from a list; a coordinator sees them drawn, mends one and prints its card."""

from __future__ import annotations

import re
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, expect

from club.home.demonstration import FOLDER, load_demonstration
from tests.browser.furnished import COORDINATOR, furnish_nothing
from tests.browser.looking import SIDEWAYS
from tests.browser.walking import Coordinator, address_on_card, words_of_pdf
from tests.factories import PASSWORD

LIST = (FOLDER / "lathes.csv").read_text(encoding="utf-8")
# What stands in the demonstration's list, the slip of the pen in its place, and the line it is in.
MISTAKES = {
    "9/16 in": ("9/0 in", 2),
    "Sluice Room,2,": ("Slucie Room,2,", 3),
    'Room,4,"Tisch': ('Room,3,"Tisch', 5),
    "belt 1: 60-900": ("belt 1: 900-60", 7),
}


@pytest.fixture(params=[True, False], ids=["with scripts", "without scripts"])
def scripts(request: pytest.FixtureRequest) -> bool:
    return bool(request.param)


@pytest.fixture
def coordinator(new_context: Any, live_server: Any, scripts: bool) -> Coordinator:
    context: BrowserContext = new_context(base_url=live_server.url, java_script_enabled=scripts)
    return Coordinator(context)


@pytest.fixture
def stranger(new_context: Any, live_server: Any) -> Any:
    """Somebody's phone, on which nobody has signed in."""
    context: BrowserContext = new_context(
        base_url=live_server.url, viewport={"width": 360, "height": 740}, has_touch=True
    )
    return context.new_page()


@pytest.mark.pdf
def test_a_coordinator_goes_from_the_sign_in_to_a_card_that_opens_on_any_phone(
    coordinator: Coordinator, stranger: Any, scripts: bool
):
    load_demonstration()
    coordinator.sign_in(COORDINATOR)
    coordinator.goes_to("Lathes")

    sees_every_lathe_drawn_to_one_scale(coordinator, 14)
    narrows_down(coordinator, scripts)
    mends_the_bore(coordinator)
    card = prints_the_card(coordinator)
    opens_the_card(stranger, address_on_card(card))


def test_a_club_brings_in_its_own_list_and_mends_it_on_the_page(coordinator: Coordinator):
    furnish_nothing()
    coordinator.sign_in(COORDINATOR, PASSWORD)
    coordinator.goes_to("Lathes")
    expect(coordinator.page.get_by_text("No lathe is in the list yet.")).to_be_visible()
    coordinator.add_workshop("Sluice Room", "3 Weir Lane", "Europe/London")
    coordinator.add_workshop("Kiln Loft", "18 Furnace Row", "Europe/London")

    looks_over_a_list_with_mistakes(coordinator)
    mends_it_in_the_lines(coordinator)
    brings_it_in(coordinator)

    sees_every_lathe_drawn_to_one_scale(coordinator, 14)
    takes_the_list_away_and_back(coordinator)


def sees_every_lathe_drawn_to_one_scale(coordinator: Coordinator, count: int) -> None:
    expect(coordinator.lathes).to_have_count(count)
    scales = coordinator.scales()

    assert len(scales) == count
    assert max(scales) - min(scales) < 0.01 * min(scales)


def narrows_down(coordinator: Coordinator, scripts: bool) -> None:
    """With scripts the list alone is asked for anew, and what is typed stays under the cursor."""
    page = coordinator.page
    heading = page.get_by_role("heading", level=1)
    if scripts:
        heading.evaluate("heading => heading.stays = true")
        with page.expect_response(lambda answer: "q=60533" in answer.url) as coming:
            coordinator.type("Number or words", "60533")
        expect(coordinator.lathes).to_have_count(1)
        assert coming.value.request.headers["hx-request"] == "true"
        assert coming.value.text().lstrip().startswith('<p class="cap" role="status">')
        assert heading.evaluate("heading => heading.stays === true")
        expect(page.get_by_label("Number or words")).to_be_focused()
        expect(page).to_have_url(re.compile("q=60533"))
    else:
        coordinator.type("Number or words", "60533")
        coordinator.press("Show these")
        expect(coordinator.lathes).to_have_count(1)


def mends_the_bore(coordinator: Coordinator) -> None:
    page = coordinator.page
    bore = page.get_by_label("Through bore")
    coordinator.follow("Lathe 5, Sluice Room")
    coordinator.follow("Mend this lathe")

    coordinator.type("Through bore", "2 3/0 in")
    coordinator.press("Save the lathe")
    expect(coordinator.alert).to_contain_text("Not saved")
    coordinator.alert.get_by_role("link", name="Through bore").click()
    expect(bore).to_be_focused()
    expect(bore).to_have_value("2 3/0 in")

    page.keyboard.press("ControlOrMeta+A")
    page.keyboard.type('9/16"')
    page.keyboard.press("Enter")
    expect(page.get_by_role("status")).to_contain_text("Lathe 5")
    expect(page.locator(".block")).to_contain_text("9/16")
    latest = page.get_by_role("region", name="Changes").get_by_role("listitem").first
    expect(latest).to_contain_text("Ilse Brandt")
    expect(latest).to_contain_text('Through bore: 1/2 in, now 9/16"')


def prints_the_card(coordinator: Coordinator) -> str:
    """The words on it."""
    words = words_of_pdf(coordinator.take_away("Print its card, A4"))

    assert "Lathe 5" in words
    assert 'bore 9/16"' in words
    return words


def opens_the_card(stranger: Any, path: str) -> None:
    stranger.goto(path)

    expect(stranger.get_by_role("heading", level=1)).to_have_text("Lathe 5")
    expect(stranger.get_by_role("definition").filter(has_text='9/16"')).to_be_visible()
    assert stranger.evaluate(SIDEWAYS) == 0
    assert stranger.context.cookies() == []


def looks_over_a_list_with_mistakes(coordinator: Coordinator) -> None:
    wrong = LIST
    for right, (slip, _line) in MISTAKES.items():
        wrong = wrong.replace(right, slip, 1)
    coordinator.page.goto("/lathes/")
    coordinator.follow("Bring in a list")
    coordinator.choose_file(wrong.encode())
    coordinator.press("Look it over")

    expect(coordinator.alert).to_contain_text(f"Nothing was written: {len(MISTAKES)} things to mend")
    said = coordinator.alert.get_by_role("listitem").all_inner_texts()
    assert [int(words.split()[1].strip(",:")) for words in said] == [
        line for _slip, line in MISTAKES.values()
    ]


def mends_it_in_the_lines(coordinator: Coordinator) -> None:
    lines = coordinator.page.get_by_label("Lines")
    text = lines.input_value()
    for right, (slip, _line) in MISTAKES.items():
        text = text.replace(slip, right, 1)
    lines.fill(text)
    coordinator.press("Look it over again")

    expect(coordinator.page.locator("#looked-over")).to_contain_text("14 lathes are new")


def brings_it_in(coordinator: Coordinator) -> None:
    coordinator.press("Bring the list in")

    expect(coordinator.page.get_by_role("status").first).to_contain_text("All 14 lines are in.")


def takes_the_list_away_and_back(coordinator: Coordinator) -> None:
    taken = coordinator.take_away("Take the list away as CSV")
    coordinator.follow("Bring in a list")
    coordinator.choose_file(taken)
    coordinator.press("Look it over")

    expect(coordinator.page.locator("#looked-over")).to_contain_text("14 stay as they are")
