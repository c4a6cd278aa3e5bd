from __future__ import annotations

from dataclasses import replace

import pytest
from django.urls import reverse

from club.base.access import Role
from tests.projects.library.examples import BOWL, KNOB
from tests.projects.library.rows import draft, kept, next_draft

pytestmark = pytest.mark.django_db


def page(client, edition):
    return client.get(edition.get_absolute_url()).content.decode()


class TestTheProjectPage:
    def test_shows_the_last_kept_edition_and_not_the_draft_after_it(self, as_coordinator):
        edition = kept()
        next_draft(edition, title="Tall knob")

        answer = as_coordinator.get(reverse("home:project", args=["drawer-knob"]))

        assert answer.context["edition"] == edition
        assert "Write on the draft of edition 2" in answer.content.decode()

    def test_shows_the_draft_of_a_project_that_has_nothing_else(self, as_coordinator):
        edition = draft()

        answer = as_coordinator.get(reverse("home:project", args=["drawer-knob"]))

        assert answer.context["edition"] == edition

    def test_of_a_draft_leads_back_to_writing_it_and_the_writing_to_the_page(self, as_coordinator):
        kept_one = kept()
        written = next_draft(kept_one, title="Tall knob")
        writing = reverse("projects:draft", args=["drawer-knob"])

        read, wrote = page(as_coordinator, written), as_coordinator.get(writing).content.decode()

        assert f'href="{writing}">Go on writing' in read
        assert f'href="{written.get_absolute_url()}">Read it as a page' in wrote
        assert "Go on writing" not in page(as_coordinator, kept_one)

    def test_of_a_draft_offers_no_writing_to_a_helper(self, sign_in_as):
        written = draft()

        read = page(sign_in_as(Role.HELPER), written)

        assert "Go on writing" not in read

    def test_what_follows_from_the_drawing_changes_with_it(self, as_coordinator):
        edition = kept()
        wider = tuple(
            replace(mark, diameter=type(mark.diameter)(mark.diameter.nm * 11 // 10))
            for mark in KNOB.profile.marks
        )
        larger = next_draft(edition, profile=replace(KNOB.profile, marks=wider))

        facts = [
            {
                fact.name: fact.value
                for fact in as_coordinator.get(each.get_absolute_url()).context["facts"].all
            }
            for each in (edition, larger)
        ]

        assert {name for name in facts[0] if facts[0][name] != facts[1].get(name)} >= {
            "largest diameter",
            "volume",
            "surface",
            "mass",
            "turned away",
        }

    def test_a_step_says_its_limit_and_how_it_came_about(self, as_coordinator):
        """A block of 1 1/2 in square is 2.12 in across its corners: 3 500 over that is 1 649, the ceiling
        for roughing spindle work is 1 600. Class limits are common practice, no standard."""
        work = as_coordinator.get(kept().get_absolute_url()).context["work"]

        rough = work.mountings[0].steps[1]

        assert rough.speed == "not above 1\u00a0600"
        assert "1\u00a0600" in rough.worked_out

    def test_a_step_without_power_says_stopped(self, as_coordinator):
        steps = as_coordinator.get(kept().get_absolute_url()).context["work"].mountings[0].steps

        assert [step.speed for step in steps if step.step.key in {"mount", "oil"}] == ["stopped", "stopped"]

    def test_lengths_stand_in_the_readers_units(self, as_coordinator):
        edition = kept()
        as_coordinator.account.lengths = "millimetres"
        as_coordinator.account.save()

        assert "38.1\u00a0mm square" in page(as_coordinator, edition)

    def test_a_length_worked_out_is_in_the_unit_of_the_drawing(self, as_coordinator):
        facts = as_coordinator.get(kept().get_absolute_url()).context["facts"].all

        assert next(fact.value for fact in facts if fact.name == "length") == "1\u00a01/2\u00a0in"

    def test_those_who_only_read_are_offered_nothing_to_write(self, sign_in_as):
        edition = kept()

        html = page(sign_in_as(Role.HELPER), edition)

        assert "Begin the next edition" not in html
        assert "Print the handout, A4" in html

    def test_an_edition_that_is_not_there_is_not_found(self, as_coordinator):
        edition = kept()

        assert as_coordinator.get(reverse("home:edition", args=[edition.project.key, 9])).status_code == 404
        assert as_coordinator.get(reverse("home:project", args=["no-such-thing"])).status_code == 404
        assert as_coordinator.get(reverse("home:handout", args=["no-such-thing", 1])).status_code == 404

    def test_no_step_of_face_work_is_left_without_what_is_said_of_turning(self, as_coordinator):
        work = as_coordinator.get(kept(BOWL).get_absolute_url()).context["work"]

        moments = [moment.moment.value for step in work.mountings[0].steps for moment in step.before]

        assert "turning" in moments
