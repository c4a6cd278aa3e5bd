"""An edition as its page and its handout show it: the recipe with what is always said at the lathe."""

from __future__ import annotations

from typing import Any

from django.utils.translation import gettext as _

from club.base.changes import changes_of
from club.base.printing import Paper
from club.base.quantities.length import LengthStyle
from club.home.order_of_work import order_of_work
from projects.library.domain.keys import skill_words
from projects.library.domain.recipe import Recipe, Variant
from projects.library.drawing import drawn_piece, life_size
from projects.library.looked_over import looked_over
from projects.library.models import Edition
from projects.library.page_facts import page_facts
from projects.library.sentences.holding import blank_words, holding_name
from projects.library.sentences.lengths import Show, shown_in
from projects.library.sentences.materials import (
    amount_words,
    beforehand,
    coat_words,
    grit_words,
    spares_words,
)
from projects.library.tables import finishes, woods
from safety.topics.always_said import cautions_for, uncovered_words


def page_of(edition: Edition, lengths: LengthStyle) -> dict[str, Any]:
    """What the project's page shows to those who teach it."""
    recipe, show = edition.recipe, shown_in(lengths, edition.recipe)
    return {
        **_taught(edition, show),
        "drawing": drawn_piece(recipe, lengths),
        "facts": page_facts(recipe, show),
        "holdings": list(dict.fromkeys(holding_name(mounting.holding) for mounting in recipe.mountings)),
        "skills": [skill_words(key) for key in recipe.skills],
        "look": looked_over(recipe),
        "uncovered": uncovered_words(recipe, woods(), finishes()),
        "materials": [(need.specification, amount_words(need, show)) for need in recipe.materials],
        "spares": spares_words(recipe.spares),
        "beforehand": beforehand(recipe),
        **_editions(edition),
        "changes": changes_of(edition),
        "show_working": True,
    }


def _editions(edition: Edition) -> dict[str, Any]:
    editions = list(edition.project.editions.order_by("-number").defer("recipe_json"))
    return {"editions": editions, "draft": next((each for each in editions if each.is_draft), None)}


def handout_page_of(edition: Edition, lengths: LengthStyle) -> dict[str, Any]:
    """What a student has at the lathe, as a page."""
    return {
        **_taught(edition, shown_in(lengths, edition.recipe)),
        "drawing": drawn_piece(edition.recipe, lengths),
    }


def handout_of(edition: Edition, lengths: LengthStyle, paper: Paper) -> dict[str, Any]:
    """The same for paper, with the drawing life size for this sheet."""
    return {
        **_taught(edition, shown_in(lengths, edition.recipe)),
        "life": life_size(edition.recipe, lengths, paper),
    }


def _taught(edition: Edition, show: Show) -> dict[str, Any]:
    recipe = edition.recipe
    return {
        "edition": edition,
        "recipe": recipe,
        "blank": blank_words(recipe.blank, show),
        "work": order_of_work(recipe, cautions_for(recipe, woods(), finishes()), show),
        "grits": grit_words(recipe.grits),
        "finish": [coat_words(coat) for coat in recipe.finish],
        "variants": [*_variants(recipe)],
    }


def _variants(recipe: Recipe) -> list[tuple[str, Variant]]:
    named = ((_("Easier"), recipe.easier), (_("Harder"), recipe.harder))
    return [(name, variant) for name, variant in named if variant]
