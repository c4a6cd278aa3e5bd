"""The pages that come in place of another."""

from __future__ import annotations

import pytest
from django.template.loader import render_to_string
from django.test import Client


@pytest.mark.parametrize("template", ["400.html", "500.html"])
def test_a_page_for_the_worst_needs_no_request(template: str) -> None:
    page = render_to_string(template)

    assert "To the start" in page
    assert page.lstrip().startswith("<!doctype html>")


@pytest.mark.django_db
def test_an_address_that_leads_nowhere_says_so(client: Client) -> None:
    answer = client.get("/no/such/page/")

    assert answer.status_code == 404
    assert "There is nothing here" in answer.content.decode()


@pytest.mark.django_db
def test_a_broken_page_says_so_plainly(as_coordinator: Client, monkeypatch: pytest.MonkeyPatch) -> None:
    as_coordinator.raise_request_exception = False
    monkeypatch.setattr("club.people.views.persons.people_for", lambda account: 1 / 0)

    answer = as_coordinator.get("/people/")

    assert answer.status_code == 500
    assert "Something broke here" in answer.content.decode()
