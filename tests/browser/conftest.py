from __future__ import annotations

import os
from typing import Any

import pytest

from club.start.debian import BROWSER, chromium

# Playwright runs an event loop in this thread, and Django would refuse the database beside it.
os.environ.setdefault("DJANGO_ALLOW_ASYNC_UNSAFE", "true")

MISSING = "A browser can't be driven here: Debian's {} are missing.".format(" and ".join(BROWSER.packages))
# Without these Chromium looks for hosts outside at every start.
CHROMIUM_FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def pytest_itemcollected(item: pytest.Item) -> None:
    """All in this folder drive Chromium; without it they say why not."""
    item.add_marker(pytest.mark.browser)
    if not BROWSER.is_met():
        item.add_marker(pytest.mark.skip(reason=MISSING))


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args: dict[str, Any]) -> dict[str, Any]:
    flags = [*browser_type_launch_args.get("args", []), *CHROMIUM_FLAGS]
    return {**browser_type_launch_args, "executable_path": chromium(), "args": flags}
