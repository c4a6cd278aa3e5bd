"""What changed from one edition to the next."""

from __future__ import annotations

from dataclasses import fields, replace
from itertools import combinations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from club.base.quantities.length import parse_length
from projects.library.domain.alignment import kept_in_order
from projects.library.domain.blank import RoundBlank
from projects.library.domain.difference import Change, ChangeKind, Stop, difference
from projects.library.domain.recipe import Recipe
from tests.projects.library.examples import (
    BEAD,
    BOWL,
    KNOB,
    MOUNT,
    OIL,
    PART,
    ROUGH,
    SAND,
    inches,
    outline,
    with_mounting,
    with_step,
)
from tests.projects.library.strategies import recipes

SLOW = settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
COLLET = Stop("mountings", 1)


def only(new: Recipe, old: Recipe = KNOB) -> Change:
    (change,) = difference(old, new)
    return change


def with_steps(*steps: object) -> Recipe:
    return with_mounting(KNOB, 0, steps=steps)


def test_step_2_of_mounting_2_with_other_minutes_says_what_they_were_and_are():
    change = only(with_step(BOWL, "sand-bowl", minutes=12), BOWL)

    place = (Stop("mountings", 2), Stop("steps", 2))
    assert change == Change(ChangeKind.CHANGED, place, "minutes", 8, 12)


@pytest.mark.parametrize(
    ("new", "field", "before", "after"),
    [
        (replace(KNOB, title="Knob"), "title", "Drawer knob", "Knob"),
        (replace(KNOB, grits=(120, 180)), "grits", (120, 180, 240), (120, 180)),
        (replace(KNOB, food_ware=True), "food_ware", False, True),
        (replace(KNOB, skills=()), "skills", ("parting_tool",), ()),
    ],
)
def test_a_value_of_the_recipe_itself_has_no_place(new, field, before, after):
    assert only(new) == Change(ChangeKind.CHANGED, (), field, before, after)


def test_a_value_that_is_left_out_now_is_none():
    change = only(with_step(KNOB, "rough", rest_gap=None))

    place = (COLLET, Stop("steps", 2))
    assert change == Change(ChangeKind.CHANGED, place, "rest_gap", inches("1/8"), None)


class TestMarks:
    def test_that_moved_say_where_they_were(self):
        new = outline(("0", "3/4"), ("1/2", "5/8"), ("1 1/8", "1 1/4"), ("1 1/2", "1/2"))

        change = only(replace(KNOB, profile=new))

        place = (Stop("profile"), Stop("marks", 3))
        assert change == Change(ChangeKind.CHANGED, place, "at", inches("1"), inches("1 1/8"))
        assert change.after.typed == "1 1/8 in"  # type: ignore[attr-defined]

    def test_put_in_between_leave_the_others_alone(self):
        new = outline(("0", "3/4"), ("1/4", "3/4"), ("1/2", "5/8"), ("1", "1 1/4"), ("1 1/2", "1/2"))

        changes = difference(KNOB, replace(KNOB, profile=new))

        assert [(one.kind, one.place) for one in changes] == [
            (ChangeKind.ADDED, (Stop("profile"), Stop("marks", 2))),
            (ChangeKind.ADDED, (Stop("profile"), Stop("shapes", 4))),
        ]

    def test_taken_out_have_their_old_number(self):
        new = outline(("0", "3/4"), ("1", "1 1/4"), ("1 1/2", "1/2"))

        change = difference(KNOB, replace(KNOB, profile=new))[0]

        assert (change.kind, change.place) == (ChangeKind.TAKEN_OUT, (Stop("profile"), Stop("marks", 2)))
        assert change.before == KNOB.profile.marks[1]

    def test_typed_otherwise_for_the_same_length_are_no_change(self):
        blank = RoundBlank("maple_sugar", parse_length("1 in"), parse_length("2 in"))
        old = replace(KNOB, blank=blank)

        assert difference(old, replace(old, blank=replace(blank, diameter=parse_length("25.4 mm")))) == ()


class TestSteps:
    def test_put_in_stand_under_their_new_number(self):
        check = replace(MOUNT, key="check", text="Measure.")

        change = only(with_steps(MOUNT, ROUGH, check, BEAD, SAND, OIL, PART))

        assert change == Change(ChangeKind.ADDED, (COLLET, Stop("steps", 3)), "", None, check)

    def test_taken_out_stand_under_their_old_number(self):
        change = only(with_steps(MOUNT, ROUGH, SAND, OIL, PART))

        assert change == Change(ChangeKind.TAKEN_OUT, (COLLET, Stop("steps", 3)), "", BEAD, None)

    def test_that_changed_places_are_as_few_as_can_be(self):
        change = only(with_steps(MOUNT, BEAD, SAND, OIL, ROUGH, PART))

        assert change == Change(ChangeKind.MOVED, (COLLET, Stop("steps", 5)), "", 2, 5)

    def test_that_moved_and_changed_say_both(self):
        oil = replace(OIL, minutes=7)

        changes = difference(KNOB, with_steps(OIL, MOUNT, ROUGH, BEAD, SAND, PART))
        both = difference(KNOB, with_steps(oil, MOUNT, ROUGH, BEAD, SAND, PART))

        assert [one.kind for one in changes] == [ChangeKind.MOVED]
        place = (COLLET, Stop("steps", 1))
        assert both == (
            Change(ChangeKind.MOVED, place, "", 5, 1),
            Change(ChangeKind.CHANGED, place, "minutes", 5, 7),
        )


def test_a_blank_of_another_form_is_replaced():
    round_one = RoundBlank("maple_sugar", inches("1 1/2"), inches("2"))

    change = only(replace(KNOB, blank=round_one))

    assert change == Change(ChangeKind.REPLACED, (Stop("blank"),), "", KNOB.blank, round_one)


def test_a_variant_that_comes_or_goes_is_named():
    assert only(replace(KNOB, easier=None)).kind is ChangeKind.TAKEN_OUT
    assert only(replace(KNOB, harder=KNOB.easier)) == Change(
        ChangeKind.ADDED, (Stop("harder"),), "", None, KNOB.easier
    )


@SLOW
@given(recipes(), st.sampled_from([KNOB, BOWL]), st.sampled_from([field.name for field in fields(Recipe)]))
def test_a_part_taken_from_another_recipe_changes_there_and_nowhere_else(one, other, name):
    mixed = replace(one, **{name: getattr(other, name)})

    changes = difference(one, mixed)

    assert (changes == ()) == (one == mixed)
    assert {change.place[0].field if change.place else change.field for change in changes} <= {name}


@SLOW
@given(recipes(), st.data())
def test_mixing_the_steps_moves_some_and_changes_none(recipe, data):
    mounting = recipe.mountings[0]
    mixed = tuple(data.draw(st.permutations(mounting.steps)))

    changes = difference(recipe, with_mounting(recipe, 0, steps=mixed))

    assert {one.kind for one in changes} <= {ChangeKind.MOVED}
    assert (changes == ()) == (mixed == mounting.steps)


@given(st.permutations(range(7)))
def test_the_longest_run_that_is_in_order_stays(order):
    """Held against every selection of places."""
    pairs = list(enumerate(order))
    rising = [
        run for size in range(len(order) + 1) for run in combinations(order, size) if list(run) == sorted(run)
    ]

    kept = kept_in_order(pairs)

    assert len(kept) == max(len(run) for run in rising)
    assert [new for _old, new in pairs if new in kept] == sorted(kept)
