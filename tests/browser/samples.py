"""One page in one state: what a list of pages is made of."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from django.test import Client
from django.urls import reverse

from tests.browser.furnished import COORDINATOR, HELPER, WRONG_PASSWORD, Rows

NOBODY = ""


@dataclass(frozen=True)
class Sample:
    """One page in one state, and the most questions it may ask the database.

    `row` names the arguments of the address in what `furnish()` answers. What is `typed` is sent by POST; a
    browser puts it into the fields of the form. `path` is for what no address leads to. A `query` may name
    what stands under "query" in what `furnish()` answers.
    """

    name: str
    address: str
    queries: int
    row: str = ""
    query: str = ""
    typed: Mapping[str, str] | None = None
    reader: str = COORDINATOR
    status: int = 200
    path: str = ""

    def url(self, rows: Rows) -> str:
        path = self.path or reverse(self.address, kwargs=rows.get(self.row, {}))
        query = self.query.format_map(rows.get("query", {}))
        return f"{path}?{query}" if query else path

    def answer(self, client: Client, rows: Rows) -> Any:
        if self.typed is None:
            return client.get(self.url(rows))
        client.handler.enforce_csrf_checks = "csrfmiddlewaretoken" in self.typed
        return client.post(self.url(rows), self.typed)

    def __str__(self) -> str:
        return self.name


def wrong(name: str, address: str, queries: int, row: str = "", /, **typed: str) -> Sample:
    """A form that comes back with what is wrong in it."""
    return Sample(name, address, queries, row, typed=typed, status=422)


def sign_in(name: str, queries: int, username: str, status: int) -> Sample:
    """A sign-in that fails."""
    typed = {"username": username, "password": WRONG_PASSWORD}
    return Sample(name, "people:sign_in", queries, typed=typed, reader=NOBODY, status=status)


def for_anyone(name: str, address: str, queries: int, row: str = "") -> Sample:
    return Sample(name, address, queries, row, reader=NOBODY)


def for_helper(name: str, address: str, queries: int, row: str = "", status: int = 200) -> Sample:
    return Sample(name, address, queries, row, reader=HELPER, status=status)
