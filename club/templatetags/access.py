from __future__ import annotations

from django import template
from django.contrib.auth.models import AnonymousUser
from django.template import Context

from club.base import access

register = template.Library()


@register.simple_tag(takes_context=True)
def may(context: Context, address: str, method: str = "GET", workshop_id: int | None = None) -> bool:
    """{% may "lathes:mend" "POST" lathe.workshop_id as may_mend %}: whether the reader may."""
    return access.may(context.get("user") or AnonymousUser(), address, method, workshop_id)
