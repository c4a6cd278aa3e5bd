"""Look at a page as a browser shows it, at several widths, and note what is wrong with it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from urllib.parse import urlsplit

from axe_playwright_python.sync_playwright import Axe
from django.conf import settings
from django.test import Client
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, Request, ViewportSize

from tests.browser.furnished import Rows
from tests.browser.pages import clients
from tests.browser.samples import Sample

# A desk, a phone, and the narrowest screen that WCAG 2.2 asks for (1.4.10 Reflow).
WIDTHS = (1280, 360, 320)
AXE_WIDTHS = (1280, 360)
HEIGHT = 800
# px; a finger needs no more, and WCAG 2.2 asks for 24 (2.5.8) or, at its highest level, 44 (2.5.5).
LEAST_TARGET = 44
AXE_SCRIPT = Axe().axe_script
# All rules for WCAG 2.2 at levels A and AA.
AXE = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa"],
    "resultTypes": ["violations"],
}
# What is folded away is part of the page too.
UNFOLD = "document.querySelectorAll('details').forEach(details => details.open = true)"
SIDEWAYS = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
FILL = """
typed => {
  const form = document.querySelector('main form[method=post]');
  for (const [name, text] of Object.entries(typed)) {
    const field = form.elements[name];
    if (field instanceof RadioNodeList) field.forEach(ring => ring.checked = ring.value === text);
    else {
      // As a browser without pickers sends it: with one, nothing but a day or a time can be typed.
      if (/^(date|time|datetime-local)$/.test(field.type)) field.type = 'text';
      field.value = text;
    }
  }
}
"""
SUBMIT = "main form[method=post] .acts button"
# Each thing that can be pressed, with its height in px. Left out is what WCAG 2.2 leaves out (2.5.8 Target
# Size): a link in a line of text, and a box or ring whose label, which is measured, takes the press for it.
TARGETS = """
() => [...document.querySelectorAll(
  'a[href], button, input:not([type=hidden]), select, textarea, summary, label.pick')]
  .filter(thing => thing.checkVisibility() && !thing.matches('.pick input, .skip'))
  .map(thing => {
    const words = [...thing.parentElement.childNodes].filter(node => node.nodeType === Node.TEXT_NODE);
    const inLine = thing.matches('a') && getComputedStyle(thing).display === 'inline'
      && words.some(node => node.textContent.trim() !== '');
    const said = thing.matches('a') ? thing.firstChild : thing;
    const name = said.textContent.trim().replace(/\\s+/g, ' ') || thing.name;
    return {inLine, name, height: thing.getBoundingClientRect().height};
  })
"""


@dataclass
class Look:
    """What was found on one page; each list says nothing when all is well."""

    violations: list[str] = field(default_factory=list)
    sideways: list[str] = field(default_factory=list)
    small: list[str] = field(default_factory=list)
    in_line: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)
    outside: list[str] = field(default_factory=list)
    status: int = 0


@contextmanager
def signed_in(browser: Browser, server: str, client: Client) -> Iterator[BrowserContext]:
    """A browser of its own, with the sign-in of this client."""
    session = client.cookies.get(settings.SESSION_COOKIE_NAME)
    desk = ViewportSize(width=WIDTHS[0], height=HEIGHT)
    with browser.new_context(base_url=server, viewport=desk) as context:
        if session:
            context.add_cookies([{"name": session.key, "value": session.value, "url": server}])
        yield context


def look_at_all(browser: Browser, server: str, samples: Iterable[Sample], rows: Rows) -> dict[str, Look]:
    """Look at every sample as its reader, by the sample's name."""
    looks = {}
    for reader, client in clients(samples).items():
        with signed_in(browser, server, client) as context:
            visitor = Visitor(context.new_page(), urlsplit(server).netloc)
            for sample in samples:
                if sample.reader == reader:
                    looks[sample.name] = visitor.look_at(sample, rows)
    return looks


class Visitor:
    """Goes from page to page, hears what the console says and sees which hosts are asked."""

    def __init__(self, page: Page, host: str) -> None:
        self.page = page
        self.host = host
        self.look = Look()
        page.on("console", self._hear)
        page.on("pageerror", lambda error: self.look.complaints.append(str(error)))
        page.on("request", self._see)

    def look_at(self, sample: Sample, rows: Rows) -> Look:
        self.look = Look()
        self.look.status = open_page(self.page, sample, rows)
        self.page.evaluate(UNFOLD)
        self.page.evaluate(AXE_SCRIPT)
        for width in WIDTHS:
            self.page.set_viewport_size({"width": width, "height": HEIGHT})
            self._measure(f"at {width}")
            if width in AXE_WIDTHS:
                self.look.violations += [f"at {width}: {line}" for line in axe(self.page)]
        return self.look

    def _hear(self, message: ConsoleMessage) -> None:
        """A page that was refused, as a sample may be, is no complaint."""
        refused = message.text.startswith("Failed to load resource")
        if message.type in ("error", "warning") and not (
            refused and message.location["url"] == self.page.url
        ):
            self.look.complaints.append(message.text)

    def _see(self, request: Request) -> None:
        if urlsplit(request.url).netloc != self.host:
            self.look.outside.append(request.url)

    def _measure(self, where: str) -> None:
        over = self.page.evaluate(SIDEWAYS)
        if over:
            self.look.sideways.append(f"{over} px {where}")
        for target in self.page.evaluate(TARGETS):
            if target["inLine"]:
                self.look.in_line.append(target["name"])
            elif target["height"] < LEAST_TARGET:
                self.look.small.append(f"{target['name']}, {target['height']:.0f} px {where}")


def open_page(page: Page, sample: Sample, rows: Rows) -> int:
    """Go to the page, fill in its form and press its button where the sample is sent; the status."""
    answer = page.goto(sample.url(rows))
    if sample.typed is not None:
        page.evaluate(FILL, sample.typed)
        with page.expect_navigation() as going:
            page.locator(SUBMIT).first.click()
        answer = going.value
    return answer.status if answer else 0


def axe(page: Page) -> list[str]:
    found = page.evaluate("options => axe.run(options).then(results => results.violations)", AXE)
    return [
        f"{violation['id']}: {node['target']} {node['html'][:120]}"
        for violation in found
        for node in violation["nodes"]
    ]
