"""Many people who press a button in the same moment."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from concurrent.futures import ThreadPoolExecutor

from django.db import connection
from django.test import Client


def at_once(client: Client, address: str, forms: Iterable[Mapping[str, str]]) -> Counter[int]:
    """Post each form from a thread of its own, all signed in alike; how often each status came back."""
    sent = list(forms)

    def post(form: Mapping[str, str]) -> int:
        own = Client()
        own.cookies = client.cookies
        try:
            return own.post(address, form).status_code
        finally:
            connection.close()

    with ThreadPoolExecutor(len(sent)) as threads:
        return Counter(threads.map(post, sent))
