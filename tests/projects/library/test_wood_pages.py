"""The pages of woods and finishes: what is known, how far to trust it, and that silence is never safety."""

from __future__ import annotations

import re
from html import unescape

import pytest
from django.test import Client
from django.urls import reverse

from club.base.access import Role
from projects.library.finish_pages import finish_rows, finish_sources
from projects.library.tables import finishes, woods
from projects.library.wood_pages import wood_page, wood_rows
from tests.conftest import SignInAs

NOT_SAFE = re.compile(r"does not make it safe|not thereby safe|never means safe")


def page(client: Client, address: str, query: str = "", **arguments: str) -> str:
    answer = client.get(reverse(address, kwargs=arguments) + query)
    assert answer.status_code == 200
    return " ".join(unescape(answer.content.decode()).split())


@pytest.fixture
def as_helper(sign_in_as: SignInAs) -> Client:
    return sign_in_as(Role.HELPER)


class TestRows:
    def test_every_wood_of_either_table_has_one(self):
        keys = [row.key for row in wood_rows(woods())]

        assert set(woods().species) < set(keys)
        assert {"oleander", "yew", "cocobolo"} <= set(keys)
        assert len(set(keys)) == len(keys)

    def test_a_figure_that_no_table_prints_is_empty_and_never_nought(self):
        balsa = next(row for row in wood_rows(woods()) if row.key == "balsa")

        assert (balsa.hardness.value, balsa.gravity.value) == ("", "")
        assert (balsa.density.value, balsa.density.mark) == ("184", "estimated")

    def test_a_recalled_figure_is_marked_and_a_published_one_isnt(self):
        rows = {row.key: row for row in wood_rows(woods())}

        assert rows["spruce_sitka"].gravity.mark == "recalled"
        assert (rows["maple_sugar"].gravity.value, rows["maple_sugar"].gravity.mark) == ("0.63", "")

    def test_a_wood_that_nobody_listed_has_no_effects(self):
        rows = {row.key: row for row in wood_rows(woods())}

        assert rows["cherry_black"].effects == ""
        assert "sensitiser" in rows["iroko"].effects

    def test_every_figure_and_note_of_a_wood_has_its_source(self):
        for key in woods().by_name():
            told = wood_page(woods(), key)
            assert all(figure.source and figure.confidence for figure in told.figures if figure.value)
            assert all(note.source and note.confidence for note in (*told.notes, *told.general))
            assert told.general

    def test_what_nobody_knows_of_a_finish_counts_as_yes(self):
        rows = {row.name: row for row in finish_rows(finishes().values())}

        (oxidation, nut, solvent) = rows["friction polish (shellac, oil, alcohol)"].answers
        assert (nut.words, nut.note, nut.counts) == ("nobody knows", "counts as yes", True)
        assert (solvent.words, solvent.note, solvent.counts) == ("yes", "", True)
        assert oxidation.counts
        assert [answer.counts for answer in rows["lacquer"].answers] == [False, False, True]

    def test_each_source_of_the_finishes_is_named_once_and_each_finish_has_one(self):
        sources = finish_sources(finishes().values())

        assert len({source.source for source in sources}) == len(sources)
        assert all(any(finish.name in one.of for one in sources) for finish in finishes().values())


