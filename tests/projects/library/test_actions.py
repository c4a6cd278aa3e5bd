from __future__ import annotations

from dataclasses import replace
from threading import Barrier, Thread

import pytest
from django.db import connection

from club.base.changes import changes_of
from club.base.models import Change
from club.base.writing import StaleError, TakenError
from projects.library.actions import (
    NotGoodError,
    add_edition,
    add_project,
    keep_draft,
    next_edition,
    save_draft,
    throw_away,
)
from projects.library.models import Edition, EditionWord, Project
from projects.library.tables import woods
from tests.projects.library.examples import BOWL, KNOB, with_step
from tests.projects.library.rows import draft, kept, next_draft

pytestmark = pytest.mark.django_db
NOT_GOOD = replace(KNOB, left_end=None, right_end=None)


def words(edition: Edition, kind: str) -> list[str]:
    return list(edition.words.filter(kind=kind).values_list("word", flat=True))


class TestWriting:
    def test_the_first_edition_of_a_project_has_the_recipes_own_name(self):
        edition = draft()

        assert (edition.project.key, edition.number, edition.state) == ("drawer-knob", 1, "draft")
        assert Edition.objects.get().recipe == KNOB

    def test_a_key_is_one_projects_only(self):
        draft()

        with pytest.raises(TakenError):
            add_project(None, KNOB)

        assert Project.objects.count() == Edition.objects.count() == 1

    def test_what_is_saved_is_found_by_its_words(self):
        edition = draft()

        save_draft(None, edition, replace(BOWL, key=KNOB.key), edition.revision)

        assert words(edition, "holding") == ["faceplate", "scroll_chuck"]
        assert words(edition, "wood") == ["cherry_black"]
        assert words(edition, "finish") == words(edition, "needs") == []

    def test_a_save_on_an_old_revision_writes_nothing(self):
        edition = draft()
        save_draft(None, edition, replace(KNOB, title="Door knob"), edition.revision)

        with pytest.raises(StaleError):
            save_draft(None, edition, replace(KNOB, title="Desk knob"), edition.revision)

        assert Edition.objects.get().title == "Door knob"

    def test_the_log_tells_the_value_that_was_rewritten_and_nothing_else(self):
        edition = draft()

        save_draft(None, edition, with_step(KNOB, "rough", minutes=11), edition.revision)

        assert changes_of(edition)[0].lines == [["mountings 1, steps 2, minutes", "8", "11"]]


class TestKeeping:
    def test_a_kept_edition_holds_the_density_and_spread_of_the_tables(self):
        edition = draft()

        keep_draft(None, edition, edition.revision)

        found = Edition.objects.get()
        density = woods().species["maple_sugar"].density_dry.value
        assert found.state == "kept"
        assert found.kept_at is not None
        assert found.recipe.blank.density_kg_per_m3 == pytest.approx(float(density), abs=0.5)
        assert found.recipe.finish[0].spread_cm2_per_ml == 100

    def test_what_is_refused_is_not_kept(self):
        edition = draft(NOT_GOOD)

        with pytest.raises(NotGoodError):
            keep_draft(None, edition, edition.revision)

        assert Edition.objects.get().is_draft

    def test_nothing_refused_comes_in_as_kept(self):
        with pytest.raises(NotGoodError):
            add_project(None, NOT_GOOD, kept=True)

        assert not Project.objects.exists()
        assert not Change.objects.exists()

    def test_a_kept_edition_is_never_written_again(self):
        edition = kept()

        with pytest.raises(StaleError):
            save_draft(None, edition, replace(KNOB, title="Another"), edition.revision)
        with pytest.raises(StaleError):
            keep_draft(None, edition, edition.revision)
        with pytest.raises(StaleError):
            throw_away(None, edition, edition.revision)

        assert Edition.objects.get().title == "Drawer knob"


class TestTheNextEdition:
    def test_begins_as_the_last_one_kept(self):
        edition = kept()

        following = next_edition(None, edition.project)

        assert (following.number, following.state) == (2, "draft")
        assert following.recipe == edition.recipe

    def test_is_begun_once(self):
        edition = kept()
        next_edition(None, edition.project)

        with pytest.raises(TakenError):
            next_edition(None, edition.project)

        assert Edition.objects.count() == 2

    def test_needs_a_kept_one_before_it(self):
        edition = draft()

        with pytest.raises(StaleError):
            next_edition(None, edition.project)

    def test_is_not_meant_before_it_is_kept(self):
        edition = kept()
        following = next_draft(edition, title="Tall knob")

        assert list(Edition.objects.newest()) == [edition]

        keep_draft(None, following, following.revision)
        assert list(Edition.objects.newest()) == [following]


class TestThrowingAway:
    def test_the_kept_editions_stay(self):
        edition = kept()
        following = next_draft(edition)

        throw_away(None, following, following.revision)

        assert list(Edition.objects.all()) == [edition]
        assert Change.objects.first().deed == Change.Deed.GONE

    def test_a_project_without_an_edition_goes(self):
        edition = draft()

        throw_away(None, edition, edition.revision)

        assert not Project.objects.exists()
        assert not EditionWord.objects.exists()


@pytest.mark.django_db(transaction=True)
def test_of_eight_who_begin_the_next_edition_at_once_one_does():
    edition = kept()
    start = Barrier(8)
    ended: list[object] = []

    def begin() -> None:
        start.wait()
        try:
            ended.append(add_edition(None, edition.project, edition.recipe).number)
        except TakenError:
            ended.append("taken")
        finally:
            connection.close()

    threads = [Thread(target=begin) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert sorted(map(str, ended)) == ["2", *["taken"] * 7]
