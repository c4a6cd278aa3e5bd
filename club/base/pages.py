"""What every page carries (the club, the reader, the ways open to them) and how forms are drawn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.conf import settings
from django.contrib.auth.models import AnonymousUser
from django.forms import BoundField, CheckboxSelectMultiple, FileInput, PasswordInput, RadioSelect, Widget
from django.forms.renderers import TemplatesSetting
from django.http import HttpRequest
from django.urls import reverse
from django.utils.functional import SimpleLazyObject
from django.utils.translation import gettext_lazy as _

from club.base.access import may
from club.base.quantities.length import LengthStyle


@dataclass(frozen=True)
class Way:
    """An entry of the rail. `current` goes into aria-current: "page", "true" for a page beneath it, or ""."""

    address: str
    label: str
    url: str
    current: str


# Each way in the order of the rail, with how the addresses beneath it begin.
WAYS = (
    ("home:start", ("home:start",), _("Next class")),
    ("classes:list", ("classes:", "home:class_"), _("Classes")),
    ("projects:list", ("projects:", "home:project", "home:edition", "home:handout"), _("Projects")),
    ("lathes:list", ("lathes:", "home:cards"), _("Lathes")),
    ("stores:list", ("stores:",), _("Stores")),
    ("lathes:workshops", ("lathes:workshop",), _("Workshops")),
    ("people:list", ("people:",), _("People")),
)
# Anyone may ask for the first page and be led on; only whom it shows something gets the way to it.
SHOWN_TO = {"home:start": "classes:class"}
# The reader's own pages hang on their name, not on a way.
OWN_PAGES = frozenset({"people:me", "people:password", "people:sign_in"})

LENGTH_WORDS = {
    LengthStyle.AS_TYPED: _("lengths as typed"),
    LengthStyle.SIXTEENTHS: _("inches to 1/16"),
    LengthStyle.THIRTY_SECONDS: _("inches to 1/32"),
    LengthStyle.SIXTY_FOURTHS: _("inches to 1/64"),
    LengthStyle.MILLIMETRES: _("millimetres"),
}


def page_context(request: HttpRequest) -> dict[str, Any]:
    """Context of every template. Ways are worked out only where a rail is drawn: a fragment asks nothing."""
    lengths = reader_lengths(request)
    return {
        "club_name": settings.CLUB_NAME,
        "reader_lengths": lengths,
        "reader_lengths_words": LENGTH_WORDS[lengths],
        "ways": SimpleLazyObject(lambda: _ways_for(request)),
        "address": _address(request),
    }


def reader_lengths(request: HttpRequest) -> LengthStyle:
    """How whoever reads this page wants lengths; as they were typed for a stranger."""
    chosen = getattr(getattr(request, "user", None), "lengths", None)
    return LengthStyle(chosen) if chosen else LengthStyle.AS_TYPED


def _ways_for(request: HttpRequest) -> tuple[Way, ...]:
    account = getattr(request, "user", AnonymousUser())
    here = _address(request)
    return tuple(
        Way(address, str(label), reverse(address), _current(address, here))
        for address, _beginnings, label in WAYS
        if may(account, SHOWN_TO.get(address, address))
    )


def _address(request: HttpRequest) -> str:
    match = getattr(request, "resolver_match", None)
    return match.view_name if match else ""


def _current(address: str, here: str) -> str:
    if address == here:
        return "page"
    return "true" if address == _way_above(here) else ""


def _way_above(here: str) -> str | None:
    """The way whose beginning fits best, so that a workshop lies under Workshops, not under Lathes."""
    if here in OWN_PAGES:
        return None
    fitting = [
        (len(beginning), address)
        for address, beginnings, _label in WAYS
        for beginning in beginnings
        if here.startswith(beginning)
    ]
    return max(fitting)[1] if fitting else None


class Field(BoundField):
    """A field as our templates draw it: our sentences say what is wrong, never the browser's bubbles."""

    @property
    def may_be_empty(self) -> bool:
        """Whether to say so: a choice has a line of its own for it, and a single tick needs no word."""
        left_open = not self.field.required and not self.field.disabled
        return left_open and self.widget_type not in {"checkbox", "select", "radioselect"}

    @property
    def comes_back_empty(self) -> bool:
        """Whether the form comes back without what was given: no page carries a password or a file back."""
        widget = self.field.widget
        hides_password = isinstance(widget, PasswordInput) and not widget.render_value
        return hides_password or isinstance(widget, FileInput)

    @property
    def is_radio_group(self) -> bool:
        # Django derives the group of ticks from the group of rings.
        widget = self.field.widget
        return isinstance(widget, RadioSelect) and not isinstance(widget, CheckboxSelectMultiple)

    @property
    def first_input_id(self) -> str:
        """Where a link to this field leads: the input, or the first of several."""
        return self.id_for_label or (f"{self.auto_id}_0" if self.auto_id else "")

    def build_widget_attrs(self, attrs: dict[str, Any], widget: Widget | None = None) -> dict[str, Any]:
        """`aria-required` in place of `required`; what holds for a whole group stands on its fieldset."""
        built = super().build_widget_attrs(attrs, widget)
        needed = built.pop("required", False)
        if isinstance(widget or self.field.widget, RadioSelect):
            built.pop("aria-invalid", None)
        elif needed and not isinstance(widget or self.field.widget, FileInput):
            built["aria-required"] = "true"
        return built


class FormRenderer(TemplatesSetting):
    """Draws forms with templates/django/forms."""

    bound_field_class = Field
