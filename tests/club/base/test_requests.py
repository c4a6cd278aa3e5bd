from __future__ import annotations

import pytest
from django.urls import reverse

from tests.factories import LatheFactory

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize("charset", ["raw_unicode_escape", "hex", "utf-16"])
def test_a_form_in_another_encoding_is_refused(client, charset):
    kind = f"multipart/form-data; boundary=b; charset={charset}"
    body = '--b\r\nContent-Disposition: form-data; name="username"\r\n\r\n\\ud800\r\n--b--\r\n'

    answer = client.generic("POST", reverse("people:sign_in"), body, content_type=kind)

    assert answer.status_code == 400


def test_what_a_signed_in_person_saw_is_kept_by_no_browser(as_coordinator, client):
    lathe = LatheFactory()

    seen = as_coordinator.get(lathe.get_absolute_url())
    card = client.get(reverse("home:card", args=[lathe.pk]))

    assert "no-store" in seen["Cache-Control"]
    assert "no-store" not in card.get("Cache-Control", "")
