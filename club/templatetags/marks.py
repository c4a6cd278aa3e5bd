"""The marks of the look: states, cautions, the tally and the diameter sign, drawn, never typed."""

from __future__ import annotations

from django import template
from django.template import Context
from django.utils.functional import Promise
from django.utils.html import format_html
from django.utils.safestring import SafeString, mark_safe
from django.utils.translation import gettext_lazy as _

register = template.Library()

# Tick and cross are cut out of disc and square, so they read on any ground and in any reader's colours.
_TICK = "M5.49 13.47L10.64 18.87L18.63 8.03L16.37 6.37L10.36 14.53L7.51 11.53Z"
_CROSS = (
    "M7.56 5.44L12 9.88L16.44 5.44L18.56 7.56L14.12 12L18.56 16.44L16.44 18.56"
    "L12 14.12L7.56 18.56L5.44 16.44L9.88 12L5.44 7.56Z"
)
_DISC = "M2 12a10 10 0 1 0 20 0a10 10 0 1 0 -20 0Z"
_RING = '<circle cx="12" cy="12" r="9" fill="none" stroke="currentColor" stroke-width="{}"{}/>'

_WASTE_CROSS = f'<path fill="currentColor" fill-rule="evenodd" d="M2 2h20v20H2z{_CROSS}"/>'

SHAPES = {
    "ready": f'<path fill="currentColor" fill-rule="evenodd" d="{_DISC}{_TICK}"/>',
    "part": _RING.format("2.2", "") + '<path fill="currentColor" d="M3 12a9 9 0 0 0 18 0z"/>',
    "open": _RING.format("2", ' stroke-dasharray="3.6 2.7"'),
    "stop": _WASTE_CROSS,
    # The same cross in ink beside what was typed wrong: no danger, so never red.
    "wrong": _WASTE_CROSS,
    "caution": (
        '<path fill="none" stroke="currentColor" stroke-width="2.2" stroke-linejoin="round"'
        ' d="M12 2.5L22.5 21.5H1.5z"/>'
        '<path fill="none" stroke="currentColor" stroke-width="1.8"'
        ' d="M6.2 19.5l3.8-7M10.2 19.5l4.3-7.8M14.2 19.5l2.8-5"/>'
    ),
    "note": _RING.format("1.4", "") + '<circle cx="12" cy="12" r="2.6" fill="currentColor"/>',
}
# What a mark says on paper, where no reader skips a picture that has no words.
WORDS = {
    "ready": _("ready"),
    "part": _("in part"),
    "open": _("not yet"),
    "stop": _("stop"),
    "wrong": _("to mend"),
    "caution": _("caution"),
    "note": _("note"),
}
_DIAMETER = (
    '<path fill="none" stroke="currentColor" stroke-width="9"'
    ' d="M8.5 50a28.5 28.5 0 1 0 57 0a28.5 28.5 0 1 0 -57 0M11.5 100L62.5 0"/>'
)
INK = "#14253b"


@register.simple_tag(takes_context=True)
def mark(context: Context, kind: str, tone: str = "") -> SafeString:
    """The bare mark. On screen hidden from readers, because a word always stands beside it.

    With the tone "ink" it takes no colour from where it stands.
    """
    ink = tone == "ink"
    shape = mark_safe(SHAPES[kind])
    if "paper" in context:
        return _picture("mark", "0 0 24 24", WORDS[kind], shape, ink=True)
    svg = '<svg class="mark{}" viewBox="0 0 24 24" aria-hidden="true"{}>{}</svg>'
    return format_html(svg, " ink" if ink else "", _colored(ink), shape)


@register.simple_tag(takes_context=True)
def state(context: Context, kind: str, text: str) -> SafeString:
    """A state: its mark and its word."""
    return format_html('<span class="state {}">{}{}</span>', kind, mark(context, kind), text)


@register.simple_tag
def tally(number: int | str) -> SafeString:
    """The numbered disc on its nail: a lathe's or a place's number."""
    return format_html('<span class="tally">{}</span>', number)


@register.simple_tag(takes_context=True)
def dia(context: Context) -> SafeString:
    """The diameter sign, a true ring and a long stroke, with the no-break space that follows it."""
    sign = _picture("dia", "0 0 74 100", _("diameter"), mark_safe(_DIAMETER), ink="paper" in context)
    return format_html("{}\N{NO-BREAK SPACE}", sign)


def _picture(name: str, view: str, words: str | Promise, shape: SafeString, *, ink: bool) -> SafeString:
    """A mark with words. They stand in a title element, because a PDF takes its own from nowhere else."""
    svg = '<svg class="{}" viewBox="{}" role="img"{}><title>{}</title>{}</svg>'
    return format_html(svg, name, view, _colored(ink), words, shape)


def _colored(ink: bool) -> SafeString:
    """Style sheets don't reach into a drawing on paper, so there the colour is written on it."""
    return format_html(' color="{}"', INK) if ink else SafeString("")
