"""What a draft's page says of each entry: its title, then lines under it, "" for those that say nothing."""

from __future__ import annotations

from collections.abc import Mapping

from django.utils.translation import gettext as _

from projects.library.domain.keys import skill_words
from projects.library.domain.mountings import Mounting, Step
from projects.library.domain.preparation import GlueUp, Task
from projects.library.domain.recipe import Caution, ClassTime, End, Recipe, Variant
from projects.library.sentences.holding import holding_words, tailstock_words
from projects.library.sentences.lengths import Show
from projects.library.sentences.materials import prepared_words
from projects.library.sentences.words import word_for

Lines = tuple[str, ...]
# The words for things that are named by their keys.
Titles = Mapping[str, str]


def about_lines(recipe: Recipe) -> Lines:
    return (recipe.title, recipe.summary, _("For food.") if recipe.food_ware else "")


def end_words(end: End | None, show: Show) -> str:
    if end is None:
        return _("nothing is left to hold it by")
    words = {"kind": word_for(end.kind), "across": show(end.diameter), "length": show(end.length)}
    return _("%(kind)s, %(across)s across, %(length)s long") % words


def mounting_lines(mounting: Mounting, show: Show) -> Lines:
    titles = {
        step.key: _("step %(number)s") % {"number": number} for number, step in enumerate(mounting.steps, 1)
    }
    stands = {"length": show(mounting.stands_out), "minutes": mounting.minutes}
    return (
        mounting.title,
        holding_words(mounting.holding, show),
        tailstock_words(mounting, titles),
        _("stands out by %(length)s, %(minutes)s min to put it on") % stands,
        _("turned round, the right end at the headstock") if mounting.turned_round else "",
    )


def step_lines(step: Step, show: Show) -> Lines:
    hole = step.hole
    return (
        step.text,
        ", ".join(fact for fact in _facts(step, show) if fact),
        _("Hole: %(across)s, %(depth)s deep") % {"across": show(hole.diameter), "depth": show(hole.depth)}
        if hole
        else "",
        _("Checkpoint: %(text)s") % {"text": step.checkpoint} if step.checkpoint else "",
        _("Watch: %(text)s") % {"text": step.watch} if step.watch else "",
        _("Teaches: %(skill)s") % {"skill": skill_words(step.skill)} if step.skill else "",
    )


def _facts(step: Step, show: Show) -> Lines:
    return (
        word_for(step.operation),
        word_for(step.tool) if step.tool else "",
        word_for(step.spindle),
        _("speed to %(stage)s") % {"stage": word_for(step.stage)} if step.stage else "",
        _("rest gap %(gap)s") % {"gap": show(step.rest_gap)} if step.rest_gap else "",
        _("%(minutes)s min") % {"minutes": step.minutes},
        _("may be left out") if step.may_be_left_out else "",
    )


def glue_up_lines(glue_up: GlueUp, needs: Titles, titles: Titles) -> Lines:
    parts = {"parts": _named(glue_up.parts, needs), "glue": needs.get(glue_up.adhesive, glue_up.adhesive)}
    return (
        glue_up.title,
        _("%(parts)s; with %(glue)s") % parts,
        prepared_words(glue_up, titles),
        glue_up.watch,
    )


def task_lines(task: Task, titles: Titles) -> Lines:
    return (task.title, prepared_words(task, titles), task.watch)


def _named(keys: tuple[str, ...], titles: Titles) -> str:
    return ", ".join(titles.get(key, key) for key in keys)


def caution_lines(caution: Caution) -> Lines:
    return (caution.text, f"{word_for(caution.severity)}, {word_for(caution.moment)}")


def time_words(time: ClassTime) -> str:
    values = {
        "briefing": time.briefing,
        "demonstration": time.demonstration,
        "hands_on": time.hands_on,
        "change": time.change_over,
        "clean": time.clean_up,
    }
    words = _(
        "briefing %(briefing)s min, demonstration %(demonstration)s, then for each sitting %(hands_on)s at "
        "the lathe and %(change)s to change over, clean-up %(clean)s"
    )
    return words % values


def skills_words(skills: tuple[str, ...]) -> str:
    return ", ".join(skill_words(skill) for skill in skills) or _("none")


def variant_lines(title: str, variant: Variant | None, steps: Titles) -> Lines:
    if variant is None:
        return (title, _("not written"))
    leaves_out = {"steps": _named(variant.leaves_out, steps)}
    return (
        _("%(which)s: %(title)s") % {"which": title, "title": variant.title},
        variant.text,
        _("leaves out: %(steps)s") % leaves_out if variant.leaves_out else "",
        _("has a drawing of its own") if variant.profile else "",
    )
