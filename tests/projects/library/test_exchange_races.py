from __future__ import annotations

import json
from dataclasses import replace

import pytest
from django.urls import reverse

from club.base.roles import Role
from projects.library.models import Course, Edition, Project
from tests.at_once import at_once
from tests.projects.library.examples import KNOB
from tests.projects.library.rows import kept
from tests.projects.library.shelves import DRAFT, KEPT, here, library
from tests.projects.library.test_exchange import COURSE, SECOND

pytestmark = pytest.mark.django_db(transaction=True)
AT_ONCE = 8
BRING_IN = "/projects/bring-in/"


@pytest.fixture
def as_instructor(sign_in_as):
    return sign_in_as(Role.INSTRUCTOR)


def looked_over(client, document):
    text = json.dumps(document)
    mark = client.post(BRING_IN, {"text": text}).context["plan"].mark
    return {"text": text, "looked_over": mark}


def test_of_many_who_bring_one_library_in_at_once_exactly_one_does(as_instructor):
    course = replace(COURSE, lessons=(KNOB.key,))
    form = looked_over(as_instructor, library((KNOB, KEPT), (SECOND, DRAFT), courses=(course,)))

    answers = at_once(as_instructor, BRING_IN, [form] * AT_ONCE)

    assert answers == {302: 1, 422: AT_ONCE - 1}
    assert here() == [(KNOB.key, 1, "kept"), (KNOB.key, 2, "draft")]
    assert Course.objects.count() == Project.objects.count() == 1


def test_of_two_libraries_with_another_next_edition_exactly_one_comes_in(as_instructor):
    kept(KNOB)
    forms = [
        looked_over(as_instructor, library((replace(KNOB, title=f"Knob {number}"), DRAFT)))
        for number in range(AT_ONCE)
    ]

    answers = at_once(as_instructor, BRING_IN, forms)

    assert answers == {302: 1, 422: AT_ONCE - 1}
    assert Edition.objects.drafts().count() == 1


def test_of_many_who_mend_one_course_at_once_exactly_one_is_kept(as_instructor):
    kept(KNOB)
    as_instructor.post(
        reverse("projects:course_new"), {"title": "One", "summary": "One.", "lesson_1": KNOB.key}
    )
    mended = {"summary": "Another.", "lesson_1": KNOB.key, "revision": "1"}

    answers = at_once(
        as_instructor,
        reverse("projects:course_mend", args=["one"]),
        [mended | {"title": f"Course {number}"} for number in range(AT_ONCE)],
    )

    assert answers == {302: 1, 422: AT_ONCE - 1}
    assert Course.objects.get().revision == 2
    assert Course.objects.get().lessons.count() == 1
