"""The people of a class: signing up, moving, swapping, giving up, offering a place to the next in line."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta
from typing import Any
from zoneinfo import ZoneInfo

from django import forms
from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext

from club.base.requests import HtmxRequest, posted
from club.base.writing import status_of
from club.classes.access import class_for, sign_up_for
from club.classes.actions import lists
from club.classes.book import book_of
from club.classes.domain.errors import ClassError
from club.classes.domain.local_time import local
from club.classes.domain.queue import Book, State
from club.classes.domain.queue import SignUp as Line
from club.classes.forms.people import MoveForm, OfferForm, SignUpForm, SwapForm
from club.classes.models import ClassSession, SignUp
from club.classes.models.sign_up import LIVE, TAKING
from club.classes.preparing_sentences import why_lost
from club.classes.sentences import refusal, state_words
from club.people.access import signed_in

# Long enough to be read after work the next day.
DAYS_TO_ANSWER = 2


def sign_up(request: HtmxRequest, pk: int) -> HttpResponse:
    session = class_for(request.user, pk, "classes:sign_up", request.method or "GET")
    book = book_of(session, timezone.now())
    form = SignUpForm(posted(request), session, book, initial={"place": request.GET.get("place", "")})
    if form.is_valid():
        given = form.cleaned_data
        line = _done(form, lambda: _signed_up(request, session, given))
        if line:
            messages.success(request, _signed_up_words(given["person"], line))
            return redirect(session)
    context = {"form": form, "session": session, "book": book}
    return render(request, "club/classes/sign_up.html", context, status=status_of(form))


def _signed_up(request: HtmxRequest, session: ClassSession, given: dict[str, Any]) -> Line:
    by, now = signed_in(request), timezone.now()
    if given["until"]:
        return lists.hold(by, session, given["person"], now, given["until"], given["place"])
    return lists.sign_up(by, session, given["person"], now, given["place"])


def _signed_up_words(person: object, line: Line) -> str:
    values = {"person": person, "place": line.place.name if line.place else "", "kit": line.kit}
    if line.state is State.WAITING:
        return gettext("%(person)s is waiting for a place.") % values
    if line.state is State.HELD:
        return gettext("A place is kept for %(person)s.") % values
    if line.place:
        return gettext("%(person)s is in: place %(place)s, kit %(kit)s.") % values
    return gettext("%(person)s is in, kit %(kit)s, with a place to be given.") % values


def seat(request: HtmxRequest, pk: int, number: int) -> HttpResponse:
    """One line of the list: where this person stands and what may be done about it."""
    found = sign_up_for(request.user, pk, number, "classes:seat", request.method or "GET")
    book = book_of(found.class_session, timezone.now())
    found.state = next(line.state.value for line in book.sign_ups if line.number == number)
    deed = request.POST.get("deed", "") if request.method == "POST" else ""
    if request.method == "POST" and deed not in DEEDS:
        raise Http404
    forms_by_deed = _seat_forms(request, found, book, deed)
    form = forms_by_deed.get(deed, forms.Form())
    if deed and form.is_valid() and _done(form, lambda: DEEDS[deed](request, found, form)):
        messages.success(request, _deed_words(deed, found, form))
        return redirect(found.class_session)
    context = {"form": form, **_seat_context(found, book, forms_by_deed)}
    return render(request, "club/classes/seat.html", context, status=status_of(form))


def _seat_forms(request: HtmxRequest, row: SignUp, book: Book, deed: str) -> dict[str, forms.BaseForm]:
    """A form for each deed, the one that was pressed with what came in."""
    data = {each: request.POST if each == deed else None for each in DEEDS}
    return {
        "move": MoveForm(data["move"], book),
        "swap": SwapForm(data["swap"], _others(row, book)),
        "accept": forms.Form(data["accept"]),
        "give_up": forms.Form(data["give_up"]),
    }


def _seat_context(row: SignUp, book: Book, by_deed: dict[str, forms.BaseForm]) -> dict[str, Any]:
    there = {line.number for line in book.taking if line.place in book.layout}
    return {
        "lost": why_lost(row) if row.place and row.number not in there else "",
        "row": row,
        "session": row.class_session,
        "state": state_words(row),
        "takes": row.state in TAKING,
        "live": row.state in LIVE,
        "asked": row.state in (State.HELD, State.OFFERED),
        "move_form": by_deed["move"],
        "swap_form": by_deed["swap"],
    }


def _others(mine: SignUp, book: Book) -> Any:
    """Everybody else who has a place that is there now."""
    there = [line.number for line in book.taking if line.place in book.layout and line.number != mine.number]
    rows = SignUp.objects.filter(class_session=mine.class_session, number__in=there)
    return rows.select_related("person", "lathe").order_by("lathe__number", "sitting")


def _move(request: HtmxRequest, row: SignUp, form: forms.BaseForm) -> bool:
    lists.move(signed_in(request), row.class_session, row.person, timezone.now(), form.cleaned_data["place"])
    return True


def _swap(request: HtmxRequest, row: SignUp, form: forms.BaseForm) -> bool:
    other = form.cleaned_data["other"].person
    lists.swap(signed_in(request), row.class_session, row.person, other, timezone.now())
    return True


def _accept(request: HtmxRequest, row: SignUp, form: forms.BaseForm) -> bool:
    lists.accept(signed_in(request), row.class_session, row.person, timezone.now())
    return True


def _give_up(request: HtmxRequest, row: SignUp, form: forms.BaseForm) -> bool:
    lists.give_up(signed_in(request), row.class_session, row.person, timezone.now())
    return True


DEEDS: dict[str, Callable[[HtmxRequest, SignUp, forms.BaseForm], bool]] = {
    "move": _move,
    "swap": _swap,
    "accept": _accept,
    "give_up": _give_up,
}


def _deed_words(deed: str, row: SignUp, form: forms.BaseForm) -> str:
    values = {"person": row.person}
    if deed == "move":
        values["place"] = form.cleaned_data["place"].name
        return gettext("%(person)s now has place %(place)s.") % values
    if deed == "swap":
        values["other"] = form.cleaned_data["other"].person
        return gettext("%(person)s and %(other)s changed places.") % values
    if deed == "accept":
        return gettext("%(person)s is in.") % values
    return gettext("%(person)s has given up the place.") % values


def offer(request: HtmxRequest, pk: int) -> HttpResponse:
    session = class_for(request.user, pk, "classes:offer", request.method or "GET")
    book = book_of(session, timezone.now())
    form = OfferForm(posted(request), session, book, initial={"until": _usual_answer(session)})
    if form.is_valid():
        given, now = form.cleaned_data, timezone.now()
        first = _done(
            form, lambda: lists.offer_next(signed_in(request), session, now, given["until"], given["place"])
        )
        if first:
            messages.success(request, gettext("A place is offered to %(person)s.") % {"person": first})
            return redirect(session)
    first_in_line = next((row for row in _waiting(session)), None)
    context = {"form": form, "session": session, "book": book, "first": first_in_line}
    return render(request, "club/classes/offer.html", context, status=status_of(form))


def _waiting(session: ClassSession) -> list[SignUp]:
    return [row for row in session.sign_ups.all() if row.state == SignUp.State.WAITING]


def _usual_answer(session: ClassSession) -> str:
    """In two days, but before the class begins, by the workshop's clock."""
    answer = min(timezone.now() + timedelta(days=DAYS_TO_ANSWER), session.begins)
    return local(answer, ZoneInfo(session.workshop.zone)).strftime("%Y-%m-%dT%H:%M")


def _done(form: forms.BaseForm, write: Callable[[], Any]) -> Any:
    """What the write gave, or None with the reason beside the field it is about."""
    try:
        return write()
    except ClassError as error:
        about = {"place_taken": "place", "no_such_place": "place", "past": "until", "twice": "person"}
        field = about.get(error.code)
        form.add_error(field if field in form.fields else None, refusal(error))
    return None
