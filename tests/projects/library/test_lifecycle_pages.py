from __future__ import annotations

from dataclasses import replace

import pytest
from django.urls import reverse

from projects.library.actions import save_draft
from projects.library.models import Edition, Project
from tests.projects.library.examples import KNOB, with_step
from tests.projects.library.rows import draft, kept, next_draft

pytestmark = pytest.mark.django_db


def address(name, edition):
    return reverse(f"projects:{name}", args=[edition.project.key])


class TestKeeping:
    def test_is_asked_and_then_done(self, as_coordinator):
        edition = draft()

        asked = as_coordinator.get(address("keep", edition)).content.decode()
        answer = as_coordinator.post(address("keep", edition), {"revision": edition.revision})

        assert "Keep this draft as edition 1?" in asked
        assert answer.url == edition.get_absolute_url()
        assert Edition.objects.get().state == "kept"

    def test_leads_to_what_differs_from_the_edition_before_it(self, as_coordinator):
        first = kept()
        second = next_draft(first, title="Tall knob")
        way = reverse("projects:difference", args=[first.project.key, 1, 2])

        asked = as_coordinator.get(address("keep", second)).content.decode()

        assert f'href="{way}"' in asked

    def test_of_a_first_edition_has_nothing_to_differ_from(self, as_coordinator):
        asked = as_coordinator.get(address("keep", draft())).content.decode()

        assert "What differs" not in asked

    def test_of_something_refused_is_not_offered_and_names_what_stops_it(self, as_coordinator):
        edition = draft(with_step(KNOB, "rough", stage=None))

        asked = as_coordinator.get(address("keep", edition)).content.decode()
        answer = as_coordinator.post(address("keep", edition), {"revision": edition.revision})

        assert "Until this is mended" in asked
        assert 'class="do first"' not in asked
        assert answer.status_code == 422
        assert "What is named below stops it from being kept" in answer.content.decode()
        assert Edition.objects.get().is_draft

    def test_of_a_draft_that_somebody_mended_since_writes_nothing(self, as_coordinator):
        edition = draft()
        save_draft(None, edition, replace(KNOB, title="Desk knob"), edition.revision)

        answer = as_coordinator.post(address("keep", edition), {"revision": edition.revision})

        assert answer.status_code == 422
        assert "Somebody else changed this since you opened it" in answer.content.decode()
        assert Edition.objects.get().is_draft

    def test_without_a_readable_revision_is_refused(self, as_coordinator):
        edition = draft()

        for revision in ("", "x", "9" * 400):
            answer = as_coordinator.post(address("keep", edition), {"revision": revision})

            assert answer.status_code == 422
        assert Edition.objects.get().is_draft

    def test_of_a_kept_edition_is_not_found(self, as_coordinator):
        assert as_coordinator.get(address("keep", kept())).status_code == 404


class TestThrowingAway:
    def test_is_asked_and_then_done(self, as_coordinator):
        edition = draft()

        asked = as_coordinator.get(address("throw_away", edition)).content.decode()
        answer = as_coordinator.post(address("throw_away", edition), {"revision": edition.revision})

        assert "so the project goes with it" in asked
        assert answer.url == reverse("projects:list")
        assert not Project.objects.exists()

    def test_of_a_later_draft_leaves_what_is_kept(self, as_coordinator):
        edition = kept()
        following = next_draft(edition)

        asked = as_coordinator.get(address("throw_away", following)).content.decode()
        as_coordinator.post(address("throw_away", following), {"revision": following.revision})

        assert "The editions that are kept stay as they are" in asked
        assert list(Edition.objects.all()) == [edition]


class TestTheNextEdition:
    def test_leads_to_its_draft(self, as_coordinator):
        edition = kept()

        answer = as_coordinator.post(address("next_edition", edition))

        assert answer.url == address("draft", edition)
        assert Edition.objects.drafts().get().number == 2

    def test_that_is_begun_already_is_gone_on_with(self, as_coordinator):
        edition = kept()
        as_coordinator.post(address("next_edition", edition))

        answer = as_coordinator.post(address("next_edition", edition), follow=True)

        assert "was begun already" in answer.content.decode()
        assert Edition.objects.count() == 2

    def test_of_a_project_that_is_not_there_is_not_found(self, as_coordinator):
        address_of_none = reverse("projects:next_edition", args=["no-such-thing"])

        assert as_coordinator.post(address_of_none).status_code == 404
