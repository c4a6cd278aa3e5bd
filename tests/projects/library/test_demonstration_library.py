"""The demonstration club's own projects: sound recipes, sound wood, and a course that can be taught.

What a turner expects of a drawing or an order of work has no standard; it is common practice, and said so.
"""

from __future__ import annotations

import re

import pytest

from projects.library.domain.holding import BetweenCentres, Collet, JamChuck, Mandrel, ScrewChuck, ScrollChuck
from projects.library.domain.json_form import from_json, to_json
from projects.library.domain.materials import (
    AdhesiveNeed,
    BlankNeed,
    ConsumedNeed,
    LengthNeed,
    LiquidNeed,
    SheetNeed,
)
from projects.library.domain.operations import NEED_FREE_END, TURNING
from projects.library.domain.words import Grip, Operation
from projects.library.tables import finishes
from tests.projects.library.demonstration import COURSE, LIBRARY, PROJECTS, RECIPES
from tests.projects.library.looking import findings

every_edition = pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.key)

# What a title or a sentence may write large besides its first word.
WRITTEN_LARGE = re.compile(r"P\d+|PVA|FFP3|P3|MT2")


def words(data):
    """Every text that people read, of a document's part."""
    if isinstance(data, list):
        return [text for entry in data for text in words(entry)]
    if not isinstance(data, dict):
        return []
    read = ("title", "summary", "text", "checkpoint", "watch", "note", "specification", "jaws")
    own = [data[field] for field in read if data.get(field)]
    return own + [text for value in data.values() for text in words(value)]


def all_of(sets):
    return set().union(*sets)


class TestEveryEdition:
    @every_edition
    def test_is_written_as_it_is_read(self, recipe):
        (entry,) = [entry for entry in LIBRARY["editions"] if from_json(entry["recipe"]) == recipe]

        assert to_json(recipe) == entry["recipe"]

    @every_edition
    def test_leaves_the_checks_nothing_to_say(self, recipe):
        assert findings(recipe) == ()

    @every_edition
    def test_has_minutes_that_add_up_and_a_length_that_a_class_can_hold(self, recipe):
        summed = sum(mounting.minutes for mounting in recipe.mountings)
        summed += sum(step.minutes for step in recipe.steps())

        assert summed == recipe.time.hands_on
        assert 45 <= recipe.time.hands_on <= 135

    @every_edition
    def test_has_as_many_steps_as_one_sheet_can_carry(self, recipe):
        assert 7 <= len(list(recipe.steps())) <= 13

    @every_edition
    def test_leaves_a_nub_or_tenon_to_part_from(self, recipe):
        assert recipe.left_end or recipe.right_end

    @every_edition
    def test_keeps_the_tailstock_up_in_every_cut_that_can_be_made_with_it(self, recipe):
        """Common practice: it goes when a step needs the end free, not before."""
        without = [
            step
            for mounting in recipe.mountings
            for step in mounting.steps_without_tailstock()
            if step.operation in TURNING and step.operation not in NEED_FREE_END
        ]

        assert without == []

    @every_edition
    def test_has_its_rest_close_but_clear(self, recipe):
        """3 to 6 mm, or 1/8 to 1/4 in: common practice."""
        gaps = [step.rest_gap.nm / 1e6 for step in recipe.steps() if step.rest_gap]

        assert gaps
        assert all(3 <= gap <= 6.35 for gap in gaps)

    @every_edition
    def test_has_an_easier_and_a_harder_piece_from_the_same_blank(self, recipe):
        assert recipe.easier is not None
        assert recipe.harder is not None
        assert recipe.easier.leaves_out or recipe.easier.profile
        assert recipe.harder.profile != recipe.profile

    @every_edition
    def test_lists_all_that_it_uses_up(self, recipe):
        kinds = {type(need) for need in recipe.materials}
        consumed = {need.key for need in recipe.materials if isinstance(need, ConsumedNeed)}
        liquids = {need.finish for need in recipe.materials if isinstance(need, LiquidNeed)}

        assert kinds >= {BlankNeed, SheetNeed, LiquidNeed}
        assert consumed >= {"towel", "respirator"}
        assert liquids == {coat.finish for coat in recipe.finish}


