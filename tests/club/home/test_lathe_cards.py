from __future__ import annotations

import io
import re
import subprocess

import pytest
from django.urls import reverse
from pypdf import PdfReader

from club.base.access import Role
from club.base.printing import Paper
from club.lathes.models import LatheDrawBar, LatheSpeed
from tests.factories import LatheFactory

pytestmark = [pytest.mark.django_db, pytest.mark.pdf]
MM = 72 / 25.4
CARD_HEIGHT = {Paper.A4: 148.5 * MM, Paper.LETTER: 139.7 * MM}


def pdf_of(client, lathes, paper=Paper.A4):
    answer = client.get(
        reverse("home:cards_pdf"), {"lathe": [lathe.pk for lathe in lathes], "paper": paper.value}
    )
    assert answer.status_code == 200, answer.content.decode()
    return answer.content


def full_lathe(**facts):
    """As much as a lathe can have: 16 settings, 12 bars, the longest reason."""
    lathe = LatheFactory(
        number=999,
        condition="limited",
        condition_reason="ask before slender work " * 6 + "mind the cover",
        headstock_taper="MT2",
        tailstock_taper="MT2",
        nose_thread="1 1/4-8",
        plate_speed=12_000,
        **facts,
    )
    for place in range(1, 17):
        LatheSpeed.objects.create(
            lathe=lathe, position=place, label=f"belt position {place}", low=place * 10, high=3200
        )
    for place in range(1, 13):
        bar = {"label": f"bar number {place}", "thread": "3/8-16", "length": "14 1/4 in"}
        LatheDrawBar.objects.create(lathe=lathe, position=place, **{**bar, "length": _length(bar["length"])})
    return lathe


def _length(text):
    from club.base.quantities.length import parse_length

    return parse_length(text)


def lowest_word(pdf):
    """How far down the first page its lowest word reaches, in points, by an independent reader."""
    boxes = subprocess.run(
        ["pdftotext", "-bbox", "-", "-"], input=pdf, capture_output=True, check=True
    ).stdout.decode()
    return max(float(found) for found in re.findall(r'yMax="([0-9.]+)"', boxes))


@pytest.mark.parametrize("paper", list(Paper))
def test_four_cards_stand_on_a_sheet(as_coordinator, paper):
    lathes = LatheFactory.create_batch(5)

    reader = PdfReader(io.BytesIO(pdf_of(as_coordinator, lathes, paper)))

    assert [page.extract_text().count("Stop") for page in reader.pages] == [4, 1]


@pytest.mark.parametrize("paper", list(Paper))
def test_a_lathe_with_all_it_can_have_still_fits_its_card(as_coordinator, paper):
    lathe = full_lathe()

    pdf = pdf_of(as_coordinator, [lathe], paper)

    text = PdfReader(io.BytesIO(pdf)).pages[0].extract_text()
    assert len(PdfReader(io.BytesIO(pdf)).pages) == 1
    assert lowest_word(pdf) < CARD_HEIGHT[paper]
    assert "belt position 8" in text
    assert "8 faster ones on its page" in text
    assert "mind the cover" in text
    assert "10 more on its page" in text
    assert "loosen it stopped" in text
    assert "Manual and instructor first" in text


@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize(
    ("settings", "label", "reason", "bars"),
    [
        (5, "belt", "ask before slender work, and mind the cover", 0),
        (3, "belt", "", 1),
        (2, "belt", "ask before slender work, and mind the cover", 1),
        (4, "belt", "ask before slender work, and mind the cover", 1),
        (3, "belt with back gear", "", 1),
        (5, "belt with back gear", "ask before slender work " * 6 + "mind the cover", 12),
    ],
)
def test_a_card_fits_wherever_it_grows(as_coordinator, paper, settings, label, reason, bars):
    lathe = LatheFactory(
        condition="limited" if reason else "in_service",
        condition_reason=reason,
        plate_speed=12_000,
        no_volt_release=None,
        reverse=None,
    )
    for place in range(1, settings + 1):
        LatheSpeed.objects.create(lathe=lathe, position=place, label=f"{label}{place}", low=250, high=3200)
    for place in range(1, bars + 1):
        bar = {"label": f"bar {place}", "thread": "3/8-16", "length": _length("14 1/4 in")}
        LatheDrawBar.objects.create(lathe=lathe, position=place, **bar)

    pdf = pdf_of(as_coordinator, [lathe], paper)

    assert len(PdfReader(io.BytesIO(pdf)).pages) == 1
    assert lowest_word(pdf) < CARD_HEIGHT[paper]


def test_a_card_says_what_is_measured_and_what_is_not(as_coordinator):
    lathe = LatheFactory(number=7, nose_thread="M33x3.5")

    text = PdfReader(io.BytesIO(pdf_of(as_coordinator, [lathe]))).pages[0].extract_text()

    assert "Lathe 7" in text
    assert "M33x3.5" in text
    assert "not measured" in text