class TestWoods:
    def test_the_list_says_that_a_wood_that_is_not_listed_is_not_safe_for_that(self, as_helper):
        told = page(as_helper, "projects:woods")

        assert "is not thereby safe" in told
        assert "not listed, which does not make it safe" in told

    def test_every_word_of_the_search_has_to_be_found(self, as_helper):
        told = page(as_helper, "projects:woods", "?q=maple+SUGAR")

        assert "Maple, sugar" in told
        assert "1 wood" in told

    def test_a_search_finds_what_a_wood_is_reported_to_do_and_its_latin_name(self, as_helper):
        assert "Oleander" in page(as_helper, "projects:woods", "?q=direct+toxin")
        assert "Maple, sugar" in page(as_helper, "projects:woods", "?q=acer+saccharum")

    def test_a_group_narrows_the_list(self, as_helper):
        told = page(as_helper, "projects:woods", "?group=softwood&q=cedar")

        assert "Cedar, western redcedar" in told
        assert "Mahogany" not in told

    def test_a_wood_that_isnt_there_is_not_called_safe(self, as_helper):
        assert "That does not make it safe" in page(as_helper, "projects:woods", "?q=nowhere")

    def test_htmx_gets_the_list_alone(self, as_helper):
        address = reverse("projects:woods")

        part = as_helper.get(address, {"q": "maple"}, headers={"HX-Request": "true"}).content.decode()

        assert "Maple, sugar" in part
        assert "<html" not in part

    def test_the_next_page_keeps_what_was_searched_for(self, as_helper):
        assert "?group=hardwood&page=2" in page(as_helper, "projects:woods", "?group=hardwood")
        assert "41 to" in page(as_helper, "projects:woods", "?group=hardwood&page=2")

    @pytest.mark.parametrize(
        "query",
        [
            *("?q=%00", "?q=%ED%A0%80", "?q=%E2%80%AE", "?group=walnut&page=-1", "?page=9999"),
            "?q=" + "x" * 5_000,
        ],
    )
    def test_hostile_questions_are_answered(self, as_helper, query):
        page(as_helper, "projects:woods", query)

    def test_script_stays_text(self, as_helper):
        answer = as_helper.get(reverse("projects:woods"), {"q": "<script>x</script>"})

        assert b"<script>x" not in answer.content

    def test_the_list_asks_the_database_for_nothing_but_the_reader(
        self, as_helper, django_assert_max_num_queries
    ):
        with django_assert_max_num_queries(3):
            page(as_helper, "projects:woods")


class TestWood:
    def test_figures_stand_with_their_source_and_how_far_to_trust_them(self, as_helper):
        told = page(as_helper, "projects:wood", key="iroko")

        assert "not known" in told
        assert "estimated" in told
        assert "Wood Handbook FPL-GTR-282" in told
        assert "published, recalled and not read" in told

    def test_a_listed_wood_has_its_notes_and_those_of_all_woods(self, as_helper):
        told = page(as_helper, "projects:wood", key="yew")

        assert "direct toxin" in told
        assert "strength" in told
        assert "All woods" in told
        assert "No table we have prints figures for this wood." in told

    def test_a_wood_that_is_not_listed_is_told_so(self, as_helper):
        told = page(as_helper, "projects:wood", key="cherry_black")

        assert "No list we have names this wood. That does not make it safe" in told

    def test_a_wood_that_is_not_turned_says_stop(self, as_helper):
        assert "This wood is not turned." in page(as_helper, "projects:wood", key="oleander")
        assert "This wood is not turned." not in page(as_helper, "projects:wood", key="yew")

    def test_a_wood_nobody_knows_is_not_found(self, as_helper):
        assert as_helper.get(reverse("projects:wood", args=["no_such_wood"])).status_code == 404

    def test_no_page_says_that_a_wood_is_safe(self, as_helper):
        for key in ("maple_sugar", "cherry_black", "yew", "oleander", "balsa"):
            told = page(as_helper, "projects:wood", key=key)
            assert not re.search(r"\bsafe\b", NOT_SAFE.sub("", told))


def test_finishes_say_that_the_tin_has_the_last_word(as_helper):
    told = page(as_helper, "projects:finishes")

    assert "the tin and its data sheet" in told
    assert "nobody knows" in told
    assert "counts as yes" in told
    assert "common practice" in told
    assert all(finish.name in told for finish in finishes().values())


def test_no_finish_is_called_safe(as_helper):
    assert not re.search(r"\bsafe\b", page(as_helper, "projects:finishes"))
