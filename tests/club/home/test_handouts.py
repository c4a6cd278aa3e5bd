from __future__ import annotations

from dataclasses import replace

import pytest
from django.urls import reverse

from club.base.printing import PrintingUnavailable
from projects.library.domain.recipe import Caution
from projects.library.domain.words import Moment, Severity
from tests.browser.walking import words_of_pdf
from tests.club.home.said import everything_said
from tests.paper import catalog, figures_without_words, fonts, page_sizes, read_pdf
from tests.projects.library.demonstration import RECIPES
from tests.projects.library.examples import KNOB
from tests.projects.library.rows import kept

pytestmark = pytest.mark.django_db
A4, LETTER = (210.0, 297.0), (215.9, 279.4)


def handout(client, edition, paper="a4"):
    address = reverse("home:handout_pdf", args=[edition.project.key, edition.number])
    return client.get(address, {"paper": paper})


def stops_of(answer):
    groups = [group for moment in everything_said(answer.context["work"]) for group in moment.groups]
    return [line.statement for group in groups for line in group.lines if group.severity is Severity.STOP]


@pytest.mark.pdf
@pytest.mark.parametrize(("paper", "size"), [("a4", A4), ("letter", LETTER)])
def test_it_is_tagged_paper_of_the_size_that_was_asked_for(as_coordinator, paper, size):
    pdf = handout(as_coordinator, kept(), paper).content

    assert {tuple(round(side, 1) for side in found) for found in page_sizes(pdf)} == {size}
    assert catalog(pdf)["/MarkInfo"]["/Marked"].value is True
    assert figures_without_words(pdf) == 0
    assert not any(font.startswith("*") for font in fonts(pdf))


@pytest.mark.pdf
def test_it_has_steps_cautions_sanding_finish_notes_and_a_title_block(as_coordinator):
    words = words_of_pdf(handout(as_coordinator, kept()).content)

    for said in (
        "Drawer knob",
        "Stop: before power",
        "Order of work",
        "not above 1 600",
        "P120, P180, P240",
        "walnut oil",
        "Notes",
        "100 mm",
        "4 in",
        "local codes come first",
    ):
        assert said in words.replace("\u00a0", " ")


@pytest.mark.pdf
def test_every_sheet_carries_the_title_block_and_its_number(as_coordinator):
    pages = [page.extract_text() for page in read_pdf(handout(as_coordinator, kept()).content).pages]

    assert len(pages) > 1
    for number, words in enumerate(pages, 1):
        assert "Scale" in words
        assert f"{number} / {len(pages)}" in words


@pytest.mark.pdf
def test_equal_editions_give_equal_bytes(as_coordinator):
    edition = kept()

    assert handout(as_coordinator, edition).content == handout(as_coordinator, edition).content


def test_no_edition_of_the_demonstration_has_more_than_nine_stop_lines(as_coordinator):
    for number, recipe in enumerate(RECIPES):
        edition = kept(replace(recipe, key=f"project-{number}"))

        stops = stops_of(as_coordinator.get(edition.get_absolute_url()))

        assert 0 < len(stops) <= 9, recipe.title
        assert len(stops) == len(set(stops)), recipe.title


def test_a_projects_own_stop_is_among_the_nine(as_coordinator):
    own = Caution(Moment.TURNING, Severity.STOP, "Stop when the dowel creaks.")
    edition = kept(replace(KNOB, cautions=(own,)))

    stops = stops_of(as_coordinator.get(edition.get_absolute_url()))

    assert any("Stop when the dowel creaks." in stop for stop in stops)


def test_an_unknown_paper_is_answered_beside_the_field(as_coordinator):
    answer = handout(as_coordinator, kept(), "slate")

    assert answer.status_code == 422
    assert "Choose A4 or Letter." in answer.content.decode()


def test_without_the_type_setting_library_the_page_names_the_cure(as_coordinator, monkeypatch):
    def unavailable(*_args, **_more):
        raise PrintingUnavailable

    monkeypatch.setattr("club.home.views.projects.render_pdf", unavailable)

    answer = handout(as_coordinator, kept())

    assert answer.status_code == 503
    assert "libpango-1.0-0" in answer.content.decode()
