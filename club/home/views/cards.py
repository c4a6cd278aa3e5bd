from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import get_object_or_404, render
from django.utils import timezone

from club.base.printing import Paper, PrintingUnavailable, render_pdf
from club.base.requests import HtmxRequest
from club.home.cards import card_of, opens_elsewhere, sheets_of
from club.home.forms import CardsForm
from club.lathes.access import lathes_for
from club.lathes.models import Lathe


def card(request: HtmxRequest, pk: int) -> HttpResponse:
    """The lathe's own address, behind the code on its card: opens on any phone, names nobody."""
    lathe = get_object_or_404(Lathe.objects.whole(), pk=pk)
    return render(request, "club/home/card.html", {"card": card_of(request, lathe), "lathe": lathe})


def cards(request: HtmxRequest) -> HttpResponse:
    lathes = lathes_for(request.user, "home:cards").select_related("workshop")
    form = CardsForm(initial={"paper": Paper.A4, "lathe": [lathe.pk for lathe in lathes]}, lathes=lathes)
    return _cards_page(request, form)


def cards_pdf(request: HtmxRequest) -> HttpResponse:
    form = CardsForm(request.GET, lathes=lathes_for(request.user, "home:cards_pdf").whole())
    if not form.is_valid():
        return _cards_page(request, form, status=422)
    made = [card_of(request, lathe) for lathe in form.cleaned_data["lathe"]]
    context = {"sheets": sheets_of(made), "day": timezone.localdate(), "count": len(made)}
    try:
        pdf = render_pdf("print/lathe_cards.html", context, paper=Paper(form.cleaned_data["paper"]))
    except PrintingUnavailable as error:
        form.add_error(None, str(error))
        return _cards_page(request, form, status=503)
    return HttpResponse(pdf, content_type="application/pdf")


def _cards_page(request: HtmxRequest, form: CardsForm, status: int = 200) -> HttpResponse:
    context = {
        "form": form,
        "opens_elsewhere": opens_elsewhere(request),
        "any": form.has_lathes,
    }
    return render(request, "club/home/cards.html", context, status=status)