@pytest.mark.parametrize(
    ("facts", "said", "unsaid"),
    [
        ({"no_volt_release": True}, "switch off, dial down", "start by itself"),
        ({"no_volt_release": False}, "start by itself", "switch off, dial down"),
        ({"no_volt_release": None}, "start by itself", "switch off, dial down"),
        ({"reverse": True}, "no reverse", "nothing"),
        ({"reverse": None}, "no reverse", "nothing"),
    ],
)
def test_what_is_said_follows_the_machine_and_unknown_counts_as_worse(as_coordinator, facts, said, unsaid):
    lathe = LatheFactory(**facts)

    page = as_coordinator.get(reverse("home:card", args=[lathe.pk])).content.decode().lower()

    assert said in page
    if unsaid != "nothing":
        assert unsaid not in page


def test_a_lathe_that_can_not_run_in_reverse_is_not_warned_of_it(client):
    lathe = LatheFactory(reverse=False)

    assert "reverse" not in client.get(reverse("home:card", args=[lathe.pk])).content.decode()


def test_the_code_leads_to_the_address_the_club_is_reached_at(client, settings):
    settings.ADDRESS = "https://turners.example"
    lathe = LatheFactory()

    card = client.get(reverse("home:card", args=[lathe.pk])).context["card"]

    assert card.code.text == f"https://turners.example/l/{lathe.pk}/"


@pytest.mark.parametrize(
    ("host", "opens"),
    [
        ("localhost", False),
        ("127.0.0.1:8000", False),
        ("[::1]", False),
        ("[::1]:8000", False),
        ("10.0.0.7", True),
    ],
)
def test_a_code_for_this_computer_only_gets_a_caution(as_coordinator, settings, host, opens):
    settings.ALLOWED_HOSTS = ["*"]
    LatheFactory()

    answer = as_coordinator.get(reverse("home:cards"), headers={"host": host})

    assert answer.context["opens_elsewhere"] is opens


def test_a_card_opens_on_any_phone_without_signing_in_and_names_nobody(client, as_coordinator):
    lathe = LatheFactory(condition="limited", condition_reason="quill lock stiff")

    answer = client.get(reverse("home:card", args=[lathe.pk]))

    assert answer.status_code == 200
    assert "quill lock stiff" in answer.content.decode()
    assert str(as_coordinator.account) not in answer.content.decode()
    assert "Changes" not in answer.content.decode()


def test_a_card_says_to_leave_a_lathe_out_of_service_switched_off(client):
    lathe = LatheFactory(condition="out", condition_reason="no working drive")

    assert "leave it switched off" in client.get(reverse("home:card", args=[lathe.pk])).content.decode()


def test_a_helper_gets_from_the_code_to_the_condition_in_one_step(sign_in_as):
    here, elsewhere = LatheFactory(), LatheFactory()
    condition = reverse("lathes:condition", args=[here.pk])
    card = reverse("home:card", args=[here.pk])
    helper = sign_in_as(Role.HELPER, here.workshop)

    own = helper.get(card).content.decode()
    other = helper.get(reverse("home:card", args=[elsewhere.pk])).content.decode()

    assert f'href="{condition}"' in own
    assert reverse("lathes:condition", args=[elsewhere.pk]) not in other
    assert "Something wrong with it?" not in own


def test_the_card_leads_whoever_is_not_signed_in_to_the_condition(client):
    lathe = LatheFactory()
    condition = reverse("lathes:condition", args=[lathe.pk])

    page = client.get(reverse("home:card", args=[lathe.pk])).content.decode()

    assert f'href="{reverse("people:sign_in")}?next={condition}"' in page


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        ({"paper": "a4"}, "Tick the lathes whose cards are wanted"),
        ({"lathe": "1 or 1=1", "paper": "a4"}, "is not in the list any more"),
        ({"lathe": "99999", "paper": "a4"}, "is not in the list any more"),
        ({"lathe": "9" * 20, "paper": "a4"}, "is not in the list any more"),
        ({"paper": "papyrus"}, "Choose A4 or Letter"),
    ],
)
def test_a_wrong_choice_of_cards_gets_its_sentence(as_coordinator, asked, words):
    LatheFactory()

    answer = as_coordinator.get(reverse("home:cards_pdf"), asked)

    assert answer.status_code == 422
    assert words in answer.content.decode()


def test_a_helper_of_one_workshop_prints_only_its_cards(sign_in_as):
    here, elsewhere = LatheFactory(), LatheFactory()
    client = sign_in_as(Role.HELPER, here.workshop)

    answer = client.get(reverse("home:cards_pdf"), {"lathe": elsewhere.pk, "paper": "a4"})

    assert answer.status_code == 422


def test_without_the_type_setting_library_the_page_names_the_cure(as_coordinator, monkeypatch):
    from club.base.printing import PrintingUnavailable

    def unavailable(*args, **kwargs):
        raise PrintingUnavailable

    monkeypatch.setattr("club.home.views.cards.render_pdf", unavailable)
    lathe = LatheFactory()

    answer = as_coordinator.get(reverse("home:cards_pdf"), {"lathe": lathe.pk, "paper": "a4"})

    assert answer.status_code == 503
    assert "libpango-1.0-0" in answer.content.decode()
