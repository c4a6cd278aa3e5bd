"""A handout for every student of a class: their name, place and kit on each of their sheets."""

from __future__ import annotations

import pytest
from django.urls import reverse

from club.base.printing import PrintingUnavailable
from club.classes.actions.classes import cancel_class
from club.classes.actions.lists import give_up, sign_up
from club.classes.domain.places import Place
from club.classes.models import ClassSession
from club.home import project_page
from tests.club.classes.rows import NOW, planned, room
from tests.factories import PersonFactory
from tests.paper import catalog, figures_without_words, fonts, page_sizes, read_pdf

pytestmark = pytest.mark.django_db

PEOPLE = {"Ada Ash": Place(2, 2), "Bo Beech": Place(1, 1), "Cy Cherry": None}


@pytest.fixture
def session() -> ClassSession:
    made = planned(room(2), sittings=2, note="Wax tonight, 1/2 in of it.")
    for name, place in PEOPLE.items():
        sign_up(None, made, PersonFactory(name=name), NOW, place)
    return made


def pdf_of(client, session, paper="a4", number=None):
    if number is None:
        return client.get(reverse("home:class_handouts_pdf", args=[session.pk]), {"paper": paper})
    return client.get(reverse("home:class_handout_pdf", args=[session.pk, number]), {"paper": paper})


def sheets(pdf: bytes) -> list[str]:
    return [" ".join(page.extract_text().split()) for page in read_pdf(pdf).pages]


@pytest.mark.pdf
@pytest.mark.parametrize(("paper", "size"), [("a4", (210.0, 297.0)), ("letter", (215.9, 279.4))])
def test_every_sheet_says_whose_it_is_and_which_of_how_many(as_coordinator, session, paper, size):
    pdf = pdf_of(as_coordinator, session, paper).content

    pages = sheets(pdf)
    assert {tuple(round(side, 1) for side in found) for found in page_sizes(pdf)} == {size}
    each, rest = divmod(len(pages), 3)
    assert (rest, each > 1) == (0, True)
    for student, (name, place) in enumerate(PEOPLE.items()):
        own = pages[student * each : (student + 1) * each]
        for number, words in enumerate(own, 1):
            assert name in words
            assert f"kit {student + 1}" in words
            assert f"{number} / {each}" in words
            assert place is None or f"{place.name}, kit" in words
            assert not any(other in words for other in PEOPLE if other != name)


@pytest.mark.pdf
def test_the_first_sheet_has_the_row_filled_in_and_what_is_different(as_coordinator, session):
    """Hands come on for the second sitting 30 + 45 + 5 minutes after 18:30."""
    first = sheets(pdf_of(as_coordinator, session).content)[0]

    for said in (
        "name Ada Ash lathe 2b second sitting, 19:50 kit 1 date Thu 7 Mar 2030",
        "Different this time Wax tonight,",
        "Stop: before power",
    ):
        assert said in first.replace("\u00a0", " ").replace("note ", "")


@pytest.mark.pdf
def test_it_is_tagged_with_its_language_and_words_for_every_picture(as_coordinator, session):
    pdf = pdf_of(as_coordinator, session).content

    assert catalog(pdf)["/MarkInfo"]["/Marked"].value is True
    assert catalog(pdf)["/Lang"] == "en"
    assert figures_without_words(pdf) == 0
    assert not any(font.startswith("*") for font in fonts(pdf))
    assert read_pdf(pdf).metadata.title.startswith("Handouts: Drawer knob, ")


@pytest.mark.pdf
def test_one_student_s_handout_is_theirs_alone(as_coordinator, session):
    pages = sheets(pdf_of(as_coordinator, session, number=2).content)

    assert all("Bo Beech" in words for words in pages)
    assert f"{len(pages)} / {len(pages)}" in pages[-1]


@pytest.mark.pdf
def test_equal_lists_give_equal_bytes(as_coordinator, session):
    assert pdf_of(as_coordinator, session).content == pdf_of(as_coordinator, session).content


def test_the_drawing_is_computed_once_however_many_students(as_coordinator, session, monkeypatch):
    computed: list[object] = []

    def counted(*how):
        computed.append(how)
        return project_page.handout_of(*how)

    monkeypatch.setattr("club.home.class_handouts.handout_of", counted)
    monkeypatch.setattr("club.home.views.class_handouts.render_pdf", lambda *_args, **_more: b"%PDF")

    pdf_of(as_coordinator, session)

    assert len(computed) == 1


def test_the_page_has_a_line_for_each_student(as_coordinator, session):
    html = as_coordinator.get(reverse("home:class_handouts", args=[session.pk])).content.decode()

    for number, name in enumerate(PEOPLE, 1):
        assert f'href="{reverse("home:class_handout", args=[session.pk, number])}"><b>{name}</b>' in html


def test_one_student_s_page_says_place_kit_and_what_is_different(as_coordinator, session):
    page = as_coordinator.get(reverse("home:class_handout", args=[session.pk, 1]))

    html = page.content.decode()
    for said in (
        "<h1>Ada Ash</h1>",
        "<dd>2b<span>lathe 2, second sitting, 19:50</span></dd>",
        "Wax tonight,",
    ):
        assert said in html
    assert "Bo Beech" not in html


@pytest.mark.parametrize("number", [4, 99])
def test_who_is_not_in_has_no_handout(as_coordinator, session, number):
    leaving = PersonFactory(name="Di Dogwood")
    sign_up(None, session, leaving, NOW, Place(1, 2))
    give_up(None, session, leaving, NOW)

    answers = [
        as_coordinator.get(reverse("home:class_handout", args=[session.pk, number])),
        pdf_of(as_coordinator, session, number=number),
    ]

    assert [answer.status_code for answer in answers] == [404, 404]


def test_a_class_without_people_says_so_instead_of_an_empty_document(as_coordinator):
    answer = pdf_of(as_coordinator, planned())

    assert answer.status_code == 422
    assert "Nobody is in this class yet" in answer.content.decode()


def test_a_cancelled_class_prints_nothing(as_coordinator, session):
    cancel_class(None, session, 1)

    answers = [pdf_of(as_coordinator, session), pdf_of(as_coordinator, session, number=1)]

    assert [answer.status_code for answer in answers] == [422, 404]
    assert "nothing is printed for it" in answers[0].content.decode()


@pytest.mark.parametrize("number", [None, 1])
def test_an_unknown_paper_is_answered_beside_the_field(as_coordinator, session, number):
    answer = pdf_of(as_coordinator, session, "slate", number)

    assert answer.status_code == 422
    assert "Choose A4 or Letter." in answer.content.decode()


@pytest.mark.parametrize("number", [None, 1])
def test_without_the_type_setting_library_the_page_names_the_cure(
    as_coordinator, session, monkeypatch, number
):
    def unavailable(*_args, **_more):
        raise PrintingUnavailable

    monkeypatch.setattr("club.home.views.class_handouts.render_pdf", unavailable)

    answer = pdf_of(as_coordinator, session, number=number)

    assert answer.status_code == 503
    assert "libpango-1.0-0" in answer.content.decode()
