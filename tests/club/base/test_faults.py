from __future__ import annotations

import io
import logging

import pytest
from django.test import Client
from django.urls import reverse


@pytest.fixture
def standard_error(monkeypatch):
    """What the server's own handlers write."""
    heard = io.StringIO()
    for handler in logging.getLogger("django").handlers:
        monkeypatch.setattr(handler, "stream", heard, raising=False)
    return heard


def test_a_fault_is_written_out_with_its_reason(monkeypatch, standard_error):
    def broken(*_facts, **_more):
        raise RuntimeError("the belt slipped")

    monkeypatch.setattr("club.home.views.start.may", broken)

    answer = Client(raise_request_exception=False).get(reverse("home:start"))

    assert answer.status_code == 500
    assert "RuntimeError: the belt slipped" in standard_error.getvalue()