class TestTheLibrary:
    def test_has_eight_projects_one_of_them_in_two_editions_and_one_with_a_draft(self):
        kept = [entry["recipe"]["key"] for entry in LIBRARY["editions"] if entry["kept"]]
        drafts = [entry["recipe"]["key"] for entry in LIBRARY["editions"] if not entry["kept"]]

        assert len(PROJECTS) == 8
        assert [key for key in PROJECTS if kept.count(key) == 2] == ["supper-bowl"]
        assert drafts == ["egg-cup"]

    def test_tells_its_two_editions_of_the_bowl_apart_in_a_few_things(self):
        first, second = [recipe for recipe in RECIPES if recipe.key == "supper-bowl"]

        assert (first.time.hands_on, second.time.hands_on) == (120, 135)
        assert second.grits == (80, *first.grits)
        assert {step.key for step in second.steps()} - {step.key for step in first.steps()} == {"last-cut"}

    @pytest.mark.parametrize("holding", [BetweenCentres, Collet, ScrewChuck, JamChuck, Mandrel])
    def test_holds_work_in_each_way(self, holding):
        assert any(
            isinstance(mounting.holding, holding) for recipe in RECIPES for mounting in recipe.mountings
        )

    @pytest.mark.parametrize("grip", [Grip.TENON, Grip.RECESS])
    def test_grips_a_tenon_and_a_recess(self, grip):
        grips = [
            mounting.holding.grip
            for recipe in RECIPES
            for mounting in recipe.mountings
            if isinstance(mounting.holding, ScrollChuck)
        ]

        assert grip in grips

    def test_has_spindle_and_face_work_bored_work_and_work_for_food(self):
        assert {recipe.blank.grain_across for recipe in RECIPES} == {True, False}
        assert any(recipe.profile.bore for recipe in RECIPES if not recipe.blank.grain_across)
        assert any(step.operation is Operation.DRILLING for recipe in RECIPES for step in recipe.steps())
        assert {recipe.key for recipe in RECIPES if recipe.food_ware} == {"egg-cup", "supper-bowl"}

    def test_glues_a_dowel_into_a_block_and_lets_it_cure_for_a_day(self):
        knob = PROJECTS["drawer-knob"]
        (glue_up,) = knob.glue_ups

        assert glue_up.parts == ("blank", "dowel")
        assert glue_up.cure_hours >= 24
        assert {type(need) for need in knob.materials} >= {LengthNeed, AdhesiveNeed}

    def test_has_finishes_that_dry_by_oxidation_and_others(self):
        families = {finishes()[coat.finish].family for recipe in RECIPES for coat in recipe.finish}

        assert "drying oil" in families
        assert len(families) >= 5


class TestTheCourse:
    def test_has_six_lessons_of_projects_that_are_there(self):
        assert len(set(COURSE["lessons"])) == 6
        assert set(COURSE["lessons"]) <= PROJECTS.keys()

    def test_brings_a_new_way_of_holding_in_each_lesson(self):
        ways = [
            {
                (type(mounting.holding), getattr(mounting.holding, "grip", None))
                for mounting in PROJECTS[key].mountings
            }
            for key in COURSE["lessons"]
        ]

        assert all(new - all_of(ways[:lesson]) for lesson, new in enumerate(ways))

    def test_asks_for_no_skill_that_no_earlier_lesson_has_taught(self):
        lessons = [PROJECTS[key] for key in COURSE["lessons"]]
        taught = [{step.skill for step in lesson.steps() if step.skill} for lesson in lessons]

        assert all(set(lesson.skills) <= all_of(taught[:place]) for place, lesson in enumerate(lessons))


class TestTheWords:
    def test_name_no_brand(self):
        """A name would be written large inside a sentence; marks of grades and classes are the exception."""
        large = {
            word
            for text in words(LIBRARY)
            for sentence in re.split(r"(?<=[.:;?])\s", text)
            for word in re.findall(r"\b[A-Z][\w-]*", sentence)
            if not sentence.startswith(word) and not WRITTEN_LARGE.fullmatch(word)
        }

        assert large == set()

    def test_never_call_anything_safe(self):
        assert [text for text in words(LIBRARY) if re.search(r"\bsafe", text, re.IGNORECASE)] == []

    def test_speak_as_the_house_does(self):
        unlike = re.compile(
            r"!|\bplease\b|successful|[\u2300\u00d8\u2190-\u21ff]|\bturns? a minute", re.IGNORECASE
        )

        assert [text for text in words(LIBRARY) if unlike.search(text)] == []
