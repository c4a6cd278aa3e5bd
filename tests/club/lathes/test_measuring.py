from __future__ import annotations

import re

import pytest
from django.test import Client
from django.urls import reverse

from club.base.access import Role
from club.base.quantities.length import parse_length
from club.lathes.forms.lathe import MEASURED
from club.lathes.measuring import measuring_page
from tests.factories import LatheFactory

pytestmark = pytest.mark.django_db


@pytest.fixture
def page() -> str:
    return Client().get(reverse("lathes:measuring")).content.decode()


def test_it_opens_for_someone_who_is_not_signed_in(page: str):
    assert "Where to measure" in page


@pytest.mark.parametrize("field", MEASURED)
def test_each_measured_field_of_the_form_is_explained_under_its_own_name(page: str, field: str):
    assert page.count(f'id="{field}"') == 1


def test_every_link_within_the_page_leads_somewhere(page: str):
    ids = set(re.findall(r' id="([^"]+)"', page))

    targets = set(re.findall(r'href="#([^"]+)"', page))

    assert targets <= ids


def test_every_drawing_says_itself_in_words(page: str):
    drawings = re.findall(r'<svg class="drawing[^>]*>', page)

    # Three figures stand there twice, for wide and for narrow pages, four once.
    assert len(drawings) == 10
    assert all('role="img"' in drawing for drawing in drawings)
    assert all(len(re.findall(r'aria-label="[^"]{30,}"', drawing)) == 1 for drawing in drawings)


def test_no_drawing_needs_a_style_sheet_on_paper(page: str):
    paths = re.findall(r"<path class=\"[^>]*d=\"M[^>]*>", page)

    assert paths
    assert all("stroke=" in path and "stroke-width=" in path and "fill=" in path for path in paths)
    assert "style=" not in page


def test_it_unplugs_first_and_leaves_the_word_to_manual_and_instructor(page: str):
    stop = page.index("Unplug the lathe before")

    assert stop < page.index("<figure")
    assert "manual and the instructor come first" in page


def test_morse_sizes_are_listed_as_the_standard_prints_them():
    rows = {row.number: row for row in measuring_page()["tapers"]}

    # ISO 296:1991 and ASME B5.10: No. 1 is 12.065 mm at the gauge line, No. 2 17.780 mm and 0.700 in.
    assert (rows[1].gauge_mm, rows[1].ratio) == ("12.07", "20.05")
    assert (rows[2].gauge_mm, rows[2].gauge_in, rows[2].ratio) == ("17.78", "0.700", "20.02")
    assert (rows[2].small_mm, rows[2].small_in) == ("14.53", "0.572")


def test_nose_threads_are_listed_by_diameter_with_how_close_they_stand():
    rows = measuring_page()["noses"]

    sizes = [float(row.major_mm) for row in rows]
    shown = {row.designation: (row.major_mm, row.major_in, row.pitch) for row in rows}
    assert sizes == sorted(sizes)
    # ASME B1.1 and ISO 724.
    assert shown["1 1/4-8"] == ("31.75", "1.250", "8 in 1 in")
    assert shown["M33x3.5"] == ("33.00", "1.299", "3.5 mm pitch")


def test_a_lathes_own_page_names_the_measures_nobody_took(sign_in_as):
    lathe = LatheFactory()

    page = sign_in_as(Role.COORDINATOR).get(lathe.get_absolute_url()).content.decode()

    assert "Dashed: not measured (nose to handwheel face, swing over bed, swing over banjo" in page


def test_a_list_says_each_lathe_in_words(sign_in_as, measured_lathe):
    page = sign_in_as(Role.COORDINATOR).get(reverse("lathes:list")).content.decode()

    assert (
        'aria-label="Lathe 3, swing 12\N{NO-BREAK SPACE}in, 36\N{NO-BREAK SPACE}in between centres"' in page
    )


@pytest.fixture
def measured_lathe():
    return LatheFactory(
        number=3, swing_over_bed=parse_length("12 in"), centres_greatest=parse_length("36 in")
    )
