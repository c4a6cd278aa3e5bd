from __future__ import annotations

from dataclasses import replace

import pytest

from club.base.quantities.length import LengthStyle
from club.home.order_of_work import order_of_work
from projects.library.domain.recipe import Caution, Recipe
from projects.library.domain.words import Moment, Operation, Severity
from projects.library.sentences.lengths import shown_in
from projects.library.tables import finishes, woods
from safety.topics.always_said import cautions_for
from tests.club.home.said import everything_said
from tests.projects.library.demonstration import PROJECTS, RECIPES
from tests.projects.library.examples import BOWL, KNOB, with_step

SHOW = shown_in(LengthStyle.AS_TYPED)


def work_of(recipe: Recipe):
    return order_of_work(recipe, cautions_for(recipe, woods(), finishes()), SHOW)


def moments(said):
    return [each.moment for each in said]


def lines(said):
    return [line.statement for each in said for group in each.groups for line in group.lines]


def test_each_moment_is_said_before_its_first_step():
    steps = work_of(KNOB).mountings[0].steps

    said = {step.step.operation: moments(step.before) for step in steps if step.before}

    assert said == {
        Operation.SANDING: [Moment.SANDING],
        Operation.FINISHING: [Moment.FINISHING],
    }


def test_before_power_stands_at_the_head_and_leaving_at_the_end():
    work = work_of(KNOB)

    assert moments(work.first) == [Moment.BEFORE_POWER]
    assert moments(work.last) == [Moment.LEAVING]


def test_what_a_way_of_holding_calls_for_is_said_where_it_is_first_used():
    first, last = work_of(replace(BOWL, mountings=tuple(reversed(BOWL.mountings)))).mountings

    assert not any("Faceplate" in line for line in lines(first.before))
    assert any("Faceplate" in line for line in lines(last.before))


def test_what_no_way_of_holding_calls_for_is_said_at_the_first_mounting():
    own = Caution(Moment.MOUNTING, Severity.STOP, "Two people lift this blank.")

    faceplate, chuck = work_of(replace(BOWL, cautions=(own,))).mountings

    assert "Two people lift this blank." in lines(faceplate.before)
    assert "Two people lift this blank." not in lines(chuck.before)


def test_a_finish_that_is_polished_on_is_spoken_of_before_the_polishing():
    polished = with_step(KNOB, "oil", operation=Operation.POLISHING)

    said = {step.step.key: moments(step.before) for step in work_of(polished).mountings[0].steps}

    assert said["oil"] == [Moment.FINISHING]


def test_a_moment_without_a_step_of_its_own_stands_at_the_head():
    own = Caution(Moment.DRILLING, Severity.CAUTION, "The hole is drilled at the bench.")

    work = work_of(replace(KNOB, cautions=(own,)))

    assert "The hole is drilled at the bench." in lines(work.first)


@pytest.mark.parametrize("recipe", [*RECIPES, KNOB, BOWL], ids=lambda recipe: recipe.key)
def test_every_line_is_said_once_and_none_is_lost(recipe):
    meant = sorted(lines(cautions_for(recipe, woods(), finishes())))

    assert sorted(lines(everything_said(work_of(recipe)))) == meant


def test_the_demonstration_says_a_chucks_stop_at_the_chuck():
    cup = PROJECTS["egg-cup"]
    centres, chuck = work_of(cup).mountings[:2]

    assert any("chuck" in line.lower() for line in lines(chuck.before))
    assert not any("chuck" in line.lower() for line in lines(centres.before))
