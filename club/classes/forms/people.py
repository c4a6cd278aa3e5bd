"""Forms of a class's list: signing up, moving, swapping, keeping and offering a place."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from django import forms
from django.utils.translation import gettext
from django.utils.translation import gettext_lazy as _

from club.classes.clashing import person_clashes
from club.classes.domain.errors import ClassError
from club.classes.domain.local_time import instant
from club.classes.domain.places import Place, place_named
from club.classes.domain.queue import Book
from club.classes.forms.clashes import ClashForm
from club.classes.forms.inputs import MomentInput
from club.classes.models import ClassSession, SignUp
from club.classes.models.sign_up import LIVE
from club.classes.sentences import refusal
from club.people.models import Person

ONE_OF_THESE = _("Choose one of these.")


class PlaceField(forms.ChoiceField):
    """One of the places that are free now, or, where it may be left open, none yet. Gives a Place or None."""

    def __init__(self, **kwargs: Any) -> None:
        said = {
            "required": _("Choose a place."),
            "invalid_choice": _("That place isn't free any more. Choose another."),
        }
        super().__init__(error_messages=said, **kwargs)

    def offer(self, places: Iterable[Place], none: str = "") -> None:
        first = [("", none)] if none else []
        self.choices = [*first, *((place.name, place.name) for place in places)]

    def clean(self, value: Any) -> Place | None:
        text = super().clean(value)
        return place_named(text) if text else None


class MomentField(forms.DateTimeField):
    """A day and time by the workshop's clock. Gives UTC or None; set `zone` before use."""

    zone: ZoneInfo

    def __init__(self, **kwargs: Any) -> None:
        said = {
            "required": _("Say until when, as 2027-03-04 18:30."),
            "invalid": _("Write day and time as 2027-03-04 18:30."),
        }
        super().__init__(widget=MomentInput(), error_messages=said, **kwargs)

    def to_python(self, value: Any) -> datetime | None:
        # As the wall shows it: Django would read it in the zone of the installation.
        shown = self._shown(value)
        if shown is None:
            return None
        try:
            return instant(shown.date(), shown.time().replace(second=0, microsecond=0), self.zone)
        except ClassError as error:
            raise forms.ValidationError(refusal(error)) from error

    def _shown(self, value: Any) -> datetime | None:
        text = str(value or "").strip().replace("T", " ")
        if not text:
            return None
        try:
            return datetime.fromisoformat(text).replace(tzinfo=None)
        except ValueError as error:
            raise forms.ValidationError(self.error_messages["invalid"]) from error


class SignUpForm(ClashForm, forms.Form):
    """Somebody for the list. Where no place is left they wait, and the choice of one is passed over."""

    person = forms.ModelChoiceField(
        Person.objects.none(),
        label=_("person"),
        empty_label=_("choose a person"),
        error_messages={
            "required": _("Choose a person."),
            "invalid_choice": _("This person is on the list already. Choose another."),
        },
    )
    place = PlaceField(label=_("place"), required=False)
    until = MomentField(
        label=_("only keep it until"),
        required=False,
        help_text=_("For somebody who hasn't said yes. Empty: the person is in."),
    )

    def __init__(self, data: Any, session: ClassSession, book: Book, **kwargs: Any) -> None:
        super().__init__(data, **kwargs)
        self.session = session
        on_list = [row.person_id for row in session.sign_ups.all() if row.state in LIVE]
        person: Any = self.fields["person"]
        person.queryset = Person.objects.exclude(pk__in=on_list)
        place: Any = self.fields["place"]
        place.offer(sorted(book.free), gettext("to be given later"))
        until: Any = self.fields["until"]
        until.zone = ZoneInfo(session.workshop.zone)

    def clean(self) -> dict[str, Any]:
        given = super().clean() or self.cleaned_data
        if given.get("person"):
            self.show_clashes(person_clashes(self.session, given["person"]))
        return given


class MoveForm(forms.Form):
    place = PlaceField(label=_("to the free place"))

    def __init__(self, data: Any, book: Book) -> None:
        super().__init__(data, auto_id="move_%s")
        place: Any = self.fields["place"]
        place.offer(sorted(book.free))


class OtherField(forms.ModelChoiceField[SignUp]):
    """Somebody who has a place, named with it."""

    def label_from_instance(self, obj: Any) -> str:
        row: SignUp = obj
        return f"{row.place.name if row.place else ''} {row.person}"


class SwapForm(forms.Form):
    other = OtherField(
        SignUp.objects.none(),
        label=_("with"),
        error_messages={"required": ONE_OF_THESE, "invalid_choice": ONE_OF_THESE},
    )

    def __init__(self, data: Any, others: Any) -> None:
        super().__init__(data, auto_id="swap_%s")
        other: Any = self.fields["other"]
        other.queryset = others
        other.empty_label = _("choose a person")


class OfferForm(forms.Form):
    """A place for whoever waits longest, and until when they may take it."""

    place = PlaceField(label=_("place"), required=False)
    until = MomentField(label=_("they answer until"))

    def __init__(self, data: Any, session: ClassSession, book: Book, **kwargs: Any) -> None:
        super().__init__(data, **kwargs)
        place: Any = self.fields["place"]
        place.offer(sorted(book.free), gettext("to be given later"))
        until: Any = self.fields["until"]
        until.zone = ZoneInfo(session.workshop.zone)


class RevisionForm(forms.Form):
    revision = forms.IntegerField(widget=forms.HiddenInput)
