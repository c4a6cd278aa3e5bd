"""What this room tells, and asks, the throttle of the sign-in page."""

from __future__ import annotations

import math
from datetime import datetime, timedelta
from typing import Any

from axes.helpers import get_cool_off
from axes.models import AccessAttempt
from axes.utils import reset
from django.conf import settings
from django.http import HttpRequest
from django.utils import timezone

from club.people.names import sign_in_key


def address_of(request: HttpRequest) -> str | None:
    """Where a request comes from. Each of our own proxies adds one address to the right; what a visitor wrote
    to the left of those is not believed."""
    passed_on = [part.strip() for part in request.headers.get("X-Forwarded-For", "").split(",")]
    if 0 < settings.PROXIES <= len(passed_on) and passed_on[-settings.PROXIES]:
        return passed_on[-settings.PROXIES][:45]
    # A request that came over no network, as from a command, has none.
    return request.META.get("REMOTE_ADDR")


def name_tried(request: HttpRequest, credentials: dict[str, Any] | None = None) -> str:
    """The name as it is kept, so that five tries for Ilse and five for ILSE are ten for one name."""
    tried = credentials.get("username") if credentials else request.POST.get("username")
    return sign_in_key(str(tried or ""))[:255]


def minutes_to_wait(request: HttpRequest, credentials: dict[str, Any]) -> int:
    """Whole minutes, rounded up, until this name is listened to again from this place."""
    cool_off: timedelta | None = get_cool_off(request)
    attempts = AccessAttempt.objects.filter(
        username=name_tried(request, credentials),
        ip_address=request.axes_ip_address,  # type: ignore[attr-defined]
    )
    times = attempts.order_by("-attempt_time").values_list("attempt_time", flat=True)
    last: datetime | None = times.first()
    if cool_off is None or last is None:
        return 1
    return max(1, math.ceil((last + cool_off - timezone.now()).total_seconds() / 60))


def listen_again(name: str) -> None:
    """Forget the wrong tries for this sign-in name."""
    reset(username=sign_in_key(name))
