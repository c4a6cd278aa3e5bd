from __future__ import annotations

from dataclasses import replace

import pytest

from projects.library.domain.preparation import Task
from projects.library.sentences.materials import beforehand
from tests.projects.library.examples import KNOB


def said(**changes):
    task = replace(Task(key="order", title="Order slabs", minutes=30), **changes)
    (prepared,) = beforehand(replace(KNOB, preparation=(task,), glue_ups=()))
    return prepared.words


@pytest.mark.parametrize(
    ("hours", "words"),
    [
        (0, "30 min for the class."),
        (24, "30 min for the class; then waits 24 h."),
        (36, "30 min for the class; then waits 36 h."),
        (48, "30 min for the class; then waits 2 days."),
        (168, "30 min for the class; then waits 7 days."),
    ],
)
def test_a_wait_of_whole_days_is_told_in_days(hours, words):
    assert said(lead_hours=hours) == words
