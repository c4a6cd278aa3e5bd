"""The one place that answers "may this person do that": for every request, every link and every row."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from django.contrib.auth.base_user import AbstractBaseUser
from django.contrib.auth.models import AnonymousUser
from django.contrib.auth.views import redirect_to_login
from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponse, HttpResponseBase, HttpResponseNotAllowed
from django.shortcuts import redirect
from django.urls import reverse
from django.utils.cache import patch_cache_control
from django_htmx.http import HttpResponseClientRedirect

from club.base.access_table import METHODS, TABLE
from club.base.roles import STAFF, Everyone, Grant, Role

__all__ = ["STAFF", "AccessTableMiddleware", "Grant", "Role", "may", "workshops_where"]

Bearer = AbstractBaseUser | AnonymousUser

# Until a first password is changed, its bearer can go nowhere else.
OPEN_BEFORE_OWN_PASSWORD = frozenset({"people:password", "people:sign_out"})


def may(account: Bearer, address: str, method: str = "GET", workshop_id: int | None = None) -> bool:
    """Whether this account may use this address, in this workshop or (None) in some workshop at all."""
    who = TABLE.get((address, _as_listed(method)))
    if who is None:
        return False
    if isinstance(who, Everyone):
        return who is Everyone.ANYONE or account.is_authenticated
    return any(
        grant.role in who and (workshop_id is None or grant.workshop_id in (None, workshop_id))
        for grant in grants_of(account)
    )


def workshops_where(account: Bearer, address: str, method: str = "GET") -> frozenset[int] | None:
    """The workshops in which this account may use this address; None means every workshop."""
    who = TABLE.get((address, _as_listed(method)), frozenset())
    if isinstance(who, Everyone):
        return None if may(account, address, method) else frozenset()
    places = {grant.workshop_id for grant in grants_of(account) if grant.role in who}
    if None in places:
        return None
    return frozenset(place for place in places if place is not None)


def grants_of(account: Bearer) -> tuple[Grant, ...]:
    """The roles behind a sign-in; none for a stranger or a barred account."""
    if not account.is_active:
        return ()
    grants: tuple[Grant, ...] = getattr(account, "grants", ())
    return grants


def _as_listed(method: str) -> str:
    return "GET" if method == "HEAD" else method


class AccessTableMiddleware:
    """Refuses whatever the access table doesn't allow, before any view runs."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        response = self.get_response(request)
        # On a tablet that several people use, "back" must not show what somebody else was shown.
        if request.user.is_authenticated and not response.has_header("Cache-Control"):
            patch_cache_control(response, private=True, no_store=True)
        return response

    def process_view(
        self, request: HttpRequest, view: Callable[..., Any], args: list[Any], kwargs: dict[str, Any]
    ) -> HttpResponse | None:
        address = request.resolver_match.view_name if request.resolver_match else ""
        if address not in METHODS:
            raise PermissionDenied
        if (address, _as_listed(request.method or "")) not in TABLE:
            return HttpResponseNotAllowed(METHODS[address])
        if getattr(request.user, "must_change_password", False) and address not in OPEN_BEFORE_OWN_PASSWORD:
            return redirect("people:password")
        if may(request.user, address, request.method or ""):
            return None
        if request.user.is_authenticated:
            raise PermissionDenied
        return _to_sign_in(request, address)


def _to_sign_in(request: HttpRequest, address: str) -> HttpResponse:
    """To the sign-in page, and back afterwards where the address can be opened again by a GET."""
    if getattr(request, "htmx", False):
        # A fragment's place is no place for a sign-in form, so the whole page goes there.
        back = request.htmx.current_url_abs_path or ""  # type: ignore[attr-defined]
        return HttpResponseClientRedirect(redirect_to_login(back, reverse("people:sign_in")).url)
    if "GET" in METHODS[address]:
        return redirect_to_login(request.get_full_path(), reverse("people:sign_in"))
    return redirect("people:sign_in")
