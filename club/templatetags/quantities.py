"""Lengths as the reader likes them, and numbers with their thousands apart."""

from __future__ import annotations

from django import template
from django.template.context import Context
from django.utils.translation import gettext, pgettext

from club.base.quantities.length import Length, LengthStyle, show_length
from club.base.quantities.shown import thousands as with_thousands
from club.base.quantities.shown import unbroken as without_breaks

register = template.Library()


@register.simple_tag(takes_context=True)
def length(context: Context, value: Length | None) -> str:
    """`{% length lathe.through_bore %}`: `9/16 in`; nothing for a length nobody knows."""
    if value is None:
        return ""
    style = LengthStyle(context.get("reader_lengths") or LengthStyle.AS_TYPED)
    return show_length(value, style, pgettext("before a rounded length", "about"))


@register.filter
def thousands(value: int | None) -> str:
    """`{{ lathe.plate_speed|thousands }}`: `1 450` with a no-break space; nothing for an unknown number."""
    return "" if value is None else with_thousands(value)


@register.filter
def unbroken(text: str) -> str:
    """`{{ step.text|unbroken }}`: text as somebody wrote it, with each measure on one line."""
    return without_breaks(text)


@register.simple_tag(takes_context=True)
def measure(context: Context, value: Length | None) -> str:
    """The same, and "not measured" in words where nobody has."""
    return length(context, value) if value is not None else gettext("not measured")
