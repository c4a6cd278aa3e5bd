from __future__ import annotations

import pytest
from django.test import RequestFactory

from club.people.throttle import address_of


@pytest.mark.parametrize(
    ("proxies", "passed_on", "address"),
    [
        (0, "203.0.113.9", "192.0.2.1"),
        (0, "", "192.0.2.1"),
        (1, "203.0.113.9", "203.0.113.9"),
        (1, "10.9.9.9, 203.0.113.9", "203.0.113.9"),
        (2, "10.9.9.9, 203.0.113.9, 198.51.100.7", "203.0.113.9"),
        (2, "203.0.113.9", "192.0.2.1"),
        (1, "", "192.0.2.1"),
    ],
)
def test_only_our_own_proxies_are_believed(settings, proxies, passed_on, address):
    settings.PROXIES = proxies
    request = RequestFactory().get("/", headers={"X-Forwarded-For": passed_on}, REMOTE_ADDR="192.0.2.1")

    assert address_of(request) == address
