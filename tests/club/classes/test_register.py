"""The list of a class for the wall: by name, with place, lathe, sitting and kit, and nothing else."""

from __future__ import annotations

from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from club.base.printing import PrintingUnavailable
from club.classes.actions.classes import cancel_class
from club.classes.actions.lists import hold, sign_up
from club.classes.domain.places import Place
from club.classes.models import ClassSession
from club.classes.register import listed
from club.lathes.models import Lathe
from tests.browser.walking import words_of_pdf
from tests.club.classes.rows import NOW, planned, room
from tests.factories import PersonFactory
from tests.paper import catalog, figures_without_words, fonts, page_sizes, read_pdf

pytestmark = pytest.mark.django_db
PAGES = ("classes:register", "home:class_handouts")


def evening(**facts) -> ClassSession:
    """Two lathes, two sittings: Ada on 2b, Zoe on 1a, one without a place, one who was only asked."""
    session = planned(room(2, name="Mill"), sittings=2, **facts)
    zoe = PersonFactory(name="Zoe Zeller", email="zoe@example.org", phone="555 0199", age_band="under_16")
    sign_up(None, session, zoe, NOW, Place(1, 1))
    sign_up(None, session, PersonFactory(name="Éva Éder"), NOW)
    hold(None, session, PersonFactory(name="Asked Astragal"), NOW, NOW + timedelta(days=3_000), Place(1, 2))
    sign_up(None, session, PersonFactory(name="Ada Ash"), NOW, Place(2, 2))
    return session


def lines(session: ClassSession) -> list[tuple[str, str, str, str, str]]:
    session = ClassSession.objects.whole().get(pk=session.pk)
    return [(each.name, each.place, each.lathe, each.sitting, each.kit) for each in listed(session, NOW)]


def pdf_of(client, session, paper="a4"):
    return client.get(reverse("classes:register_pdf", args=[session.pk]), {"paper": paper})


def test_it_goes_by_name_with_the_time_at_the_lathe():
    """Hands come on 30 minutes after 18:30, and for the second sitting 45 + 5 minutes later."""
    assert lines(evening()) == [
        ("Ada Ash", "2b", "lathe 2", "second sitting, 19:50", "3"),
        ("Éva Éder", "", "", "", "2"),
        ("Zoe Zeller", "1a", "lathe 1", "first sitting, 19:00", "1"),
    ]


def test_of_one_sitting_only_the_time_is_told():
    session = planned(room(1))
    sign_up(None, session, PersonFactory(name="Ada Ash"), NOW, Place(1, 1))

    assert lines(session) == [("Ada Ash", "1a", "lathe 1", "19:00", "1")]


def test_whose_lathe_is_out_of_service_is_sent_to_none():
    session = evening()
    Lathe.objects.filter(number=2).update(condition="out", condition_reason="quill")

    assert lines(session)[0] == ("Ada Ash", "", "", "", "3")


@pytest.mark.pdf
@pytest.mark.parametrize(("paper", "size"), [("a4", (210.0, 297.0)), ("letter", (215.9, 279.4))])
def test_it_is_tagged_paper_that_says_nothing_else_of_anybody(as_coordinator, paper, size):
    answer = pdf_of(as_coordinator, evening(), paper)

    words = words_of_pdf(answer.content)
    for said in ("Ada Ash", "2b", "lathe 2, Mill", "second sitting, 19:50", "kit 3", "Thursday 7 March 2030"):
        assert said in words
    for hidden in ("zoe@example.org", "555 0199", "under 16", "Asked Astragal"):
        assert hidden not in words
    assert {tuple(round(side, 1) for side in found) for found in page_sizes(answer.content)} == {size}
    assert catalog(answer.content)["/MarkInfo"]["/Marked"].value is True
    assert catalog(answer.content)["/Lang"] == "en"
    assert figures_without_words(answer.content) == 0
    assert not any(font.startswith("*") for font in fonts(answer.content))


@pytest.mark.pdf
def test_a_long_list_goes_on_over_sheets_that_are_counted(as_coordinator):
    session = planned(room(40), minutes=600)
    for number in range(40):
        sign_up(None, session, PersonFactory(name=f"Person {number:02} of a Long Name"), NOW)

    pages = read_pdf(pdf_of(as_coordinator, session).content).pages

    assert len(pages) > 1
    for number, page in enumerate(pages, 1):
        assert f"{number} / {len(pages)}" in page.extract_text()


def test_the_page_says_the_same(as_coordinator):
    page = as_coordinator.get(reverse("classes:register", args=[evening().pk])).content.decode()

    assert page.index("Ada Ash") < page.index("Éva Éder") < page.index("Zoe Zeller")
    assert "second sitting, 19:50" in page
    assert "Asked Astragal" not in page


def test_a_class_without_people_says_so_instead_of_printing(as_coordinator):
    answer = pdf_of(as_coordinator, planned())

    assert answer.status_code == 422
    assert "Nobody is in this class yet" in answer.content.decode()


def test_a_cancelled_class_has_no_list_to_print(as_coordinator):
    session = evening()
    cancel_class(None, session, 1)

    answer = pdf_of(as_coordinator, session)

    assert answer.status_code == 422
    assert "This class is cancelled, so nothing is printed for it." in answer.content.decode()


def test_an_unknown_paper_is_answered_beside_the_field(as_coordinator):
    answer = pdf_of(as_coordinator, evening(), "slate")

    assert answer.status_code == 422
    assert "Choose A4 or Letter." in answer.content.decode()


def test_without_the_type_setting_library_the_page_names_the_cure(as_coordinator, monkeypatch):
    def unavailable(*_args, **_more):
        raise PrintingUnavailable

    monkeypatch.setattr("club.classes.views.register.render_pdf", unavailable)

    answer = pdf_of(as_coordinator, evening())

    assert answer.status_code == 503
    assert "libpango-1.0-0" in answer.content.decode()


def test_the_page_says_how_many_have_not_said_yes_and_the_handouts_say_it_too(as_coordinator):
    session = evening(day=timezone.localdate() + timedelta(days=20))

    pages = [as_coordinator.get(reverse(name, args=[session.pk])).content.decode() for name in PAGES]

    assert all("A place is kept or offered for one person who" in page for page in pages)
    assert all("Asked Astragal" not in page for page in pages)
